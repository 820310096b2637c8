import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { greatestInside } from "../../../src/physics/impact/greatestInside.ts";

const greatest = (...values: number[]) => greatestInside(Float64Array.from(values), values.length);

describe("the greatest of equally spaced values", () => {
  it("is the top of the parabola through them", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -0.5, max: 0.5, noNaN: true }),
        fc.double({ min: 0.1, max: 100, noNaN: true }),
        fc.double({ min: 1, max: 1000, noNaN: true }),
        (at, bend, top) => {
          const value = (x: number) => top - bend * (x - at) ** 2;
          expect(greatest(value(-1), value(0), value(1))).toBeCloseTo(top, 9);
        },
      ),
    );
  });

  it("is found wherever it stands, the highest of several", () => {
    expect(greatest(0, 1, 4, 1, 0)).toBe(4);
    expect(greatest(0, 3, 0, 5, 0, 1)).toBe(5);
    // Through 3, 5, 4: 5 + x/2 − 3x²/2, its top 5 + 1/24 at x = 1/6.
    expect(greatest(3, 5, 4, 0)).toBeCloseTo(5 + 1 / 24, 12);
    expect(greatest(0, 4, 5, 3)).toBeCloseTo(5 + 1 / 24, 12);
  });

  it("of two that are the same lies between them", () => {
    // Through 1, 3, 3: 3 + x − x², its top at 1/2.
    expect(greatest(1, 3, 3, 1)).toBeCloseTo(3.25, 12);
  });

  it("is none where the values only rise, fall, sink in between, or are all the same", () => {
    expect(greatest(1, 2, 3, 4)).toBe(0);
    expect(greatest(4, 3, 2, 1)).toBe(0);
    expect(greatest(3, 1, 3)).toBe(0);
    expect(greatest(2, 2, 2)).toBe(0);
    expect(greatest(-3, -1, -3)).toBe(0);
    expect(greatest(5, 6)).toBe(0);
  });

  it("takes no more of them than it is told", () => {
    expect(greatestInside(Float64Array.of(0, 1, 0, 9, 0), 3)).toBe(1);
  });
});
