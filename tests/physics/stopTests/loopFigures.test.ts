import { describe, expect, it } from "vitest";
import { loopFigures } from "../../../src/physics/stopTests/loopFigures.ts";

/** One turn of 5 mm at 1 Hz against 60 N/mm and 0.5 N·s/mm, from a passage of the mean. */
function turn(direction: 1 | -1) {
  const count = 2000;
  const omega = 2 * Math.PI;
  const timeS = Float64Array.from({ length: count }, (_, at) => at / count);
  const displacementMm = timeS.map((time) => direction * 5 * Math.sin(omega * time));
  const forceN = timeS.map(
    (time, at) =>
      60 * (15 + (displacementMm[at] as number)) +
      0.5 * direction * 5 * omega * Math.cos(omega * time),
  );
  return loopFigures(timeS, displacementMm, forceN, { startS: 0, endS: 1, from: 0, to: count });
}

describe("a loop", () => {
  // In: 60·(20² − 10²)/2 and half of the loss π·c·ω·X²; out: the same less the other half.
  const loss = Math.PI * 0.5 * 2 * Math.PI * 25;

  it.each([1, -1] as const)("has the same energies from either passage: %d", (direction) => {
    const figures = turn(direction);
    expect(figures.energyIn / (9000 + loss / 2)).toBeCloseTo(1, 4);
    expect(figures.energyOut / (9000 - loss / 2)).toBeCloseTo(1, 4);
    expect(figures.loss / loss).toBeCloseTo(1, 3);
    expect(figures.rate).toBeCloseTo(60, 3);
  });
});
