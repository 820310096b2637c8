import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cosineOf } from "../../../src/physics/motion/layoutMotion.ts";
import { sine } from "../../../src/physics/motion/sine.ts";

/** Two steps of a double just below 1, the last digit and the one before. */
const twoLastDigits = 2.3e-16;

describe("the quicker sine", () => {
  it("is the library's to its last two digits, at every angle", () => {
    const angles = fc.oneof(
      fc.double({ min: -1.6, max: 1.6, noNaN: true }),
      fc.constantFrom(-Math.PI / 4, -0.785, -0.5, 0, 0.5, 0.785, Math.PI / 4, 1.5),
    );
    fc.assert(
      fc.property(angles, (angle) => {
        expect(Math.abs(sine(angle) - Math.sin(angle))).toBeLessThanOrEqual(twoLastDigits);
      }),
    );
  });

  it("keeps half of a right angle's: sin²45° = 1/2", () => {
    expect(Math.abs(sine(Math.PI / 4) ** 2 - 0.5)).toBeLessThanOrEqual(twoLastDigits);
  });
});

describe("a cosine whose sine is known", () => {
  it.each([-1.57, -1, 0, 0.3, 1, 1.2, 1.57])("keeps its digits near a right angle: %d", (angle) => {
    const cosine = cosineOf(angle, Math.sin(angle));
    expect(Math.abs(cosine / Math.cos(angle) - 1)).toBeLessThan(1e-15);
  });
});
