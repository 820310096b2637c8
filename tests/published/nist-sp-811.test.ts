import { describe, expect, it } from "vitest";
import {
  joulesPerFootPoundForce,
  metresPerSecondPerMilePerHour,
  pascalsPerPoundForcePerSquareInch,
  standardGravity,
  toModel,
} from "../../src/records/units.ts";

/**
 * NIST Special Publication 811 (2008), Appendix B.8: factors to seven figures or exact, as printed
 * there (from memory), and to all figures from references.md (read).
 */
describe("unit factors of NIST SP 811, Appendix B", () => {
  const printed: readonly (readonly [string, number, number])[] = [
    ["inch to metre, exact", toModel(1, "in") / 1000, 2.54e-2],
    ["centimetre to metre, exact", toModel(1, "cm") / 1000, 1e-2],
    ["pound (avoirdupois) to kilogram", toModel(1, "lb"), 4.535924e-1],
    ["pound-force to newton", toModel(1, "lbf"), 4.448222],
    ["pound-force per inch to newton per metre", toModel(1, "lbf/in") * 1000, 1.751268e2],
    ["foot pound-force to joule", joulesPerFootPoundForce, 1.355818],
    ["mile per hour to metre per second, exact", metresPerSecondPerMilePerHour, 4.4704e-1],
    ["pound-force per square inch to pascal", pascalsPerPoundForcePerSquareInch, 6.894757e3],
    ["standard acceleration of free fall, exact", standardGravity, 9.80665],
  ];
  it.each(printed)("%s", (_, factor, table) => {
    expect(Number(factor.toPrecision(7))).toBe(table);
  });

  // references.md, row "exact units": NIST SP 811 App. B; CODATA file of SciPy.
  const exact: readonly (readonly [string, number, number])[] = [
    ["inch in mm", toModel(1, "in"), 25.4],
    ["lbf in N", toModel(1, "lbf"), 4.4482216152605],
    ["lbf/in in N/mm", toModel(1, "lbf/in"), 0.175126835246476],
    ["ft·lbf in J", joulesPerFootPoundForce, 1.3558179483314],
    ["mph in m/s", metresPerSecondPerMilePerHour, 0.44704],
    ["psi in Pa", pascalsPerPoundForcePerSquareInch, 6894.757293168],
    ["g in m/s²", standardGravity, 9.80665],
  ];
  it.each(exact)("%s to all printed figures", (_, factor, value) => {
    expect(Math.abs(factor / value - 1)).toBeLessThan(1e-13);
  });

  it("the pound-force is the pound under standard gravity", () => {
    expect(toModel(1, "lbf")).toBeCloseTo(toModel(1, "lb") * standardGravity, 13);
  });

  it("the stops' range of 50 to 6000 lbf/in is 10 to 1000 N/mm in preferred numbers (model.md)", () => {
    const preferred = (rate: number) => 10 ** (Math.round(5 * Math.log10(rate)) / 5);
    expect(preferred(toModel(50, "lbf/in"))).toBeCloseTo(10, 9);
    expect(preferred(toModel(6000, "lbf/in"))).toBeCloseTo(1000, 9);
  });
});
