import type { Fault } from "../../physics/outcome.ts";
import {
  isReadingId,
  layoutReadingsInOrder,
  placeOf,
  type ReadingId,
  standingNames,
} from "../../physics/readings/index.ts";
import type { Message, Sentence } from "../../physics/sentence.ts";
import * as messages from "../../words/compiled/records/check.ts";
import { entryOutcome, limitKindOf } from "../entry/entryPath.ts";
import { entryName } from "../entry/readingCatalogue.ts";
import type {
  CheckLayout,
  CheckLimit,
  CheckRecord,
  CheckStop,
  PartialCheckRecord,
  PartialLayout,
  PartialLimit,
} from "./checkRecord.ts";
import { lackingGeometry } from "./geometryGiven.ts";
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
  const need = (present: boolean, field: string, words: Message): void => {
    if (!present) missing.push({ field, sentence: [words] });
  };
  const needReading = (present: boolean, id: ReadingId): void => {
    if (present) return;
    const entry = stored.entries[id];
    const outcome = entry === undefined ? null : entryOutcome(id, entry);
    if (outcome !== null && !outcome.ok && outcome.fault.code !== "entryEmpty") {
      const title = fieldTitle(record, id);
      missing.push({
        field: id,
        sentence: [messages.within({ title, fault: outcome.fault.sentence })],
      });
      return;
    }
    const name = entryName(id, limitKindOf(record, id));
    missing.push({ field: id, sentence: [messages.isNotMeasuredYet({ name })] });
  };
  const { vehicle, layout, stop } = record;
  need((vehicle?.label ?? "").trim() !== "", "vehicle.label", messages.vehicleHasNoName);
  need(vehicle?.use !== undefined, "vehicle.use", messages.useOfVehicleIs);
  need(vehicle?.liftMm !== undefined, "vehicle.liftMm", messages.liftCantBeRead);
  need(record.axle !== undefined, "axle", messages.axleIsNotChosen);
  need(layout?.kind !== undefined, "layout.kind", messages.layoutIsNotChosen);
  for (const name of lackingGeometry(record)) needReading(false, name);
  need(record.corners.length > 0, "corners", messages.noSideIsMeasured);
  for (const corner of record.corners) {
    const standing = standingNames.some((name) => corner[name] !== undefined);
    needReading(standing, `${corner.side}.gap`);
    corner.limits.forEach(({ at, reading, distance }, index) => {
      const id = `${corner.side}.limits.${index}` as const;
      needReading(reading !== undefined, id);
      needReading(at !== "arm" || distance !== undefined, `${id}.distance`);
    });
  }
  need((stop?.name ?? "").trim() !== "", "stop.name", messages.stopIsNotChosen);
  need(stop?.duty !== undefined, "stop.duty", messages.dutyOfStopIs);
  needReading(stop?.freeHeight !== undefined, "stop.freeHeight");
  needReading(stop?.usableCompressionMm !== undefined, "stop.usableCompressionMm");
  needReading(stop?.curve !== undefined && stop.curve.length > 0, "stop.curve");
  missing.push(...unreadable(stored, missing));
  return missing;
}

/** Entries that hold something unreadable where nothing at all would have done. */
function unreadable(stored: StoredCheck, known: readonly MissingField[]): MissingField[] {
  const layoutNames: readonly string[] =
    layoutReadingsInOrder[stored.record.layout?.kind ?? "strut"];
  const found: MissingField[] = [];
  for (const [id, entry] of Object.entries(stored.entries)) {
    if (known.some(({ field }) => field === id)) continue;
    if (!isReadingId(id)) continue;
    const place = placeOf(id);
    if (place.of === "fullTravel") continue;
    const belongs =
      place.of !== "geometry" ||
      (layoutNames.includes(place.name) &&
        (place.side === null || stored.progress.rightGeometry === "own"));
    if (!belongs) continue;
    const outcome = entryOutcome(id, entry);
    if (outcome.ok || outcome.fault.code === "entryEmpty") continue;
    const title = fieldTitle(stored.record, id);
    found.push({
      field: id,
      sentence: [messages.within({ title, fault: outcome.fault.sentence })],
    });
  }
  return found;
}

function completeLayout(layout: PartialLayout | undefined): CheckLayout | null {
  if (layout?.kind === undefined) return null;
  return { ...layout, kind: layout.kind, readings: layout.readings ?? {} };
}

function completeStop(stop: Partial<CheckStop> = {}): CheckStop | null {
  const { name, duty, freeHeight, usableCompressionMm, curve } = stop;
  if (name === undefined || duty === undefined || freeHeight === undefined) return null;
  if (usableCompressionMm === undefined || curve === undefined) return null;
  const { damping = null, testedAtSpeed = false } = stop;
  return {
    ...stop,
    name,
    duty,
    freeHeight,
    usableCompressionMm,
    curve,
    damping,
    testedAtSpeed,
  };
}

function completeLimits(limits: readonly PartialLimit[]): readonly CheckLimit[] {
  return limits.flatMap(({ reading, ...limit }) =>
    reading === undefined ? [] : [{ ...limit, reading }],
  );
}

/** What a complete record adds to one that lacks only what has one plain default; null: it lacks more. */
function withDefaults(record: PartialCheckRecord): CheckRecord | null {
  const {
    author,
    axle,
    corners,
    vehicle: { label, liftMm, use, platformId = null, ...vehicle } = {},
  } = record;
  const [layout, stop] = [completeLayout(record.layout), completeStop(record.stop)];
  if (axle === undefined || layout === null || stop === null) return null;
  if (label === undefined || liftMm === undefined || use === undefined) return null;
  return {
    ...record,
    author: { ...author, role: author?.role ?? "installer" },
    vehicle: { ...vehicle, label, platformId, liftMm, use },
    axle,
    layout,
    corners: corners.map((corner) => ({ ...corner, limits: completeLimits(corner.limits) })),
    stop,
  };
}

/** The record of a check in which nothing is missing, or the list of what is. */
export function completeRecord(stored: StoredCheck): Completion {
  const missing = missingOf(stored);
  for (const { sentence, reading, code } of recordFaults(stored.record)) {
    missing.push({ field: reading ?? code, sentence });
  }
  const [first] = missing;
  const complete = first === undefined ? withDefaults(stored.record) : null;
  if (complete !== null) return { ok: true, value: complete };
  const { sentence, field } = first ?? { sentence: [messages.checkIsNotComplete], field: "" };
  return {
    ok: false,
    fault: { code: "recordIncomplete", sentence, reading: field },
    missing,
  };
}
