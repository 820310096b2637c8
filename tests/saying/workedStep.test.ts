import { describe, expect, it } from "vitest";
import { springRestFormulas } from "../../src/physics/road/restPosition.ts";
import { step } from "../../src/physics/worked/step.ts";
import { degrees, mm, quantity } from "../../src/physics/worked/workedFigure.ts";
import { inModelUnits } from "../../src/saying/modelUnits.ts";
import { inLetters, inNumbers } from "../../src/saying/workedStep.ts";
import * as termNames from "../../src/words/compiled/physics/terms.ts";

const count = (value: number) => quantity("count", value);

/** A formula's line, and the same with numbers put in. */
function lines(...asked: Parameters<typeof step>): readonly [string, string] {
  const line = step(...asked);
  return [inLetters(line), inModelUnits(inNumbers(line))];
}

describe("numbers put in a formula", () => {
  it("stand where its letters do, right of the sign of equality and before a remark", () => {
    const terms = { a: mm(20), w: degrees(30) };
    expect(lines("ds/dα = a·cos w, per radian", terms, mm(0))).toEqual([
      "ds/dα = a·cos w, per radian",
      "20.0 mm · cos 30.0°",
    ]);
  });

  it("are put in for whole letters, the longest first", () => {
    const terms = { z: mm(1), z_c: mm(2), "min(z_u, z_h)": mm(3) };
    expect(lines("x = z_c / min(z_u, z_h) + z", terms, mm(0))[1]).toBe("2.0 mm / 3.0 mm + 1.0 mm");
  });

  it("carry another letter where the term goes by one here", () => {
    const s = { letter: "(g + δu)", value: mm(9) };
    expect(lines("z = s / cos β", { s, β: degrees(5) }, mm(0))).toEqual([
      "z = (g + δu) / cos β",
      "9.0 mm / cos 5.0°",
    ]);
  });

  it("are put in for a term that the formula names in words, once it is said", () => {
    const name = termNames.springAlone;
    const terms = { spring: { name, value: mm(3) }, payload·gₙ: mm(4), kw: count(2) };
    expect(lines(springRestFormulas.free, terms, mm(2))).toEqual([
      "spring alone = payload·gₙ / kw",
      "4.0 mm / 2",
    ]);
    expect(lines({ text: "z", by: [name, " − z"] }, terms, mm(2))[1]).toBe("3.0 mm − z");
  });

  it("stand in brackets where raised, unless they have no unit; a factor before them belongs to them", () => {
    expect(lines("E = exp(−z²/2σ²)", { z: mm(4), σ: mm(2) }, count(0))[1]).toBe(
      "exp(−(4.0 mm)² / (2 · (2.0 mm)²))",
    );
    expect(lines("q = n²", { n: count(3) }, count(0))[1]).toBe("3²");
  });

  it("are told of the expression behind words, with its unit and a note", () => {
    const formula = { text: "speed, as it falls", by: "√(2·g·h)", unit: "m/s" } as const;
    expect(lines(formula, { g: "9.80665", h: count(0.2) }, mm(0), ", at touch-down")).toEqual([
      "speed, as it falls",
      "√(2 · 9.80665 · 0.2) m/s, at touch-down",
    ]);
  });

  it("leave a letter without a term as it is, so that the line can't be evaluated", () => {
    expect(lines("z = a + b", { a: mm(1) }, mm(0))[1]).toBe("1.0 mm + b");
  });

  it("have semicolons between the values of a function", () => {
    expect(lines("α = atan2(B, A)", { A: mm(1), B: mm(2) }, degrees(0))[1]).toBe(
      "atan2(2.0 mm; 1.0 mm)",
    );
  });
});
