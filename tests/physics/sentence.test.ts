import { describe, expect, it } from "vitest";
import { length, type QuantityKind } from "../../src/physics/sentence.ts";
import { inModelUnits } from "../../src/saying/modelUnits.ts";

describe("a sentence in the model's own units", () => {
  // Units and digits of model.md: mm, deg, N/mm, N, kg, J, mm/s, g; R as "2.7 : 1"; shares in percent.
  it.each<[QuantityKind, number, string]>([
    ["length", 12.34, "12.3 mm"],
    ["length", -0.96, "-1.0 mm"],
    ["spacer", 10, "10 mm"],
    ["spacer", 3.175, "3.2 mm"],
    ["angle", 14.26, "14.3°"],
    ["rate", 123.4, "123 N/mm"],
    ["rate", 0.98765, "0.988 N/mm"],
    ["rate", 20, "20 N/mm"],
    ["stiffnessClass", 63, "63 N/mm"],
    ["force", 4448.22, "4448 N"],
    ["mass", 450.6, "451 kg"],
    ["energy", 36.58, "36.6 J"],
    ["speed", 1234.5, "1235 mm/s"],
    ["acceleration", 2.456, "2.46 g"],
    ["share", 0.628, "63 %"],
    ["ratio", 2.742, "2.74 : 1"],
    ["count", 2, "2"],
    ["count", 0.012345, "0.0123"],
  ])("%s of %d: %s", (kind, value, text) => {
    expect(inModelUnits([{ kind, value }])).toBe(text);
  });

  it("keeps words and numbers in their order, with nothing between them", () => {
    expect(inModelUnits(["The gap is ", length(45), ", not ", length(46.25), "."])).toBe(
      "The gap is 45.0 mm, not 46.3 mm.",
    );
    expect(inModelUnits([])).toBe("");
  });

  it("a length is in mm", () => {
    expect(length(25.4)).toEqual({ kind: "length", value: 25.4 });
  });
});
