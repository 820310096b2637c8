import type { ReadingId } from "../../physics/readings/index.ts";
import type { Axle } from "../check/checkRecord.ts";
import type { DecisionKind } from "./decision.ts";

export const replyFormat = "stopfit-reply";
export const replyVersion = 1;

/** What the desk sends back: its words, and the readings to take again by their ids. */
export interface Reply {
  readonly format: typeof replyFormat;
  readonly version: typeof replyVersion;
  readonly id: string;
  readonly checkId: string;
  /** The digest of the readings that it answers; absent in replies made before there was one. */
  readonly answers?: string;
  readonly createdAt: string;
  readonly from: string;
  readonly kind: Exclude<DecisionKind, "undo">;
  readonly vehicle: string;
  readonly axle: Axle;
  readonly readings: readonly ReadingId[];
  readonly text: string;
}
