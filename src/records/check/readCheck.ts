import type { Fault, Outcome } from "../../physics/outcome.ts";
import type { Sentence } from "../../physics/sentence.ts";
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
export function readCheckText(text: string, what = "The file"): ReadCheck {
  const json = readJsonText(text, what);
  return json.ok ? judge(json.value, what) : single(json);
}

/** A check record from a value that has already been parsed. The value itself is never altered. */
export function readCheckValue(value: unknown, what = "The file"): ReadCheck {
  const plain = checkPlainData(value, what);
  return plain.ok ? judge(value, what) : single(plain);
}

function single(outcome: Outcome<never> | Outcome<unknown>): ReadCheck {
  if (outcome.ok) return { ok: false, fault: unreadable, faults: [unreadable] };
  return { ok: false, fault: outcome.fault, faults: [outcome.fault] };
}

const unreadable: Fault = { code: "unreadable", sentence: ["The check can't be read."] };

function judge(value: unknown, what: string): ReadCheck {
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

function foreignFormat(value: unknown, what: string): Fault | null {
  const fault = (code: string, words: string): Fault => ({ code, sentence: [words] });
  if (!isPlainObject(value)) return fault("notACheck", `${what} is not a fitment check.`);
  const format = Object.hasOwn(value, "format") ? value.format : undefined;
  const version = Object.hasOwn(value, "version") ? value.version : undefined;
  if (format !== checkFormat) {
    const found = typeof format === "string" ? `its format is “${shortened(format)}”` : "";
    return fault(
      "otherFormat",
      `${what} is not a fitment check: ${found || "it does not say that it is one"}.`,
    );
  }
  if (typeof version === "number" && Number.isInteger(version) && version > checkVersion) {
    return fault(
      "newerVersion",
      `${what} was made by a newer version of Stopfit (record version ${version}); this one reads up to version ${checkVersion}. Update Stopfit, then open it again.`,
    );
  }
  if (version !== checkVersion && version !== 1) {
    return fault("unknownVersion", `${what} does not say which version of the record it is.`);
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
  const rest =
    more === 0 ? [] : [` There ${more === 1 ? "is 1 more fault" : `are ${more} more faults`}.`];
  return { ok: false, fault: { ...first, sentence: [...words, ...rest] }, faults };
}
