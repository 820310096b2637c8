import type { Assessment, Fitment } from "../../../physics/fitment.ts";
import type { RankedStop } from "../../../physics/ranking/index.ts";
import { type Sentence, spacer } from "../../../physics/sentence.ts";
import { stopTitle } from "../../../records/pack/stopTitle.ts";
import { sentenceOf } from "../../../saying/texts.ts";
import * as messages from "../../../words/compiled/screens/answer/compare.ts";

/** Another stop, or this one at another height, tried on the same vehicle. */
export interface ComparedStop {
  readonly name: Sentence;
  readonly fitment: Fitment;
  readonly assessment: Assessment;
  /** What has to be true for its figures, beyond what holds for this stop's. */
  readonly assumed: readonly string[];
}

export function onSpacer(name: Sentence, spacerMm: number): Sentence {
  return spacerMm === 0
    ? name
    : sentenceOf(messages.onSpacerOf, { name, spacerMm: spacer(spacerMm) });
}

/** What a spacer has to be for its figures. */
export function assumedOfSpacer(spacerMm: number): readonly string[] {
  return spacerMm === 0 ? [] : [messages.spacerIsRigid];
}

/** One of the tested list; null where it could not be assessed. */
export function comparedStop(ranked: RankedStop): ComparedStop | null {
  const { fitment, assessment, spacerMm } = ranked;
  if (fitment === null || assessment === null) return null;
  return {
    name: onSpacer([stopTitle(ranked)], spacerMm),
    fitment,
    assessment,
    assumed: [messages.otherStopClosesGap, ...assumedOfSpacer(spacerMm)],
  };
}
