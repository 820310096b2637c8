import type { Fault, Outcome } from "../../physics/outcome.ts";
import type { Message, Sentence, Words } from "../../physics/sentence.ts";
import * as messages from "../../words/compiled/records/check.ts";
import { issueFault, type SchemaIssue } from "../text/faultWords.ts";
import { checkPlainData, readJsonText, shortened } from "../text/jsonText.ts";
import { isPlainObject } from "../text/plainObject.ts";
import type { CheckRecord } from "./checkRecord.ts";
import { checkSchema } from "./checkSchema.ts";
import { fromVersion1 } from "./earlierVersion.ts";
import { checkFormat, checkVersion } from "./recordFormat.ts";
import { absentFaults, recordFaults } from "./recordRules.ts";
import { fits } from "./schema/fits.ts";

/** An Outcome with every fault beside it; `fault` is the first few in one. */
export type ReadCheck =
  | { readonly ok: true; readonly value: CheckRecord }
  | { readonly ok: false; readonly fault: Fault; readonly faults: readonly Fault[] };

const faultsShown = 3;
const faultsKept = 50;

/** A check record from the text of a file, a link or a code. */
export function readCheckText(text: string, what: Words = messages.file): ReadCheck {
  const json = readJsonText(text, what);
  return json.ok ? judge(json.value, what) : single(json);
}

/** A check record from a value that has already been parsed. The value itself is never altered. */
export function readCheckValue(value: unknown, what: Words = messages.file): ReadCheck {
  const plain = checkPlainData(value, what);
  return plain.ok ? judge(value, what) : single(plain);
}

function single(outcome: Outcome<never> | Outcome<unknown>): ReadCheck {
  if (outcome.ok) return { ok: false, fault: unreadable, faults: [unreadable] };
  return { ok: false, fault: outcome.fault, faults: [outcome.fault] };
}

const unreadable: Fault = { code: "unreadable", sentence: [messages.checkCantBeRead] };

function judge(value: unknown, what: Words): ReadCheck {
  const foreign = foreignFormat(value, what);
  if (foreign !== null) return { ok: false, fault: foreign, faults: [foreign] };
  const current = isPlainObject(value) && value.version === 1 ? fromVersion1(value) : value;
  const issues: SchemaIssue[] = [];
  // The schema changes nothing, so the value itself is the record, unknown fields and all.
  if (!fits(checkSchema, current, issues)) {
    return many(issues.slice(0, faultsKept).map((issue) => issueFault(issue, current)));
  }
  const faults = [...absentFaults(current), ...recordFaults(current)];
  return faults.length === 0 ? { ok: true, value: current } : many(faults);
}

function foreignFormat(value: unknown, what: Words): Fault | null {
  const fault = (code: string, words: Message): Fault => ({ code, sentence: [words] });
  if (!isPlainObject(value)) return fault("notACheck", messages.isNotFitmentCheck({ what }));
  const format = Object.hasOwn(value, "format") ? value.format : undefined;
  const version = Object.hasOwn(value, "version") ? value.version : undefined;
  if (format !== checkFormat) {
    const isText = typeof format === "string";
    const told = isText ? shortened(format) : undefined;
    return fault(
      "otherFormat",
      messages.isOfOtherFormat({ what, hasFormat: isText, format: told }),
    );
  }
  if (typeof version === "number" && Number.isInteger(version) && version > checkVersion) {
    return fault("newerVersion", messages.wasMadeByNewer({ what, version, checkVersion }));
  }
  if (version !== checkVersion && version !== 1) {
    return fault("unknownVersion", messages.doesNotSayWhich({ what }));
  }
  return null;
}

function many(faults: readonly Fault[]): ReadCheck {
  const first = faults[0] ?? unreadable;
  const shown = faults.slice(0, faultsShown);
  const words: Sentence = shown.flatMap(({ sentence }, index) =>
    index === 0 ? [...sentence] : [" ", ...sentence],
  );
  const more = faults.length - shown.length;
  const rest = more === 0 ? [] : [messages.thereIs1More({ more })];
  return { ok: false, fault: { ...first, sentence: [...words, ...rest] }, faults };
}
