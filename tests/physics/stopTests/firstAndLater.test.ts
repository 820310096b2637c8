import { describe, expect, test } from "vitest";
import { analyseTimed } from "../../../src/physics/stopTests/analyseTimed.ts";
import type { TimeDisplacementForce } from "../../../src/physics/stopTests/benchTest.ts";
import { designs, trueStops } from "../../support/testMachine/designs.ts";
import { measure } from "../../support/testMachine/testMachine.ts";
import { given } from "./outcomes.ts";

const usual = { samplesPerS: 500, whiteN: 5, whiteMm: 0.002 } as const;

function tested(design: string): TimeDisplacementForce {
  const [stop, motion] = [trueStops.restLoss, designs[design]];
  if (stop === undefined || motion === undefined) throw new Error(design);
  const { timeS, depthMm, forceN } = measure(stop, motion(), usual);
  return { kind: "cycles", timeS, displacementMm: depthMm, forceN };
}

describe("the first cycle of a block beside the later ones", () => {
  test("of a stop that does not soften, is like them, with the loss of its law", () => {
    const { blocks } = given(analyseTimed(tested("sines")));
    expect(blocks).toHaveLength(4);
    for (const { firstAndLater, lossJ } of blocks) {
      const { first, later } = firstAndLater ?? {};
      expect(Math.abs((first?.lossJ ?? 0) / (later?.lossJ ?? 1) - 1)).toBeLessThan(0.02);
      // Loss of rest loss h: 2·h·∫F∞ dx over the stroke, 0.2·(30·40² + 0.0075·40⁴) N·mm = 13.44 J.
      expect(Math.abs((later?.lossJ ?? 0) / 13.44 - 1)).toBeLessThan(0.02);
      expect(Math.abs(lossJ.value / 13.44 - 1)).toBeLessThan(0.02);
    }
  });

  test("is harder where the stop softens, and is told though it is left out", () => {
    const file = tested("sines");
    const starts = given(analyseTimed(file));
    // The first fifth of the fastest block, pressed a tenth harder.
    const fastest = 2 * Math.PI * (20 / 500);
    const end = (file.timeS.at(-1) ?? 0) - 4 * fastest;
    const forceN = file.forceN.map((force, row) => {
      const time = file.timeS[row] as number;
      return time > end - fastest && time < end ? 1.1 * force : force;
    });
    const { blocks, leftOut } = given(analyseTimed({ ...file, forceN }));
    const { first, later } = blocks.at(-1)?.firstAndLater ?? {};
    expect((first?.peakForceN ?? 0) / (later?.peakForceN ?? 1)).toBeCloseTo(1.1, 1);
    expect(leftOut.cycles).toBe(starts.leftOut.cycles + 1);
  });

  test("a triangle is no sine, and its speed is that of its sides", () => {
    const { blocks } = given(analyseTimed(tested("triangles")));
    expect(blocks.map(({ equivalentDampingNsPerMm }) => equivalentDampingNsPerMm)).toEqual(
      blocks.map(() => null),
    );
    for (const [index, speed] of [50, 150, 300, 500].entries()) {
      expect(Math.abs((blocks[index]?.greatestSpeedMmPerS ?? 0) / speed - 1)).toBeLessThan(0.01);
      expect(Math.abs((blocks[index]?.amplitudeMm ?? 0) / 20 - 1)).toBeLessThan(0.02);
    }
  });
});
