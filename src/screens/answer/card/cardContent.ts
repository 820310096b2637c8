import type { Assessment, State } from "../../../physics/fitment.ts";
import { capital } from "../../../physics/sentence.ts";
import { meanOf } from "../../../physics/uncertainty/index.ts";
import { dateText } from "../../../records/check/checkName.ts";
import type { CheckRecord } from "../../../records/check/checkRecord.ts";
import { fitmentOf } from "../../../records/check/fitmentOf.ts";
import { sourceText } from "../../../records/entry/readingSource.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import { stopInFull } from "../../../records/pack/stopFacts.ts";
import { quantityKindOf, readingsOf } from "../../../records/review/oddReadings.ts";
import { quantityText } from "../../../saying/quantityText.ts";
import { sentenceText, withoutRanges } from "../../../saying/sentenceText.ts";
import { said } from "../../../saying/texts.ts";
import * as messages from "../../../words/compiled/screens/answer/card.ts";
import { verdictWords } from "../../assessment/stateWords.ts";
import type { Prescribing } from "../../assessment/usePrescription.ts";
import { cautionsOf } from "../../guide/cautions.ts";
import { jobWords } from "../../job/jobWords.ts";
import { readingWords } from "../formulas/readingById.ts";
import { certification } from "../sections/VerdictPanel.tsx";

/** One result as it is shown to a customer or at a parts counter, in one unit. */
export interface CardContent {
  readonly title: string;
  readonly facts: readonly string[];
  readonly verdict: State;
  readonly verdictWords: string;
  readonly reason: string;
  readonly toDo: string;
  readonly readings: readonly { readonly name: string; readonly value: string }[];
  readonly cautions: readonly string[];
  readonly certification: string;
}

/** Which check a result is of: its title, and the facts that tell it from others. */
export function checkNamed(record: CheckRecord): Pick<CardContent, "title" | "facts"> {
  const { author, vehicle, stop, axle, createdAt, job } = record;
  const by = author.name?.trim();
  return {
    title: messages.axle({ label: vehicle.label, axle }),
    facts: [
      ...(job
        ? [`${jobWords(job)}${job.moment ? messages.change({ moment: job.moment }) : ""}`]
        : []),
      messages.stopWord({ stopInFull: said(stopInFull(stop)) }),
      messages.checkedIsBySelectTrue({ createdAt: dateText(createdAt), isBy: Boolean(by), by }),
    ],
  };
}

export function cardContent(
  record: CheckRecord,
  assessment: Assessment,
  prescribing: Prescribing,
  unit: LengthUnit,
): CardContent {
  const fitment = fitmentOf(record);
  const text = (sentence: Assessment["reason"]) =>
    sentenceText(withoutRanges(sentence), unit, { coarse: true });
  return {
    ...checkNamed(record),
    verdict: assessment.verdict,
    verdictWords: verdictWords[assessment.verdict],
    reason: text(assessment.reason),
    toDo: prescribing.state === "found" ? text(prescribing.prescription.message) : "",
    readings: readingsOf(record).map(({ id, reading }) => {
      const kind = quantityKindOf(id);
      const mean = quantityText({ kind, value: meanOf(reading) }, unit);
      const tolerance = quantityText({ kind, value: reading.tol }, unit);
      return {
        name: capital(readingWords(fitment, id)),
        value: `${mean} ± ${tolerance}, ${said(sourceText(reading))}`,
      };
    }),
    cautions: cautionsOf(record.vehicle.liftMm > 0 ? "raised" : "level").map(({ words }) => words),
    certification,
  };
}
