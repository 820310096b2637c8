import { fail, type Outcome, succeed } from "../../../physics/outcome.ts";
import type { CheckRecord, CheckStop } from "../../../records/checkRecord.ts";

const records = import.meta.glob<CheckRecord>("../../../../demo-data/checks/*.json", {
  import: "default",
});

/** The stops of the reference pack. */
export async function packStops(): Promise<Outcome<readonly CheckStop[]>> {
  try {
    const all = await Promise.all(Object.values(records).map((load) => load()));
    return succeed(all.map(({ stop }) => stop));
  } catch {
    return fail("packUnreadable", ["The reference pack could not be fetched. Try again."]);
  }
}
