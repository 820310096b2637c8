import { standardGravity } from "../../src/physics/standardGravity.ts";
import {
  joulesPerFootPoundForce,
  pascalsPerPoundForcePerSquareInch,
  toModel,
} from "../../src/records/entry/units.ts";
import { publishedSource, rounding } from "./support/published.ts";

/*
 * NIST Special Publication 811 (2008), Appendix B.8: factors to seven figures as printed there (from
 * memory), and to all figures (read; CODATA file of SciPy).
 */
export const nistSp811 = publishedSource(
  "NIST SP 811 (2008), Appendix B.8; CODATA file of SciPy",
  "met",
  (published) => {
    const exact: readonly (readonly [string, number, () => number])[] = [
      ["inch in mm", 25.4, () => toModel(1, "in")],
      ["centimetre in mm", 10, () => toModel(1, "cm")],
      ["pound-force in N", 4.4482216152605, () => toModel(1, "lbf")],
      ["pound-force per inch in N/mm", 0.175126835246476, () => toModel(1, "lbf/in")],
      ["foot pound-force in J", 1.3558179483314, () => joulesPerFootPoundForce],
      ["mile per hour in m/s", 0.44704, () => toModel(1, "mph") / 3.6],
      [
        "pound-force per square inch in Pa",
        6894.757293168,
        () => pascalsPerPoundForcePerSquareInch,
      ],
      ["standard gravity in m/s²", 9.80665, () => standardGravity],
      ["pound-force over pound, m/s²", 9.80665, () => toModel(1, "lbf") / toModel(1, "lb")],
    ];
    for (const [quantity, value, compute] of exact)
      published(quantity, value, compute, 1e-13 * value);
    const printed: readonly (readonly [string, number, () => number])[] = [
      ["pound in kg, as printed", 0.4535924, () => toModel(1, "lb")],
      ["pound-force in N, as printed", 4.448222, () => toModel(1, "lbf")],
      ["pound-force per inch in N/m, as printed", 175.1268, () => 1000 * toModel(1, "lbf/in")],
      ["foot pound-force in J, as printed", 1.355818, () => joulesPerFootPoundForce],
      ["psi in Pa, as printed", 6894.757, () => pascalsPerPoundForcePerSquareInch],
    ];
    for (const [quantity, value, compute] of printed) {
      published(quantity, value, compute, rounding(value, 7), "from memory");
    }
  },
);
