import { type Outcome, succeed } from "../../physics/outcome.ts";
import { readCheckValue } from "../../records/readCheck.ts";
import { storedFromRecord } from "../../records/storedCheck.ts";
import type { LengthUnit } from "../../records/units.ts";
import type { CheckStore } from "../../storage/checkStore.ts";

const records = import.meta.glob<unknown>("../../../demo-data/checks/*.json", {
  eager: true,
  import: "default",
});

/** The demo checks on this phone: those that are not there are added, deleted ones brought back. */
export async function addDemoChecks(store: CheckStore, unit: LengthUnit): Promise<Outcome<number>> {
  const deleted = await store.list("deleted");
  const gone = new Set(deleted.ok ? deleted.value.map(({ id }) => id) : []);
  let added = 0;
  for (const value of Object.values(records)) {
    const read = readCheckValue(value, "The demo check");
    if (!read.ok) return read;
    const outcome = gone.has(read.value.id)
      ? await store.restore(read.value.id)
      : await store.add(storedFromRecord(read.value, { unit }));
    if (!outcome.ok) return outcome;
    added += 1;
  }
  return succeed(added);
}
