import type { Use } from "../../physics/fitment.ts";
import { type Outcome, succeed } from "../../physics/outcome.ts";
import type { TypedReading } from "../../records/check/checkRecord.ts";
import { newId } from "../../records/check/storedCheck.ts";
import { type Entry, entryLengthUnit, readEntry } from "../../records/entry/entry.ts";
import type { PayloadWord } from "../../records/entry/payloadWords.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import type {
  QuickCheckQuestion,
  QuickCheckReadings,
} from "../../records/quickCheck/quickCheckQuestion.ts";
import { isPlainObject } from "../../records/text/plainObject.ts";

export const quickCheckIds = {
  rideHeight: "left.rideHeight",
  gap: "left.gap",
  stopHeight: "stop.freeHeight",
  clearance: "left.limits.0",
} as const;

export type QuickCheckReadingName = keyof typeof quickCheckIds;

/** What a customer has answered so far, as typed. */
export interface QuickCheckDraft {
  /** Of the check that the answer makes. */
  readonly id: string;
  readonly createdAt: string;
  readonly platformId: string | null;
  readonly use: Use;
  readonly side: "left" | "right";
  readonly clearanceKind: "tyre" | "damper";
  readonly payload: PayloadWord | null;
  /** What is fitted, by its label or number; null: not looked for. */
  readonly part: QuickCheckQuestion["part"] | null;
  readonly entries: { readonly [Name in QuickCheckReadingName]?: Entry };
  /** `updatedAt` of the check as this screen last kept it. */
  readonly keptAt?: string;
}

export function newDraft(): QuickCheckDraft {
  return {
    id: newId(),
    createdAt: new Date().toISOString(),
    platformId: null,
    use: "daily",
    side: "left",
    clearanceKind: "tyre",
    payload: null,
    part: null,
    entries: {},
  };
}

const key = "stopfit.taller";

/** The draft as it was left; a new one where there is none, or where it can't be read. */
export function readQuickCheckDraft(): QuickCheckDraft {
  try {
    const value: unknown = JSON.parse(localStorage.getItem(key) ?? "null");
    if (isPlainObject(value) && "id" in value && "entries" in value) {
      return { ...newDraft(), ...(value as Partial<QuickCheckDraft>) };
    }
  } catch {
    // Refused, or of another version: begin anew.
  }
  return newDraft();
}

export function keepQuickCheckDraft(draft: QuickCheckDraft): void {
  try {
    localStorage.setItem(key, JSON.stringify(draft));
  } catch {
    // Refused or full: it holds until the page is closed.
  }
}

/** The unit of all that was typed, where it is one; else the person's own. */
export function unitOfDraft({ entries }: QuickCheckDraft, own: LengthUnit): LengthUnit {
  const typed = Object.values(entries).filter(({ texts }) => texts.some((text) => text.trim()));
  const units = new Set(typed.map(entryLengthUnit));
  const [unit] = units;
  return units.size === 1 && unit !== undefined ? unit : own;
}

/** One reading; null where nothing is typed. */
function draftReading(
  draft: QuickCheckDraft,
  name: QuickCheckReadingName,
): Outcome<TypedReading> | null {
  const entry = draft.entries[name];
  if (!entry?.texts.some((text) => text.trim() !== "")) return null;
  return readEntry(quickCheckIds[name], entry);
}

/** What still keeps the draft from being a question, in the order it is asked. */
export type Open = "platform" | "payload" | QuickCheckReadingName;

export function openOf(draft: QuickCheckDraft): readonly Open[] {
  const names = Object.keys(quickCheckIds) as QuickCheckReadingName[];
  return [
    ...(draft.platformId === null ? (["platform"] as const) : []),
    ...names.filter((name) => draftReading(draft, name)?.ok === false),
    ...(draft.payload === null ? (["payload"] as const) : []),
  ];
}

/** What of the readings can be read so far. */
export function readingsSoFar(draft: QuickCheckDraft): Omit<QuickCheckReadings, "payload"> {
  const rideHeight = draftReading(draft, "rideHeight");
  const gap = draftReading(draft, "gap");
  const stopHeight = draftReading(draft, "stopHeight");
  const clearance = draftReading(draft, "clearance");
  return {
    ...(rideHeight?.ok && { rideHeight: rideHeight.value }),
    ...(gap?.ok && { gap: gap.value }),
    ...(stopHeight?.ok && { stopHeight: stopHeight.value }),
    ...(clearance?.ok && {
      clearance: { kind: draft.clearanceKind, reading: clearance.value },
    }),
  };
}

/** The question; null while something is open. */
export function questionOf(draft: QuickCheckDraft): Outcome<QuickCheckQuestion> | null {
  const { platformId, payload, use, side, id, createdAt, part } = draft;
  if (platformId === null || payload === null) return null;
  const readings: { -readonly [Name in keyof QuickCheckReadings]: QuickCheckReadings[Name] } = {
    payload,
  };
  for (const name of ["rideHeight", "gap", "stopHeight"] as const) {
    const reading = draftReading(draft, name);
    if (reading?.ok === false) return reading;
    if (reading?.ok) readings[name] = reading.value;
  }
  const clearance = draftReading(draft, "clearance");
  if (clearance?.ok === false) return clearance;
  if (clearance?.ok) {
    readings.clearance = { kind: draft.clearanceKind, reading: clearance.value };
  }
  return succeed({ platformId, use, side, id, createdAt, readings, ...(part && { part }) });
}
