import type { Assessment, Stop } from "../../../physics/fitment.ts";
import { sentenceText } from "../../../records/entry/quantityText.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import { estimateSentence } from "../../../records/pack/stopTitle.ts";
import { checkTitles, sideWords, verdictWords } from "../../assessment/stateWords.ts";
import { StateMark } from "../../drawings/StateMark.tsx";
import type { ComparedStop } from "../compare/useComparison.ts";
import { isMissing } from "../missing.ts";

export const certification = "The result screens an installation; it does not certify it.";

interface Told {
  readonly where: string;
  readonly text: string;
}

/** The verdict in word, shape and colour, why, and what to do: all of it without scrolling. */
export function VerdictPanel({
  assessment,
  stop,
  complete,
  proposed,
  unit,
}: {
  assessment: Assessment;
  stop: Stop;
  /** False while impacts and stiffness are still being worked out. */
  complete: boolean;
  /** The other height that the advice names, tried on this vehicle. */
  proposed: ComparedStop | null;
  unit: LengthUnit;
}) {
  const settled = complete || assessment.verdict === "no";
  const { verdict } = assessment;
  const advice = adviceOf(assessment, unit);
  const soFar = inOrderSoFar(assessment);
  const estimate = estimateSentence(stop);
  return (
    <section class={settled ? `verdict verdict-${verdict}` : "verdict"} aria-live="polite">
      <div class="verdict-head">
        {settled && <StateMark state={verdict} size={56} label="" />}
        <h1 class={settled ? `tone-${verdict}` : ""} tabIndex={-1}>
          {settled ? verdictWords[verdict] : "Working out impacts …"}
        </h1>
      </div>
      {estimate && (
        <p>
          <strong>An estimate.</strong> {estimate}
        </p>
      )}
      {settled && <p class="verdict-reason">{sentenceText(assessment.reason, unit)}</p>}
      {settled && soFar && <p>{soFar}</p>}
      {settled && advice.length > 0 && (
        <div class="verdict-advice">
          <h2>What to do</h2>
          <ul>
            {advice.map(({ where, text }) => (
              <li key={`${where} ${text}`}>
                {where && <strong>{where}: </strong>}
                {text}
              </li>
            ))}
          </ul>
        </div>
      )}
      {settled && proposed && (
        <div class="verdict-proposed">
          <p class="check-state">
            <StateMark state={proposed.assessment.verdict} size={22} label="" />
            <span>
              Tried with {sentenceText(proposed.name, unit)}:{" "}
              <strong class={`tone-${proposed.assessment.verdict}`}>
                {verdictWords[proposed.assessment.verdict].toLowerCase()}
              </strong>
            </span>
          </p>
          <p class="check-sentence">{sentenceText(proposed.assessment.reason, unit)}</p>
        </div>
      )}
      <p class="verdict-limits">{certification}</p>
    </section>
  );
}

/** What cannot be decided yet does not hide what can. */
function inOrderSoFar({ verdict, corners }: Assessment): string | null {
  if (verdict !== "unsure") return null;
  const ids = new Set(corners.flatMap(({ checks }) => checks.map(({ id }) => id)));
  const fine = [...ids].filter((id) =>
    corners.every(({ checks }) => checks.find((check) => check.id === id)?.state === "ok"),
  );
  const words = fine.map((id) => checkTitles[id].toLowerCase());
  return words.length > 0 ? `In order so far: ${words.join("; ")}.` : null;
}

/** The first two things to do of each side beyond finding what is missing, most useful first; once, where both sides have the same. */
function adviceOf({ corners }: Assessment, unit: LengthUnit): Told[] {
  const told = corners
    .flatMap(({ side, advice, missing }) =>
      advice
        .filter(({ kind, reading }) => kind !== "measureAgain" || !isMissing(reading, missing))
        .slice(0, 2)
        .map(({ sentence }, rank) => ({
          rank,
          where: sideWords[side],
          text: sentenceText(sentence, unit),
        })),
    )
    .sort((a, b) => a.rank - b.rank);
  return told.flatMap((one) => {
    const same = told.filter(({ text }) => text === one.text);
    if (same.length < 2) return [one];
    return same[0] === one ? [{ ...one, where: "Both sides" }] : [];
  });
}
