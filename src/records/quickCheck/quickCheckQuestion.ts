import type { LimitKind, Side, Use } from "../../physics/fitment.ts";
import type { TypedReading } from "../check/checkRecord.ts";
import type { PayloadWord } from "../entry/payloadWords.ts";

/** The five readings of a customer with a tape measure; any may be left out but the payload. */
export interface QuickCheckReadings {
  /** Wheel centre to arch, mm. Without it the platform is taken as standing as usual. */
  readonly rideHeight?: TypedReading;
  /** Stop to pad along the stop's axis, mm. */
  readonly gap?: TypedReading;
  /** Free height of the stop that is fitted, mm. */
  readonly stopHeight?: TypedReading;
  /** Clearance over the tire, or rod left on the damper, mm. */
  readonly clearance?: {
    readonly kind: Extract<LimitKind, "tyre" | "damper">;
    readonly reading: TypedReading;
  };
  readonly payload: PayloadWord;
}

export interface QuickCheckQuestion {
  readonly platformId: string;
  readonly use: Use;
  /** The stop of the pack that is fitted, by its label or number; absent: the platform's usual one. */
  readonly part?: { readonly stopId: string; readonly batch?: string };
  readonly side?: Side;
  readonly readings: QuickCheckReadings;
  /** New UUID and time of the record: the caller's, so that this stays pure. */
  readonly id: string;
  readonly createdAt: string;
  readonly label?: string;
}

/** The four that are taken with a tape; what it carries is told. */
export const measuredNames = ["rideHeight", "gap", "stopHeight", "clearance"] as const;
export type MeasuredName = (typeof measuredNames)[number];
