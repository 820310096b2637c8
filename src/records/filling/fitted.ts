import { sideOf, standingNames, withoutSide } from "../../physics/readings/index.ts";
import * as messages from "../../words/compiled/records/filling.ts";
import type { Say } from "../../words/message.ts";
import type { Fitted, PartialCheckRecord } from "../check/checkRecord.ts";
import { changeRecord, newStoredCheck, type StoredCheck } from "../check/storedCheck.ts";
import { parseText } from "../entry/entry.ts";
import { withCorner, withField } from "../entry/entryPath.ts";
import { type LengthUnit, toModel } from "../entry/units.ts";
import type { Pack } from "../pack/pack.ts";
import { stopOfPart } from "../pack/packCandidates.ts";
import { instantOfDay } from "../text/moment.ts";
import { setEntry } from "./changes.ts";
import { movedTo } from "./choice.ts";
import { jobOf, withJob } from "./job.ts";
import { withPackStop } from "./stopSources.ts";

/** What is typed of what was fitted, as it was typed: kept beside the record until it can be read. */
const fittedFields = [
  "partNumber",
  "revision",
  "batch",
  "spacer",
  "day",
  "by",
  "odometer",
] as const;
export type FittedField = (typeof fittedFields)[number];

/** Photos of what was fitted stand among the record's, at this in the place of a reading. */
export const fittedPhotos = "fitted";

const entryId = (field: FittedField) => `fitted.${field}`;

/** What a field says: as typed, else as the record has it. */
export function fittedText(stored: StoredCheck, field: FittedField): string {
  const [typed] = stored.entries[entryId(field)]?.texts ?? [];
  if (typed !== undefined) return typed;
  const { fitted } = stored.record;
  if (fitted === undefined) return "";
  switch (field) {
    case "spacer":
      return `${fitted.spacerMm} mm`;
    case "day":
      return fitted.at.slice(0, 10);
    case "odometer":
      return fitted.odometer === undefined ? "" : `${fitted.odometer} km`;
    default:
      return fitted[field] ?? "";
  }
}

/** The spacer in mm, 0 where none is typed; null where what is typed can't be read. */
export function spacerOf(text: string, unit: LengthUnit): number | null {
  if (text.trim() === "") return 0;
  const read = parseText(text, "length", unit, "zeroOrMore");
  return read.ok && read.value.value <= 300 ? read.value.value : null;
}

/** km of "82 340", "51200 mi" or "82340 km"; undefined where none is typed, null where it can't be read. */
export function odometerOf(text: string, unit: LengthUnit): number | null | undefined {
  const plain = text.replace(/[\s,.']/g, "").toLowerCase();
  if (plain === "") return undefined;
  const [, digits, said] = /^(\d{1,7})(km|mi|miles)?$/.exec(plain) ?? [];
  if (digits === undefined) return null;
  const miles = said === undefined ? unit === "in" : said !== "km";
  return miles ? Math.round(toModel(Number(digits), "mi")) : Number(digits);
}

/** The record's field of what is typed; undefined until the part is told and everything can be read. */
function fittedOf(stored: StoredCheck, unit: LengthUnit, say: Say): Fitted | undefined {
  const text = (field: FittedField) => fittedText(stored, field).trim();
  const spacerMm = spacerOf(text("spacer"), unit);
  const odometer = odometerOf(text("odometer"), unit);
  const at = instantOfDay(text("day"));
  if (text("partNumber") === "" || spacerMm === null || odometer === null || at === null) {
    return undefined;
  }
  return {
    partNumber: text("partNumber"),
    ...(text("revision") !== "" && { revision: text("revision") }),
    ...(text("batch") !== "" && { batch: text("batch") }),
    spacerMm,
    at,
    by: text("by") || say(messages.notSaid),
    ...(odometer !== undefined && { odometer }),
  };
}

/** The check with some of the fields typed anew. */
export function withFitted(
  stored: StoredCheck,
  change: { readonly [Field in FittedField]?: string },
  unit: LengthUnit,
  say: Say,
): StoredCheck {
  const typed = Object.entries(change).reduce(
    (current, [field, text]) =>
      setEntry(current, entryId(field as FittedField), { texts: [text], unit: "", tol: "" }),
    stored,
  );
  return changeRecord(typed, (record) => withField(record, "fitted", fittedOf(typed, unit, say)));
}

/** Nothing was fitted after all. */
export function withoutFitted(stored: StoredCheck): StoredCheck {
  const ids: readonly string[] = fittedFields.map(entryId);
  const emptied = movedTo(stored, (id) => (ids.includes(id) ? null : id));
  return changeRecord({ ...stored, ...emptied }, (record) =>
    withField(record, "fitted", undefined),
  );
}

/** What is read anew once another stop stands there. */
const standNames: ReadonlySet<string> = new Set([...standingNames, "stand"]);
const isStand = (id: string): boolean => sideOf(id) !== null && standNames.has(withoutSide(id));
const leftBehind = /^(fitted|fullTravel|aside|stop|second)\./;

function withNewStands(record: PartialCheckRecord): PartialCheckRecord {
  return record.corners.reduce(
    (current, { side }) =>
      withCorner(
        current,
        side,
        ({ gap: _, pressedHeight: _pressed, seatToPad: _seat, ...corner }) => corner,
      ),
    record,
  );
}

/**
 * A new check of the same vehicle after the change, and the one before with the job that both belong to:
 * geometry, clearances, weights and demands go along, the stop is the one that was fitted, and how it
 * stands is measured anew. The cautions hold for each standing of the vehicle, so they are read again.
 */
export function checkAgain(
  stored: StoredCheck,
  pack: Pack,
  unit: LengthUnit,
  say: Say,
): { readonly before: StoredCheck; readonly after: StoredCheck } {
  const { record } = stored;
  const job = jobOf(stored, say);
  const before = withJob(stored, { ...job, moment: "before" });
  const fresh = newStoredCheck(stored.name);
  const { photos: _photos, fitted, fullTravel: _travel, notes: _notes, ...others } = record;
  // What was advised, and what a second person read, was of the stop before.
  const { advised: _advised, second: _second, ...common } = others;
  const held = movedTo(stored, (id) => (isStand(id) || leftBehind.test(id) ? null : id));
  const kept: StoredCheck = {
    ...fresh,
    ...held,
    record: {
      ...withNewStands(common),
      id: fresh.record.id,
      createdAt: fresh.record.createdAt,
      job: { ...job, moment: "after" },
    },
    progress: { ...fresh.progress, rightGeometry: stored.progress.rightGeometry },
  };
  const stop = fitted && stopOfPart(pack, fitted);
  if (stop) return { before, after: withPackStop(kept, stop, pack, unit, fitted.batch) };
  const ofStop = movedTo(stored, (id) => (id.startsWith("stop.") ? id : null));
  return {
    before,
    after: {
      ...kept,
      entries: { ...held.entries, ...ofStop.entries },
      choices: { ...held.choices, ...ofStop.choices },
    },
  };
}
