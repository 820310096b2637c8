import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readThread, threadText } from "../../../src/records/pack/thread.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";

describe("a thread", () => {
  // ISO 261, coarse pitches: M6 1, M8 1.25, M10 1.5, M12 1.75; ASME B1.1: 3/8-16 UNC, 3/8-24 UNF, 1/2-13 UNC (from memory).
  it.each([
    ["M8 x 1.25", 8, 1.25],
    ["m10×1,5", 10, 1.5],
    ["12 x 1.75", 12, 1.75],
    ["3/8-16", 9.525, 25.4 / 16],
    ["3/8-24 UNF", 9.525, 25.4 / 24],
    ["1/2 in - 13", 12.7, 25.4 / 13],
    ["1 1/4-7", 31.75, 25.4 / 7],
  ])("%s", (text, size, pitch) => {
    const read = readThread(text);
    if (!read.ok) throw new Error("not read");
    expect(read.value.sizeMm).toBeCloseTo(size, 9);
    expect(read.value.pitchMm).toBeCloseTo(pitch, 9);
  });

  it.each(["", "coarse", "M", "M10 x 0", "M10 x 12", "3/0-16", "0/8", "-5", "M9999"])(
    "“%s” is refused in a sentence",
    (text) => {
      const read = readThread(text);
      expect(read.ok).toBe(false);
      if (!read.ok) expect(inModelUnits(read.fault.sentence)).toContain("M10 x 1.5 or 3/8-16");
    },
  );

  it("is said as it is sold", () => {
    expect(threadText({ sizeMm: 10, pitchMm: 1.5 })).toBe("M10 × 1.5");
    expect(threadText({ sizeMm: 8 })).toBe("M8");
    expect(threadText({ sizeMm: 9.525, pitchMm: 1.5875 })).toBe("3/8-16");
    expect(threadText({ sizeMm: 12.7 })).toBe("1/2 in");
  });

  it("reads back what it says, of any inch or metric size", () => {
    const size = fc.oneof(
      fc.integer({ min: 3, max: 30 }),
      fc.integer({ min: 3, max: 24 }).map((parts) => (parts * 25.4) / 16),
    );
    const pitch = fc.oneof(
      fc.constantFrom(0.5, 0.75, 1, 1.25, 1.5, 1.75, 2),
      fc.integer({ min: 10, max: 40 }).map((turns) => 25.4 / turns),
    );
    fc.assert(
      fc.property(size, fc.option(pitch, { nil: undefined }), (sizeMm, pitchMm) => {
        const read = readThread(threadText({ sizeMm, ...(pitchMm !== undefined && { pitchMm }) }));
        if (!read.ok) throw new Error(threadText({ sizeMm }));
        expect(read.value.sizeMm).toBeCloseTo(sizeMm, 6);
        if (pitchMm === undefined) expect(read.value.pitchMm).toBeUndefined();
        else expect(read.value.pitchMm).toBeCloseTo(pitchMm, 1);
      }),
    );
  });
});
