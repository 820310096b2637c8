import type { EventResult, Interval, Side } from "../fitment.ts";
import type { Fault } from "../outcome.ts";

/** Why a stiffness class does not work in one event of the use. */
export type FailureKind = "fullStop" | "hardContact" | "acceleration" | "notComputed";

export interface ClassFailure {
  /** R5 class, N/mm. */
  readonly stiffnessClass: number;
  /** Place of the event in the use's rules, from 0. */
  readonly eventIndex: number;
  readonly kind: FailureKind;
}

/** The dynamic half of one corner's answer (model section 5), for the loaded state. */
export interface CornerDynamics {
  readonly side: Side;
  /** The stop as it is, one result an event; null where it could not be computed: see `faults`. */
  readonly events: readonly EventResult[] | null;
  /** R5 classes, N/mm, rising; null where it could not be computed. */
  readonly classesThatWork: readonly number[] | null;
  /** Least and greatest of the classes that work; null beside a list = no class works here. */
  readonly classWindow: Interval | null;
  /** What each class that does not work fails on, softest first. */
  readonly failures: readonly ClassFailure[];
  /** On which side of the classes that work the stop's own class lies; null inside or where none work. */
  readonly stiffnessSide: "soft" | "stiff" | null;
  readonly faults: readonly Fault[];
}
