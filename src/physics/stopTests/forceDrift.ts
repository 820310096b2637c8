import * as messages from "../../words/compiled/physics/stopTests.ts";
import { mean } from "../uncertainty/readingMean.ts";
import type { Remark } from "./benchTest.ts";
import type { Samples } from "./timedSamples.ts";

/** Within this share of the depths' span from the least depth the stop counts as free … */
const freeShare = 0.003;
/** … where the force there is no more than this share of the greatest. */
const freeForceShare = 0.08;
/** A free stretch needs so many rows, and stretches this share of the whole time apart are two. */
const fewestRows = 5;
const apartShare = 0.02;
/** Free stretches must span this share of the test for a drift to be told by them. */
const leastSpan = 0.5;
/** A drift below this share of the greatest force is left alone. */
const noticeableShare = 0.004;

/**
 * The load cell's zero over a test, from the stretches at its least depth, where a stop that is not
 * always pressed is free: straight from stretch to stretch, on at their mean slope beyond. Where it
 * wanders, the wandering is taken off the force; the zero of the first stretch stays. Common practice, no source.
 */
export function withoutDrift(samples: Samples): {
  readonly samples: Samples;
  readonly remarks: readonly Remark[];
} {
  const { timeS, displacementMm, forceN } = samples;
  const unchanged = { samples, remarks: [] };
  const anchors = freeStretches(samples);
  const first = anchors[0];
  const last = anchors.at(-1);
  const start = timeS[0] ?? 0;
  const span = (timeS.at(-1) ?? 0) - start;
  if (first === undefined || last === undefined) return unchanged;
  if (last.timeS - first.timeS < leastSpan * span) return unchanged;
  const greatest = forceN.reduce((most, force) => Math.max(most, force), 0);
  if (anchors.some(({ zeroN }) => Math.abs(zeroN) > freeForceShare * greatest)) return unchanged;
  const zeros = anchors.map(({ zeroN }) => zeroN);
  const wander = Math.max(...zeros) - Math.min(...zeros);
  const error = Math.max(...anchors.map(({ errorN }) => errorN));
  if (wander < Math.max(noticeableShare * greatest, 5 * error)) return unchanged;
  const slope = (last.zeroN - first.zeroN) / (last.timeS - first.timeS);
  let place = 0;
  const corrected = forceN.map((force, row) => {
    const time = timeS[row];
    while (place < anchors.length - 2 && (anchors[place + 1]?.timeS ?? 0) <= time) place++;
    const low = anchors[place] ?? first;
    const high = anchors[place + 1] ?? low;
    const share =
      high.timeS > low.timeS
        ? Math.max(0, Math.min(1, (time - low.timeS) / (high.timeS - low.timeS)))
        : 0;
    const beyond = Math.min(0, time - first.timeS) + Math.max(0, time - last.timeS);
    const zeroN = low.zeroN - first.zeroN + share * (high.zeroN - low.zeroN) + slope * beyond;
    return force - zeroN;
  });
  return {
    samples: { timeS, displacementMm, forceN: corrected },
    remarks: [
      {
        code: "forceDrift",
        sentence: [
          messages.freeOfLoadForce({
            wander: { kind: "force", value: wander },
          }),
        ],
      },
    ],
  };
}

interface Stretch {
  readonly timeS: number;
  readonly zeroN: number;
  readonly errorN: number;
}

function freeStretches({ timeS, displacementMm, forceN }: Samples): readonly Stretch[] {
  let deepest = Number.NEGATIVE_INFINITY;
  let least = Number.POSITIVE_INFINITY;
  for (const depth of displacementMm) {
    deepest = Math.max(deepest, depth);
    least = Math.min(least, depth);
  }
  const limit = least + freeShare * (deepest - least);
  const apart = apartShare * ((timeS.at(-1) ?? 0) - (timeS[0] ?? 0));
  const found: Stretch[] = [];
  let rows: number[] = [];
  const close = () => {
    if (rows.length >= fewestRows) {
      const zeroN = mean(rows.map((row) => forceN[row]));
      const spread = mean(rows.map((row) => (forceN[row] - zeroN) ** 2));
      found.push({
        timeS: mean(rows.map((row) => timeS[row])),
        zeroN,
        errorN: Math.sqrt(spread / rows.length),
      });
    }
    rows = [];
  };
  for (let row = 0; row < displacementMm.length; row++) {
    if (displacementMm[row] > limit) continue;
    const from = rows[0];
    if (from !== undefined && timeS[row] - timeS[from] > apart) close();
    rows.push(row);
  }
  close();
  return found;
}
