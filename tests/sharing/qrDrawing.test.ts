import { describe, expect, it } from "vitest";
import { inModelUnits } from "../../src/saying/modelUnits.ts";
import { drawCode, quietZone } from "../../src/sharing/qrDrawing.ts";

function drawn(text: string, digits?: string) {
  const code = drawCode(text, digits);
  if (!code.ok) throw new Error(code.fault.code);
  return code.value;
}

/** The modules that an outline encloses: a module is dark where a line to the left crosses it an odd number of times. */
function enclosed(path: string, size: number): string[] {
  const upright = path
    .split("Z")
    .filter((loop) => loop !== "")
    .flatMap((loop) => {
      const corners = loop
        .slice(1)
        .split("L")
        .map((corner) => corner.split(" ").map(Number));
      return corners.map((corner, at) => [corner, corners[(at + 1) % corners.length] ?? []]);
    })
    .filter(([from = [], to = []]) => from[0] === to[0]);
  const crosses = (x: number, y: number) =>
    upright.filter(([from = [], to = []]) => {
      const [top = 0, bottom = 0] = [from[1] ?? 0, to[1] ?? 0].sort((a, b) => a - b);
      return (from[0] ?? 0) <= x && top <= y && y < bottom;
    }).length % 2;
  return Array.from({ length: size }, (_, y) =>
    Array.from({ length: size }, (__, x) => (crosses(x, y) ? "#" : ".")).join(""),
  );
}

describe("a drawn code", () => {
  it("has the patterns in three corners by which readers find it (ISO/IEC 18004, 6.3.3)", () => {
    const { size, isDark } = drawn("https://stopfit.example/");
    const corner = (left: number, top: number) =>
      Array.from({ length: 7 }, (_, y) =>
        Array.from({ length: 7 }, (__, x) => (isDark(left + x, top + y) ? "#" : ".")).join(""),
      );
    const finder = ["#######", "#.....#", "#.###.#", "#.###.#", "#.###.#", "#.....#", "#######"];
    expect(corner(0, 0)).toEqual(finder);
    expect(corner(size - 7, 0)).toEqual(finder);
    expect(corner(0, size - 7)).toEqual(finder);
    expect(corner(size - 7, size - 7)).not.toEqual(finder);
    expect(isDark(-1, 0)).toBe(false);
    expect(quietZone).toBe(4);
  });

  it("is outlined by the very modules that are dark", () => {
    const { size, isDark, path } = drawn("https://stopfit.example/#/open/1d", "0123456789");
    const rows = Array.from({ length: size }, (_, y) =>
      Array.from({ length: size }, (__, x) => (isDark(x, y) ? "#" : ".")).join(""),
    );
    expect(enclosed(path, size)).toEqual(rows);
  });

  // ISO/IEC 18004:2015, table 7: 458 bytes or 1101 digits in version 14 at level L, 17 or 41 in version 1.
  it("takes as much as its size holds, of text alone too", () => {
    expect(drawn("a".repeat(17)).size).toBe(21);
    expect(drawn("a".repeat(18)).size).toBe(25);
    expect(drawn("a".repeat(458)).size).toBe(73);
    expect(drawn("a", "1".repeat(20)).size).toBe(21);
  });

  it("that would be too dense to scan is a sentence that names other ways", () => {
    for (const [text, digits] of [
      ["a".repeat(459), ""],
      ["", "1".repeat(1102)],
    ] as const) {
      const code = drawCode(text, digits);
      expect(code.ok ? "" : `${code.fault.code}: ${inModelUnits(code.fault.sentence)}`).toBe(
        "codeTooDense: The check does not fit in codes that can be scanned. Send it as a file or a link.",
      );
    }
  });
});
