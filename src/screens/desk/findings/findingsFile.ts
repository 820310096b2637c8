import type { Answering } from "../../../records/findings/answering.ts";
import type { AgainstPack } from "../../../records/findings/measuredAgainstPack.ts";
import type { DecidingReading, PlatformVerdicts } from "../../../records/findings/verdicts.ts";
import { csvLine } from "../../../records/review/csv.ts";
import { said } from "../../../saying/texts.ts";
import * as messages from "../../../words/compiled/screens/desk/findings.ts";
import { csvFile, styleHere } from "../csvFile.ts";
import { checkWords } from "./findingsWords.ts";

export interface Findings {
  readonly verdicts: readonly PlatformVerdicts[];
  readonly deciding: readonly DecidingReading[];
  readonly against: readonly AgainstPack[];
  readonly answers: Answering;
}

/** The tables one under the other, each with its heading line, in the model's units. */
export function findingsFile(
  { verdicts, deciding, against, answers }: Findings,
  now: Date,
  style = styleHere(),
): File {
  const checks = Object.keys(checkWords) as (keyof typeof checkWords)[];
  const lines = [
    csvLine(
      [
        messages.vehicleColumn,
        messages.checksColumn,
        messages.fitsColumn,
        messages.takeCare,
        messages.notSure,
        messages.doesNotFit,
        ...checks.map((check) => messages.missed3({ check })),
      ],
      style,
    ),
    ...verdicts.map(({ label, count, verdicts: { ok, care, unsure, no }, missed }) =>
      csvLine(
        [said(label), count, ok, care, unsure, no, ...checks.map((check) => missed[check] ?? 0)],
        style,
      ),
    ),
    csvLine([], style),
    csvLine([messages.decidingReading, messages.checksColumn, messages.shareColumn], style),
    ...deciding.map(({ reading, count, share }) => csvLine([reading, count, share], style)),
    csvLine([], style),
    csvLine(
      [
        messages.vehicleColumn,
        messages.readingColumn,
        messages.libraryColumn,
        "n",
        messages.medianDifference2,
        messages.quarterColumn,
        messages.threeQuarters,
      ],
      style,
    ),
    ...against.map(({ platform, reading, packValue, differences: d }) =>
      csvLine(
        [platform.label, reading, packValue, d.n, d.median, d.quarter, d.threeQuarters],
        style,
      ),
    ),
    csvLine([], style),
    csvLine(
      [
        messages.checksColumn,
        messages.answeredColumn,
        messages.askedAgain,
        messages.medianDaysToFirst,
      ],
      style,
    ),
    csvLine([answers.checks, answers.answered, answers.askedAgain, answers.days?.median], style),
  ];
  return csvFile("findings", lines, now);
}
