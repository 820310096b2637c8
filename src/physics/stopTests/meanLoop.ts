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
      while (place < timeS.length - 1 && (timeS[place] as number) < time) place++;
      const before = timeS[place - 1] as number;
      const share = (time - before) / ((timeS[place] as number) - before);
      const between = (values: Float64Array) =>
        (values[place - 1] as number) +
        share * ((values[place] as number) - (values[place - 1] as number));
      displacement[sample] = (displacement[sample] as number) + between(displacementMm);
      force[sample] = (force[sample] as number) + between(forceN);
    }
  }
  for (let sample = 0; sample < loopSamples; sample++) {
    displacement[sample] = (displacement[sample] as number) / cycles.length;
    force[sample] = (force[sample] as number) / cycles.length;
  }
  displacement[loopSamples] = displacement[0] as number;
  force[loopSamples] = force[0] as number;
  return { displacementMm: displacement, forceN: force };
}
