import type { Ride, UseRules } from "../../physics/fitment.ts";
import type { Axle, CheckLayout, CheckLimit, TypedReading } from "../check/checkRecord.ts";

/** One axle of a vehicle as it usually stands: geometry, heights, masses, rates and hard limits. */
export interface Platform {
  readonly id: string;
  readonly label: string;
  readonly axle: Axle;
  readonly layout: CheckLayout;
  readonly rideHeight?: TypedReading;
  /** The gap with its usual stop, unladen. */
  readonly gap?: TypedReading;
  readonly cornerMassKg?: TypedReading;
  readonly ride?: Ride;
  readonly limits: readonly CheckLimit[];
  /** The id of the stop it usually has. */
  readonly usualStop: string | null;
  readonly notes?: string;
}

/**
 * What a check took from a reference pack, as the pack had it then. The check goes by this copy, so that
 * a later pack changes no old answer. Its stop is a copy as well, and stands in the record itself.
 */
export interface TakenFromPack {
  /** The pack's name. */
  readonly pack: string;
  readonly platform?: Platform;
  /** The house rules of the check's use. */
  readonly rules?: Partial<UseRules>;
}
