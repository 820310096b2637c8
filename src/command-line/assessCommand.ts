import { resolve } from "node:path";
import { assessFitment } from "../physics/assess.ts";
import type { Assessment } from "../physics/fitment.ts";
import type { Outcome } from "../physics/outcome.ts";
import type { Prescription } from "../physics/prescription/index.ts";
import type { CheckRecord } from "../records/check/checkRecord.ts";
import { fitmentOf } from "../records/check/fitmentOf.ts";
import { readCheckText } from "../records/check/readCheck.ts";
import { type Pack, packBounds } from "../records/pack/pack.ts";
import { readPackText } from "../records/pack/readPack.ts";
import "../saying/everyText.ts";
import { inModelUnits } from "../saying/modelUnits.ts";
import * as messages from "../words/compiled/command-line.ts";
import { type AssessArguments, parseArguments, usage } from "./arguments.ts";
import { type PrintedAssessment, type PrintedError, printedAssessment } from "./assessmentJson.ts";
import { assessmentTable, printable } from "./assessmentTable.ts";
import { prescriptionOf } from "./prescriptionJson.ts";
import { readTextFile } from "./readFile.ts";
import { startFolder } from "./startFolder.ts";
import type { Terminal } from "./writing.ts";

type Assessed =
  | {
      readonly ok: true;
      readonly record: CheckRecord;
      readonly assessment: Assessment;
      readonly prescription: Prescription;
    }
  | { readonly ok: false; readonly error: string };

/** What holds for every file of one command. */
interface Asked {
  readonly samples: number | null;
  readonly pack: Pack | null;
}

function assessFile(file: string, { samples, pack }: Asked): Assessed {
  const refused = (outcome: Outcome<unknown>): Assessed => ({
    ok: false,
    error: outcome.ok ? "" : inModelUnits(outcome.fault.sentence),
  });
  const text = readTextFile(resolve(startFolder("assess"), file));
  if (!text.ok) return refused(text);
  const record = readCheckText(text.value);
  if (!record.ok) return refused(record);
  const fitment = fitmentOf(record.value);
  const assessment = assessFitment(fitment, samples === null ? {} : { samples });
  if (!assessment.ok) return refused(assessment);
  const prescription = prescriptionOf(record.value, fitment, pack, samples);
  return { ok: true, record: record.value, assessment: assessment.value, prescription };
}

/** A fault of the program itself on one file must not cost the others their answers. */
function assessOrSay(file: string, asked: Asked): Assessed {
  try {
    return assessFile(file, asked);
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return { ok: false, error: messages.assessmentItselfFailedPlease({ reason }) };
  }
}

function printed(file: string, assessed: Assessed): PrintedAssessment | PrintedError {
  return assessed.ok
    ? printedAssessment(assessed.record, assessed.assessment, assessed.prescription)
    : { file, error: assessed.error };
}

/** The pack of `--pack`; a fault of it is told before any file is read. */
function packAt(file: string | null): Outcome<Pack | null> {
  if (file === null) return { ok: true, value: null };
  const text = readTextFile(resolve(startFolder("assess"), file), packBounds.textCharacters);
  return text.ok ? readPackText(text.value) : text;
}

async function assessAll(
  { json, samples, pack, files }: AssessArguments,
  terminal: Terminal,
): Promise<number> {
  let failed = false;
  const chosen = packAt(pack);
  if (!chosen.ok) {
    terminal.complain(`${printable(pack ?? "")}: ${inModelUnits(chosen.fault.sentence)}\n`);
    return 2;
  }
  if (json) await terminal.write("[");
  for (const [index, file] of files.entries()) {
    const assessed = assessOrSay(file, { samples, pack: chosen.value });
    failed ||= !assessed.ok;
    if (json) {
      const element = JSON.stringify(printed(file, assessed), null, 2).replaceAll("\n", "\n  ");
      await terminal.write(`${index === 0 ? "" : ","}\n  ${element}`);
      continue;
    }
    const text = assessed.ok
      ? assessmentTable(
          printable(file),
          assessed.record,
          assessed.assessment,
          assessed.prescription,
        )
      : messages.notAssessed({ file: printable(file), error: printable(assessed.error) });
    await terminal.write(`${index === 0 ? "" : "\n"}${text}\n`);
  }
  if (json) await terminal.write("\n]\n");
  return failed ? 1 : 0;
}

/** `npm run assess`, told what was typed after it; its exit code. */
export async function assessCommand(given: readonly string[], terminal: Terminal): Promise<number> {
  const parsed = parseArguments(given);
  if (parsed === "help") {
    await terminal.write(`${usage}\n`);
    return 0;
  }
  if (!parsed.ok) {
    terminal.complain(`${parsed.message}\n\n${usage}\n`);
    return 2;
  }
  return assessAll(parsed.value, terminal);
}
