import * as messages from "../../words/compiled/records/filling.ts";
import type { Say } from "../../words/message.ts";
import type { Axle, Job } from "../check/checkRecord.ts";
import type { ListedCheck } from "../check/listedCheck.ts";
import { changeRecord, newId, newStoredCheck, type StoredCheck } from "../check/storedCheck.ts";
import { withField } from "../entry/entryPath.ts";
import { type Pack, platformOf } from "../pack/pack.ts";
import { movedTo } from "./choice.ts";
import { withPlatform } from "./platforms.ts";
import { chosenSides, withSides } from "./sides.ts";

/** What all checks of a job have in common; whether one is before or after is its own. */
export type JobFacts = Omit<Job, "moment">;

export function factsOfJob({ id, label, number, customer }: Job): JobFacts {
  return {
    id,
    label: label.trim(),
    ...(number?.trim() && { number: number.trim() }),
    ...(customer?.trim() && { customer: customer.trim() }),
  };
}

/** The job of a check, or a new one that begins with it. */
export function jobOf({ name, record }: ListedCheck, say: Say): Job {
  return (
    record.job ?? {
      id: newId(),
      label: record.vehicle?.label?.trim() || name.trim() || say(messages.vehicle),
    }
  );
}

export function withJob(stored: StoredCheck, job: Job | undefined): StoredCheck {
  return changeRecord(stored, (record) => withField(record, "job", job));
}

/** A check of the same job with what is common to all, its own moment kept. */
export function withJobFacts(stored: StoredCheck, facts: JobFacts): StoredCheck {
  const moment = stored.record.job?.moment;
  return withJob(stored, { ...facts, ...(moment && { moment }) });
}

const common = /^rules\b/;

/**
 * A new check of the other axle of the same vehicle, and the first one with the job that both belong to.
 * Vehicle, use, requirements, who measures and the sides go along. Lift, layout, readings, weights and
 * stop are each axle's own; the cautions are read again before each axle.
 */
export function otherAxle(
  stored: StoredCheck,
  pack: Pack,
  say: Say,
): { readonly first: StoredCheck; readonly other: StoredCheck } {
  const { record } = stored;
  const job = jobOf(stored, say);
  const axle: Axle = record.axle === "front" ? "rear" : "front";
  const { rules, author, reference, vehicle } = record;
  const fresh = newStoredCheck(stored.name);
  const house = reference?.rules && {
    pack: reference.pack,
    ...(reference.edition !== undefined && { edition: reference.edition }),
    rules: reference.rules,
  };
  const held = movedTo(stored, (id) => (common.test(id) ? id : null));
  const begun = changeRecord({ ...fresh, ...held }, (empty) => ({
    ...empty,
    ...(author && { author }),
    vehicle: {
      ...empty.vehicle,
      ...(vehicle?.label !== undefined && { label: vehicle.label }),
      ...(vehicle?.use !== undefined && { use: vehicle.use }),
    },
    axle,
    ...(rules && { rules }),
    ...(house && { reference: house }),
    job,
  }));
  const sided = withSides(begun, chosenSides(stored) ?? "both");
  const known = reference?.platform ?? platformOf(pack, vehicle?.platformId ?? null);
  const platform =
    known && pack.platforms.find((each) => each.label === known.label && each.axle === axle);
  return {
    first: record.job ? stored : withJob(stored, job),
    other: platform ? withPlatform(sided, platform, pack) : sided,
  };
}

/** Other checks of this check's job, as they stand in a list. */
export function othersOfJob(
  { id, record }: ListedCheck,
  checks: readonly ListedCheck[],
): readonly ListedCheck[] {
  const { job } = record;
  return job === undefined
    ? []
    : checks.filter((each) => each.id !== id && each.record.job?.id === job.id);
}

/** The check of the same axle before or after the change, whichever this one is not; null: none. */
export function counterpartOf(
  stored: ListedCheck,
  checks: readonly ListedCheck[],
): ListedCheck | null {
  const { job, axle } = stored.record;
  if (job?.moment === undefined || axle === undefined) return null;
  const wanted = job.moment === "before" ? "after" : "before";
  const found = othersOfJob(stored, checks).filter(
    ({ record }) => record.axle === axle && record.job?.moment === wanted,
  );
  const byAge = found.sort((a, b) => Date.parse(b.createdAt) - Date.parse(a.createdAt));
  const made = Date.parse(stored.createdAt);
  // Of several the one just before or just after; the clock of another phone may tell otherwise.
  const nearest =
    wanted === "before"
      ? byAge.find(({ createdAt }) => Date.parse(createdAt) <= made)
      : byAge.filter(({ createdAt }) => Date.parse(createdAt) >= made).at(-1);
  return nearest ?? byAge[0] ?? null;
}
