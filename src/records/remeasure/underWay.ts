import type { Side } from "../../physics/fitment.ts";
import type { ReadingId } from "../../physics/readings/index.ts";
import type { RemeasureLevel } from "../../physics/remeasure/index.ts";
import type { StoredSentence } from "../../words/message.ts";
import type { Entry } from "../entry/entry.ts";

/** What a reading was until it was taken again. */
export interface EarlierValue {
  readonly reading: ReadingId;
  readonly entry: Entry;
  /** ISO 8601. */
  readonly until: string;
}

/** Kept by reading and moment, so that two tabs' earlier values are joined and none is lost. */
export type EarlierValues = { readonly [key: string]: EarlierValue };

/** The figure that a reading was taken again for, and half its 95 % interval before, mm. */
export interface DoubtBefore {
  readonly about: "reserve" | "freeTravel";
  readonly side: Side;
  readonly halfWidthMm: number;
}

/** The reading that is being taken again. */
export interface ReadingNow {
  readonly reading: ReadingId;
  /** What stood there; null: it was never taken. */
  readonly before: Entry | null;
  /** A tool that the forecast reckons with; null: none in particular. */
  readonly tool: { readonly id: string; readonly name: string } | null;
  /** Share of the doubt that it would remove, 0 … 1; null: nothing is decided without it. */
  readonly removes: number | null;
  readonly sentence: StoredSentence;
  readonly doubt: DoubtBefore | null;
}

export type HowDone = "taken" | "same" | "passed";

/** A walk through the readings to take again, while it is under way. */
export interface RemeasureWalk {
  /** What it goes on for: until the verdict is known at all, or until it is more than "take care". */
  readonly level: RemeasureLevel;
  readonly done: readonly { readonly reading: ReadingId; readonly how: HowDone }[];
  readonly now: ReadingNow | null;
  /** How many the plan still held when the present one was opened, with it. */
  readonly left: number;
  /** The doubt before the reading that was done last; null where none was about doubt. */
  readonly just: DoubtBefore | null;
}
