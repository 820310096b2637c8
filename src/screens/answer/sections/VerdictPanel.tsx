import type { Advice, Assessment, Interval } from "../../../physics/fitment.ts";
import { sentenceText } from "../../../records/quantityText.ts";
import type { LengthUnit } from "../../../records/units.ts";
import { StateMark } from "../../drawings/StateMark.tsx";
import { bandText } from "../ladder/ladderWords.ts";
import { sideWords, verdictWords } from "../stateWords.ts";

export const certification = "The result screens an installation; it does not certify it.";

interface Told {
  readonly where: string;
  readonly text: string;
  readonly band: Interval | null;
}

/** The verdict in word, shape and colour, why, and what to do: all of it without scrolling. */
export function VerdictPanel({
  assessment,
  complete,
  unit,
}: {
  assessment: Assessment;
  /** False while impacts and stiffness are still being worked out. */
  complete: boolean;
  unit: LengthUnit;
}) {
  const settled = complete || assessment.verdict === "no";
  const { verdict } = assessment;
  const advice = adviceOf(assessment, unit);
  return (
    <section class={settled ? `verdict verdict-${verdict}` : "verdict"} aria-live="polite">
      <div class="verdict-head">
        {settled && <StateMark state={verdict} size={56} label="" />}
        <h1 class={settled ? `tone-${verdict}` : ""} tabIndex={-1}>
          {settled ? verdictWords[verdict] : "Working out impacts …"}
        </h1>
      </div>
      {settled && <p class="verdict-reason">{sentenceText(assessment.reason, unit)}</p>}
      {settled && advice.length > 0 && (
        <div class="verdict-advice">
          <h2>What to do</h2>
          <ul>
            {advice.map(({ where, text, band }) => (
              <li key={`${where} ${text}`}>
                {where && <strong>{where}: </strong>}
                {text}
                {band && <span class="verdict-band"> 95 % range: {bandText(band, unit)}.</span>}
              </li>
            ))}
          </ul>
        </div>
      )}
      <p class="verdict-limits">{certification}</p>
    </section>
  );
}

/** The first two things to do of each side; once, where both sides have the same. */
function adviceOf({ corners }: Assessment, unit: LengthUnit): Told[] {
  const told = corners.flatMap(({ side, advice, intervals }) =>
    advice.slice(0, 2).map((one) => ({
      where: sideWords[side],
      text: sentenceText(one.sentence, unit),
      band: bandOf(one, intervals.tallerMm),
    })),
  );
  const merged: Told[] = [];
  for (const one of told) {
    const same = told.filter(({ text }) => text === one.text);
    if (same.length < 2) merged.push(one);
    else if (same[0] === one) {
      merged.push({ ...one, where: corners.length === same.length ? "Both sides" : one.where });
    }
  }
  return merged;
}

function bandOf({ kind }: Advice, taller: Interval | null): Interval | null {
  return kind === "taller" || kind === "shorter" ? taller : null;
}
