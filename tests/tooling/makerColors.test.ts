import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { accentsOf, contrast, withAccents } from "../../src/tooling/maker/makerColors.ts";

const css = readFileSync("src/screens/styles/tokens.css", "utf8");

describe("a maker's color", () => {
  it("is measured as WCAG does", () => {
    // WCAG 2.2: black on white 21:1; #767676 on white 4.54:1.
    expect(contrast("#000000", "#ffffff")).toBeCloseTo(21, 6);
    expect(contrast("#767676", "#ffffff")).toBeCloseTo(4.54, 2);
  });

  it("that words can't be read in is refused with the nearest one that can", () => {
    const pale = accentsOf("#ffcc00");
    if (pale.ok) throw new Error("taken");
    expect(pale.sentence).toContain("1.3 : 1");
    const better = /is (#[0-9a-f]{6})\./.exec(pale.sentence)?.[1] ?? "";
    expect(accentsOf(better).ok).toBe(true);
  });

  it("holds in all three themes, whatever it is", () => {
    const byte = fc.integer({ min: 0, max: 255 });
    const color = fc
      .tuple(byte, byte, byte)
      .map((all) => `#${all.map((each) => each.toString(16).padStart(2, "0")).join("")}`);
    fc.assert(
      fc.property(color, (each) => {
        const found = accentsOf(each);
        if (!found.ok) return;
        const { light, dark, sun } = found.accents;
        const least = (accent: string, grounds: readonly string[], ratio: number) => {
          for (const ground of grounds) {
            expect(contrast(accent, ground)).toBeGreaterThanOrEqual(ratio);
          }
        };
        least(light.accent, ["#edf1ef", "#ffffff", light.wash, light.ink], 4.5);
        least(dark.accent, ["#0e1413", "#18211f", dark.wash, dark.ink], 4.5);
        least(sun.accent, ["#ffffff", sun.wash, sun.ink], 7);
      }),
    );
  });

  it("takes the place of the app's own in every theme, and of nothing else", () => {
    const found = accentsOf("#5a2a6e");
    if (!found.ok) throw new Error(found.sentence);
    const text = withAccents(css, found.accents);
    expect(text).not.toContain("--accent: #0c4c82");
    expect(text).not.toContain("--accent: #8cc2f5");
    expect(text).not.toContain("--accent: #00315c");
    const rest = (whole: string) => whole.replace(/--accent[^;]*;/g, "");
    expect(rest(text)).toBe(rest(css));
  });
});
