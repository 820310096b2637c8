import type { Sentence } from "./sentence.ts";

/**
 * Why something could not be computed. `code` is for programs, `sentence` for a mechanic: what is
 * wrong, which reading, what to do. `reading` names the field to see to, where one is to blame.
 */
export interface Fault {
  readonly code: string;
  readonly sentence: Sentence;
  readonly reading?: FieldPath;
}

/** A value, or the fault that stands in its place. Never NaN, never a silent partial result. */
export type Outcome<Value> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly fault: Fault };

/** The path of the field of a record that a fault is about: a reading's id, or another field's, "stop.name". */
export type FieldPath = string;

export function succeed<Value>(value: Value): Outcome<Value> {
  return { ok: true, value };
}

export function fail<Value = never>(
  code: string,
  sentence: Sentence,
  reading?: FieldPath,
): Outcome<Value> {
  return {
    ok: false,
    fault: reading === undefined ? { code, sentence } : { code, sentence, reading },
  };
}
