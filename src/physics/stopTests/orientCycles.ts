import { fail, type Outcome, succeed } from "../outcome.ts";
import type { Remark, TimeDisplacementForce } from "./benchTest.ts";
import { rankCorrelation } from "./rankCorrelation.ts";

type Samples = Omit<TimeDisplacementForce, "kind">;

export interface OrientedCycles {
  readonly samples: Samples;
  /** False: neither mean force nor rate tells its sign, as with a dashpot alone; the loss then does. */
  readonly forceSignKnown: boolean;
  readonly remarks: readonly Remark[];
}

const fewestSamples = 32;
/** Share of samples that may repeat a time or go back before the file is refused. */
const mostOutOfOrder = 0.01;
const softestRate = 0.5;
const deepestMm = 400;

/** Samples in the order of time: a few that repeat a time are left out. */
export function usableSamples(
  given: TimeDisplacementForce,
): Outcome<{ readonly samples: Samples; readonly remarks: readonly Remark[] }> {
  const count = given.timeS.length;
  if (count < fewestSamples) {
    return fail("tooFewSamples", [
      "The file holds fewer than 32 usable samples, too few for a cycle. Record at least two whole cycles.",
    ]);
  }
  const kept: number[] = [];
  let latest = Number.NEGATIVE_INFINITY;
  for (let place = 0; place < count; place++) {
    const time = given.timeS[place] as number;
    if (time <= latest) continue;
    latest = time;
    kept.push(place);
  }
  const dropped = count - kept.length;
  if (dropped > mostOutOfOrder * count) {
    return fail("timeNotRising", [
      "The time does not rise from row to row. Check that the right column is taken for time, and that the file is in the order of the test.",
    ]);
  }
  if (dropped === 0) return succeed({ samples: given, remarks: [] });
  const taken = (values: Float64Array) => Float64Array.from(kept, (at) => values[at] as number);
  return succeed({
    samples: {
      timeS: taken(given.timeS),
      displacementMm: taken(given.displacementMm),
      forceN: taken(given.forceN),
    },
    remarks: [
      {
        code: "rowsLeftOut",
        sentence: [
          { kind: "count", value: dropped },
          " rows whose time is not after the row before were left out.",
        ],
      },
    ],
  });
}

/**
 * Displacement positive as the stop is pressed and force positive as it pushes, from what stops do: on
 * the whole they push, and the more the deeper. Columns taken for each other are put right where the
 * numbers leave no doubt. Common practice, no source.
 *
 * Error: "columnsNotUsable".
 */
export function orientCycles(
  given: Samples,
  factors: { readonly displacement: number; readonly force: number } = {
    displacement: 1,
    force: 1,
  },
): Outcome<OrientedCycles> {
  const remarks: Remark[] = [];
  let { displacementMm, forceN } = given;
  const stroke = rangeOf(displacementMm);
  const force = rangeOf(forceN);
  if (stroke.half === 0) {
    return fail("columnsNotUsable", [
      "The displacement does not change in this file. Check that the right columns are chosen.",
    ]);
  }
  const strokeAsForce = (stroke.half / factors.displacement) * factors.force;
  const forceAsStroke = (force.half / factors.force) * factors.displacement;
  const isSoft = force.half < softestRate * stroke.half;
  if (isSoft && forceAsStroke <= deepestMm / 2 && strokeAsForce > forceAsStroke) {
    const toForce = factors.force / factors.displacement;
    [displacementMm, forceN] = [
      forceN.map((value) => value / toForce),
      displacementMm.map((value) => value * toForce),
    ];
    remarks.push({
      code: "columnsSwapped",
      sentence: [
        "The columns of displacement and force were taken for each other in the file; they were put right.",
      ],
    });
  }
  const { middle, half } = rangeOf(forceN);
  const pushes = Math.abs(middle) > 0.3 * half;
  if (pushes && middle < 0) {
    forceN = forceN.map((value) => -value);
    remarks.push(forceTurned);
  }
  const together = rankCorrelation(displacementMm, forceN);
  if (together < -0.2) {
    if (pushes) {
      displacementMm = displacementMm.map((value) => -value);
      remarks.push({
        code: "depthReversed",
        sentence: ["In the file the displacement falls as the stop is pressed; it was turned."],
      });
    } else {
      forceN = forceN.map((value) => -value);
      remarks.push(forceTurned);
    }
  }
  return succeed({
    samples: { timeS: given.timeS, displacementMm, forceN },
    forceSignKnown: pushes || Math.abs(together) > 0.2,
    remarks,
  });
}

const forceTurned: Remark = {
  code: "forceReversed",
  sentence: ["The file counts a pushing force as negative; it was turned."],
};

function rangeOf(values: Float64Array): { readonly middle: number; readonly half: number } {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    least = Math.min(least, value);
    most = Math.max(most, value);
  }
  return { middle: (least + most) / 2, half: (most - least) / 2 };
}
