import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { numberIn, numberStyleOf } from "../../../src/records/testRows/decimalNumbers.ts";
import { faultCode, given } from "../../physics/stopTests/outcomes.ts";

const points = { decimalMark: ".", grouped: false } as const;
const commas = { decimalMark: ",", grouped: false } as const;

describe("a cell", () => {
  test.each<[string, number]>([
    ["12.5", 12.5],
    ["-0.25", -0.25],
    ["+3", 3],
    [" 4.5 ", 4.5],
    [".5", 0.5],
    ["7.", 7],
    ["1.2e3", 1200],
    ["−2.5", -2.5],
    ["1 234.5", 1234.5],
  ])("%s", (cell, value) => expect(numberIn(cell, points)).toBe(value));

  test.each(["", " ", "-", ".", "0x10", "Infinity", "NaN", "1.2.3", "12 mm", "1,5"])(
    "“%s” holds no number",
    (cell) => expect(numberIn(cell, points)).toBeNaN(),
  );

  test("decimal commas, and thousands of either sort", () => {
    expect(numberIn("1,5E-2", commas)).toBe(0.015);
    expect(numberIn("1.234,5", { decimalMark: ",", grouped: true })).toBe(1234.5);
    expect(numberIn("1,234.5", { decimalMark: ".", grouped: true })).toBe(1234.5);
  });

  test("is the number that the language itself reads, to the last digit", () => {
    const decimal = fc
      .tuple(fc.boolean(), fc.nat(999_999_999), fc.nat(9_999_999), fc.nat(12))
      .map(
        ([negative, whole, part, zeros]) =>
          `${negative ? "-" : ""}${whole}.${"0".repeat(zeros)}${part}`,
      );
    fc.assert(
      fc.property(
        fc.oneof(decimal, fc.double({ noNaN: true, noDefaultInfinity: true }).map(String)),
        (text) => {
          expect(numberIn(text, points)).toBe(Number(text));
          expect(numberIn(text.replace(".", ","), commas)).toBe(Number(text));
        },
      ),
    );
  });
});

describe("the decimal mark of a file", () => {
  test.each<[readonly string[], string, boolean]>([
    [["1.5", "2", "3.25"], ".", false],
    [["1,5", "2", "3,25"], ",", false],
    [["0,250", "1,500"], ",", false],
    [["1,234.5", "12.5"], ".", true],
    [["1.234,5", "12,5"], ",", true],
    [["1,234", "998.5", "1012.5"], ".", true],
    [["1.234", "998,5", "1012,5"], ",", true],
    [["1,234,567"], ".", true],
    [[], ".", false],
  ])("%j", (cells, decimalMark, grouped) => {
    expect(given(numberStyleOf([cells]))).toEqual({ decimalMark, grouped });
  });

  test("points here and commas there are refused", () => {
    expect(faultCode(numberStyleOf([["1.5", "2,5"]]))).toBe("decimalMarkMixed");
  });

  test("“1.388” among decimal commas of its own size is refused, not read as 1388 or as 1.388", () => {
    expect(faultCode(numberStyleOf([["0,7", "1,1", "1.388", "1,7", "2,0"]]))).toBe(
      "decimalMarkMixed",
    );
    expect(faultCode(numberStyleOf([["0.7", "1.1", "1,388", "1.7", "2.0"]]))).toBe(
      "decimalMarkMixed",
    );
  });
});
