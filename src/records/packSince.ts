import type { RideQuantity } from "../physics/fitment.ts";
import type { Sentence } from "../physics/sentence.ts";
import type { PartialCheckRecord } from "./checkRecord.ts";
import { type Pack, platformOf, recordStop } from "./pack.ts";
import { entryName } from "./readingCatalogue.ts";

/** What marks a value of a record as taken from a pack rather than measured. */
const fromPack = /^reference pack|from the reference pack/i;

function same(one: unknown, other: unknown): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}

/** Key order, and what was typed beside a number, do not matter for what a stop is. */
function ordered(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(ordered);
  if (typeof value !== "object" || value === null) return value;
  const entries = Object.entries(value).filter(([name]) => name !== "typed");
  return Object.fromEntries(
    entries.sort(([a], [b]) => (a < b ? -1 : 1)).map(([name, each]) => [name, ordered(each)]),
  );
}

/**
 * What a check holds from a pack that the pack in use has otherwise: its stop, by name, and the ride
 * data that it says came from the pack. The check's own copy counts for its answer; these sentences
 * say that the two differ. What was measured on the vehicle is no difference.
 */
export function packSince(record: PartialCheckRecord, pack: Pack): readonly Sentence[] {
  const sentences: Sentence[] = [];
  const { stop } = record;
  const named = pack.stops.filter(({ name }) => name === stop?.name);
  if (stop && named.length > 0) {
    const own = ordered(stop);
    if (!named.some((each) => same(ordered(recordStop(each)), own))) {
      sentences.push([
        `The pack's “${stop.name}” is no longer as this check has it. The answer holds for the stop as the check has it.`,
      ]);
    }
  }
  const platform = platformOf(pack, record.vehicle?.platformId ?? null);
  if (platform === null) return sentences;
  const { ride } = record;
  for (const [name, how] of Object.entries(ride?.estimated ?? {})) {
    if (typeof how !== "string" || !fromPack.test(how)) continue;
    const quantity = name as RideQuantity;
    const mine = ride?.[quantity];
    const theirs = platform.ride?.[quantity];
    if (mine === undefined || theirs === undefined || mine === theirs) continue;
    sentences.push([
      `The ${entryName(`ride.${name}`)} came from the pack, which has another value now. The answer holds for the one in the check.`,
    ]);
  }
  return sentences;
}
