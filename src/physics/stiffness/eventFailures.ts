import type { DesignEvent, EventResult, UseRules } from "../fitment.ts";
import { type ImpactOptions, simulateImpact } from "../impact/impact.ts";
import type { ImpactSetup } from "../impact/impactSetup.ts";
import type { Fault } from "../outcome.ts";

/** Why a stop does not work in one event of the use. */
export type FailureKind = "fullStop" | "hardContact" | "acceleration" | "notComputed";

export interface EventFailure {
  /** Place of the event in the use's rules, from 0. */
  readonly eventIndex: number;
  readonly kind: FailureKind;
}

export interface TryOptions extends Pick<ImpactOptions, "tolerance" | "mostSteps"> {
  /**
   * Ends at the first failure, in the midst of its event: its result is then of the run so far, and events
   * after it are left out.
   */
  readonly toFirstFailure?: boolean;
  /** Places of the events, in the order in which they are tried; absent: as they stand. */
  readonly order?: readonly number[];
}

export interface EventsTried {
  /** One an event, in the order tried; null where it could not be computed. */
  readonly results: readonly (EventResult | null)[];
  readonly failures: readonly EventFailure[];
  readonly faults: readonly Fault[];
}

/**
 * Puts one corner through every event of the use. A stop works in an event when neither its usable
 * compression nor the hard limit is passed and the sprung mass stays within the acceleration cap.
 * See MODEL.md, What works; the criteria are common practice. Yields after each event.
 */
export function* tryEvents(
  setup: ImpactSetup,
  rules: UseRules,
  { toFirstFailure = false, order, ...run }: TryOptions = {},
): Generator<void, EventsTried, void> {
  const results: (EventResult | null)[] = [];
  const failures: EventFailure[] = [];
  const faults: Fault[] = [];
  const options: ImpactOptions = {
    ...run,
    ...(toFirstFailure && { failsAboveG: rules.accelerationCapG }),
  };
  for (const eventIndex of order ?? rules.events.keys()) {
    const tried = simulateImpact(setup, rules.events[eventIndex] as DesignEvent, options);
    if (tried.ok) {
      const { result } = tried.value;
      results.push(result);
      for (const kind of failureKinds(result, rules.accelerationCapG)) {
        failures.push({ eventIndex, kind });
      }
    } else {
      results.push(null);
      failures.push({ eventIndex, kind: "notComputed" });
      faults.push(tried.fault);
    }
    yield;
    if (toFirstFailure && failures.length > 0) break;
  }
  return { results, failures, faults };
}

function failureKinds(result: EventResult, accelerationCapG: number): FailureKind[] {
  const kinds: FailureKind[] = [];
  if (result.fullStop) kinds.push("fullStop");
  if (result.hardContact) kinds.push("hardContact");
  if (!(result.peakAccelerationG <= accelerationCapG)) kinds.push("acceleration");
  return kinds;
}
