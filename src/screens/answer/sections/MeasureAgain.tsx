import type { Assessment, DoubtShare, Fitment, Side } from "../../../physics/fitment.ts";
import type { FieldPath } from "../../../physics/outcome.ts";
import { capital } from "../../../physics/sentence.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import * as messages from "../../../words/compiled/screens/answer/sections.ts";
import { Icon } from "../../parts/Icon.tsx";
import { causeDoubt, readingById, readingKind, readingWords } from "../formulas/readingById.ts";
import { lengthText } from "../ladder/ladderWords.ts";
import { isMissing } from "../missing.ts";

interface Doubt {
  readonly reading: string;
  readonly share: number;
  readonly about: string;
  readonly side: Side;
}

const most = 5;
const worthTelling = 0.03;

function doubtsOf({ corners }: Assessment): Doubt[] {
  const greatest = new Map<string, Doubt>();
  const add = (shares: readonly DoubtShare[], side: Side, about: string) => {
    for (const { reading, share } of shares) {
      const known = greatest.get(reading);
      if (share >= worthTelling && (!known || known.share < share)) {
        greatest.set(reading, { reading, share, about, side });
      }
    }
  };
  for (const { side, doubt } of corners) {
    add(doubt.reserve, side, messages.reserveWord);
    add(doubt.contact, side, messages.travelToContact);
  }
  return [...greatest.values()].sort((a, b) => b.share - a.share).slice(0, most);
}

/** Which readings add most to the margin of error. */
export function MeasureAgain({
  fitment,
  assessment,
  unit,
  go,
}: {
  fitment: Fitment;
  assessment: Assessment;
  unit: LengthUnit;
  go: (step: string) => void;
}) {
  const doubts = doubtsOf(assessment);
  return (
    <>
      {doubts.length > 0 && (
        <>
          <p>
            {decided(assessment) ? messages.nothingNeedsReMeasuring : messages.theseReadingsAddMost}
          </p>
          <ul class="remeasure-list">
            {doubts.map(({ reading, share, about, side }) => (
              <li key={reading}>
                <button type="button" class="remeasure" onClick={() => go(reading)}>
                  <span class="remeasure-name">{capital(readingWords(fitment, reading))}</span>
                  <span class="remeasure-bar" aria-hidden="true">
                    <span style={{ width: `${(100 * share).toFixed(1)}%` }} />
                  </span>
                  <span class="remeasure-why">
                    {messages.ofMarginOfError({
                      share: share > 0.99 ? messages.over99 : (100 * share).toFixed(0),
                      about,
                      side,
                      tolerance: toleranceWords(fitment, reading, unit),
                    })}
                  </span>
                  <Icon name="forward" />
                </button>
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}

/** No probability lies between the decisions' limits: a closer reading would not change the answer. */
function decided({ corners }: Assessment): boolean {
  return corners.every(({ checks, missing }) =>
    checks.every(
      ({ state, reading, probability }) =>
        (state !== "unsure" || isMissing(reading, missing)) &&
        (probability === undefined || probability >= 0.95 || probability <= 0.05),
    ),
  );
}

function toleranceWords(fitment: Fitment, id: FieldPath, unit: LengthUnit): string {
  const cause = causeDoubt(fitment, id);
  if (cause) return ` ±\u00a0${lengthText(cause.halfWidthMm, unit)} ${cause.from}.`;
  const reading = readingById(fitment, id);
  if (!reading) return "";
  const kind = readingKind(id);
  const tolerance =
    kind === "length"
      ? lengthText(reading.tol, unit)
      : kind === "angle"
        ? `${reading.tol}°`
        : undefined;
  const times =
    reading.values.length === 1
      ? messages.measuredOnce
      : messages.measuredTimes({ values: reading.values.length });
  return tolerance ? ` ${times}, ±\u00a0${tolerance}.` : ` ${times}.`;
}
