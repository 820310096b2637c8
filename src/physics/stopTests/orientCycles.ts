import * as messages from "../../words/compiled/physics/stopTests.ts";
import { fail, type Outcome, succeed } from "../outcome.ts";
import type { Remark } from "./benchTest.ts";
import { rankCorrelation } from "./rankCorrelation.ts";
import type { Samples } from "./timedSamples.ts";

export interface OrientedCycles {
  readonly samples: Samples;
  /** False: neither mean force nor rate tells its sign, as with a dashpot alone; the loss then does. */
  readonly forceSignKnown: boolean;
  readonly remarks: readonly Remark[];
}

const softestRate = 0.5;
const deepestMm = 400;

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
    return fail("columnsNotUsable", [messages.displacementDoesNotChange]);
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
      asks: true,
      sentence: [messages.columnsOfDisplacementAnd],
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
        sentence: [messages.inFileDisplacementFalls],
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
  sentence: [messages.fileCountsPushingForce],
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
