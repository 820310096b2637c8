import type { FieldPath } from "../../physics/outcome.ts";
import { isReadingId, type ReadingId } from "../../physics/readings/index.ts";
import type { Message, Sentence } from "../../physics/sentence.ts";
import type { TypedReading } from "../check/checkRecord.ts";

type OddKind =
  | "unitSlip"
  | "outOfRange"
  | "ratio"
  | "scatter"
  | "leftRight"
  | "reference"
  | "gapTooLarge"
  /** What was typed is another number than the value beside it. */
  | "typed"
  /** No ± at all: nothing that is measured is that exact. */
  | "noTolerance"
  /** The check demands of the stop otherwise than this desk does. */
  | "demand"
  /** A date that lies ahead. */
  | "date";

/** A reading that looks odd, and why. Nothing is refused for it: someone has to look. */
export interface OddReading {
  readonly reading: FieldPath;
  readonly kind: OddKind;
  readonly sentence: Sentence;
}

/** Can the person be asked to take it again? A demand and a date are no readings. */
export function isReadAgain({ kind, reading }: OddReading): boolean {
  return kind !== "demand" && kind !== "date" && isReadingId(reading);
}

/** One reading of a record in the order in which it is measured. */
export interface NamedReading {
  readonly id: ReadingId;
  readonly name: Message;
  readonly reading: TypedReading;
}
