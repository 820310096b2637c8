import type { Fault } from "../../physics/outcome.ts";
import type { Sentence } from "../../physics/sentence.ts";
import { entryOutcome, limitKindOf } from "../entry/entryPath.ts";
import { entryName } from "../entry/readingCatalogue.ts";
import { type CheckRecord, layoutReadingNames, type PartialCheckRecord } from "./checkRecord.ts";
import { fieldTitle, recordFaults } from "./recordRules.ts";
import type { StoredCheck } from "./storedCheck.ts";

/** One thing still missing: its id ("left.gap", "vehicle.label", "layout.kind") and what to do. */
export interface MissingField {
  readonly field: string;
  readonly sentence: Sentence;
}

/** The complete record, or everything that is missing from it. An Outcome with the list beside it. */
export type Completion =
  | { readonly ok: true; readonly value: CheckRecord }
  | { readonly ok: false; readonly fault: Fault; readonly missing: readonly MissingField[] };

function missingOf(stored: StoredCheck): MissingField[] {
  const { record } = stored;
  const missing: MissingField[] = [];
  const need = (present: boolean, field: string, words: string): void => {
    if (!present) missing.push({ field, sentence: [words] });
  };
  const needReading = (present: boolean, id: string): void => {
    if (present) return;
    const entry = stored.entries[id];
    const outcome = entry === undefined ? null : entryOutcome(id, entry);
    if (outcome !== null && !outcome.ok && outcome.fault.code !== "entryEmpty") {
      const title = fieldTitle(record, id);
      missing.push({ field: id, sentence: [`${title}: `, ...outcome.fault.sentence] });
      return;
    }
    const name = entryName(id, limitKindOf(record, id));
    missing.push({ field: id, sentence: [`The ${name} is not measured yet.`] });
  };
  const { vehicle, layout, stop } = record;
  need((vehicle?.label ?? "").trim() !== "", "vehicle.label", "The vehicle has no name yet.");
  need(vehicle?.use !== undefined, "vehicle.use", "The use of the vehicle is not chosen yet.");
  need(vehicle?.liftMm !== undefined, "vehicle.liftMm", "The lift can't be read. 0 is no lift.");
  need(record.axle !== undefined, "axle", "The axle is not chosen yet.");
  need(layout?.kind !== undefined, "layout.kind", "The layout is not chosen yet.");
  if (layout?.kind !== undefined) {
    for (const name of layoutReadingNames[layout.kind].needed) {
      needReading(layout.readings?.[name] !== undefined, name);
    }
  }
  need(record.corners.length > 0, "corners", "No side is measured yet.");
  for (const corner of record.corners) {
    needReading(corner.gap !== undefined, `${corner.side}.gap`);
    corner.limits.forEach((limit, index) => {
      needReading(limit.reading !== undefined, `${corner.side}.limits.${index}`);
    });
  }
  need((stop?.name ?? "").trim() !== "", "stop.name", "The stop is not chosen yet.");
  need(stop?.duty !== undefined, "stop.duty", "The duty of the stop is not chosen yet.");
  needReading(stop?.freeHeight !== undefined, "stop.freeHeight");
  needReading(stop?.usableCompressionMm !== undefined, "stop.usableCompressionMm");
  needReading(stop?.curve !== undefined && stop.curve.length > 0, "stop.curve");
  missing.push(...unreadable(stored, missing));
  return missing;
}

/** Entries that hold something unreadable where nothing at all would have done. */
function unreadable(stored: StoredCheck, known: readonly MissingField[]): MissingField[] {
  const names = layoutReadingNames[stored.record.layout?.kind ?? "strut"];
  const layoutNames: readonly string[] = [...names.needed, ...names.optional];
  const found: MissingField[] = [];
  for (const [id, entry] of Object.entries(stored.entries)) {
    if (known.some(({ field }) => field === id)) continue;
    const own = /^(?:left|right)\.([A-Za-z]+)$/.exec(id)?.[1] ?? id;
    const geometry = id === own || !["gap", "rideHeight", "cornerMassKg"].includes(own);
    const belongs =
      /\.limits\./.test(id) || !geometry || /^(?:stop|ride|rules|vehicle|layout)\./.test(id)
        ? true
        : layoutNames.includes(own) && (id === own || stored.progress.rightGeometry === "own");
    if (!belongs) continue;
    const outcome = entryOutcome(id, entry);
    if (outcome.ok || outcome.fault.code === "entryEmpty") continue;
    const title = fieldTitle(stored.record, id);
    found.push({ field: id, sentence: [`${title}: `, ...outcome.fault.sentence] });
  }
  return found;
}

/** What a complete record adds to one that lacks only what has one plain default. */
function withDefaults(record: PartialCheckRecord): CheckRecord {
  const vehicle = record.vehicle ?? {};
  const filled = {
    ...record,
    author: { ...record.author, role: record.author?.role ?? "installer" },
    vehicle: vehicle.platformId === undefined ? { ...vehicle, platformId: null } : vehicle,
    layout:
      record.layout?.readings === undefined ? { ...record.layout, readings: {} } : record.layout,
    stop: {
      ...record.stop,
      damping: record.stop?.damping ?? null,
      testedAtSpeed: record.stop?.testedAtSpeed ?? false,
    },
  };
  // missingOf and recordFaults have found every other field present and sound.
  return filled as CheckRecord;
}

/** The record of a check in which nothing is missing, or the list of what is. */
export function completeRecord(stored: StoredCheck): Completion {
  const missing = missingOf(stored);
  for (const { sentence, reading, code } of recordFaults(stored.record)) {
    missing.push({ field: reading ?? code, sentence });
  }
  const first = missing[0];
  if (first === undefined) return { ok: true, value: withDefaults(stored.record) };
  return {
    ok: false,
    fault: { code: "recordIncomplete", sentence: first.sentence, reading: first.field },
    missing,
  };
}
