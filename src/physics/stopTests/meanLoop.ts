import type { Loop } from "./benchTest.ts";
import type { Cycle } from "./cycles.ts";

const loopSamples = 240;

/** The mean of several cycles, phase by phase, as one closed loop of 241 samples. */
export function meanLoop(
  timeS: Float64Array,
  displacementMm: Float64Array,
  forceN: Float64Array,
  cycles: readonly Cycle[],
): Loop {
  const displacement = new Float64Array(loopSamples + 1);
  const force = new Float64Array(loopSamples + 1);
  for (const cycle of cycles) {
    let place = Math.max(1, cycle.from);
    for (let sample = 0; sample < loopSamples; sample++) {
      const time = cycle.startS + (sample / loopSamples) * (cycle.endS - cycle.startS);
      while (place < timeS.length - 1 && timeS[place] < time) place++;
      const before = timeS[place - 1];
      const share = (time - before) / (timeS[place] - before);
      const between = (values: Float64Array) =>
        values[place - 1] + share * (values[place] - values[place - 1]);
      displacement[sample] = displacement[sample] + between(displacementMm);
      force[sample] = force[sample] + between(forceN);
    }
  }
  for (let sample = 0; sample < loopSamples; sample++) {
    displacement[sample] = displacement[sample] / cycles.length;
    force[sample] = force[sample] / cycles.length;
  }
  displacement[loopSamples] = displacement[0];
  force[loopSamples] = force[0];
  return { displacementMm: displacement, forceN: force };
}
