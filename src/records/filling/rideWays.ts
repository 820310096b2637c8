import type { RideQuantity } from "../../physics/fitment.ts";
import type { ChoiceValue } from "../check/choices.ts";
import { changeRecord, type StoredCheck } from "../check/storedCheck.ts";
import { withField } from "../entry/entryPath.ts";
import { setEntry } from "./changes.ts";
import { chosen, withChoice } from "./choice.ts";

/** Quantities with a way of their own; rebound goes the way of bump. */
export type WayQuantity = Exclude<RideQuantity, "damperReboundNsPerMm">;
export type RideWay<Name extends WayQuantity = WayQuantity> = ChoiceValue<`ride.${Name}.way`>;

const asideId = (name: RideQuantity) => `aside.ride.${name}`;

/** How a ride quantity is come by: "typed", "unknown", or the name of an estimate; null: not chosen. */
export function rideWay(stored: StoredCheck, name: WayQuantity): RideWay | null {
  const way = chosen(stored, `ride.${name}.way`);
  if (way !== null) return way;
  return stored.record.ride?.[name] === undefined ? null : "typed";
}

/** The record without this quantity, its ± and how it was come by. Entries stay. */
export function withoutRide(stored: StoredCheck, name: RideQuantity): StoredCheck {
  return changeRecord(stored, (record) => {
    if (!record.ride) return record;
    const { tolerances = {}, estimated = {} } = record.ride;
    const keptTolerances = withField(tolerances, name, undefined);
    const keptEstimated = withField(estimated, name, undefined);
    let ride = withField(record.ride, name, undefined);
    ride = withField(
      ride,
      "tolerances",
      Object.keys(keptTolerances).length === 0 ? undefined : keptTolerances,
    );
    ride = withField(
      ride,
      "estimated",
      Object.keys(keptEstimated).length === 0 ? undefined : keptEstimated,
    );
    return withField(record, "ride", Object.keys(ride).length === 0 ? undefined : ride);
  });
}

/** The check with another way chosen; a typed value waits and is there again when typing is chosen. */
export function withRideWay(
  stored: StoredCheck,
  names: readonly [WayQuantity, ...RideQuantity[]],
  way: RideWay,
): StoredCheck {
  const [first] = names;
  const before = rideWay(stored, first);
  if (before === way) return withChoice(stored, `ride.${first}.way`, way);
  let changed = withChoice(stored, `ride.${first}.way`, way);
  for (const name of names) {
    const id = `ride.${name}`;
    const entry = changed.entries[id];
    if (before === "typed" && entry) {
      changed = { ...changed, entries: { ...changed.entries, [asideId(name)]: entry } };
    }
    if (way === "typed") {
      const { [id]: _, ...others } = changed.entries;
      const typed = changed.entries[asideId(name)];
      changed = withoutRide({ ...changed, entries: others }, name);
      if (typed) changed = setEntry(changed, id, typed);
    } else {
      const { [id]: _, ...others } = changed.entries;
      changed = withoutRide({ ...changed, entries: others }, name);
    }
  }
  return changed;
}
