import type { Side } from "../../../physics/fitment.ts";
import {
  isGeometryReadingName,
  layoutRegistry,
  type ReadingId,
  sideOf,
  withoutSide,
} from "../../../physics/readings/index.ts";
import type { StoredCheck } from "../../../records/check/storedCheck.ts";
import { type Entry, readTolerance } from "../../../records/entry/entry.ts";
import type { AngleKind, PostureFault } from "../../../sensors/phoneAngle.ts";
import type { TiltZero } from "../../../sensors/tiltZero.ts";
import * as messages from "../../../words/compiled/screens/check/tilt.ts";
import { language } from "../../../words/language.ts";
import { toldGeometry } from "../../readings/toldGeometry.ts";

/** An angle that the phone can measure by being laid along it. */
export interface TiltTask {
  readonly kind: AngleKind;
  /** Where the pivot is, as seen from where the drawing is seen; null: either way counts the same. */
  readonly pivotAt: "left" | "right" | null;
}

/** What the tilt sensor does for a reading; null where it can do nothing. */
export function tiltTaskOf(stored: StoredCheck, id: string): TiltTask | null {
  const name = withoutSide(id);
  const { record } = stored;
  const side: Side = sideOf(id) ?? record.corners[0]?.side ?? "left";
  const wheelAtRight = (side === "left") === (record.axle !== "rear");
  const pivotAt = wheelAtRight ? "left" : "right";
  const tilt = isGeometryReadingName(name) ? toldGeometry[name].tilt : undefined;
  if (tilt === undefined) return null;
  if (tilt === "line") return { kind: "line", pivotAt };
  const kind = record.layout?.kind;
  return {
    kind: "lean",
    pivotAt: kind !== undefined && layoutRegistry[kind].onArm ? pivotAt : null,
  };
}

/** What the record has for an angle of the phone whose offset is taken off. */
export function recordDegrees({ kind, pivotAt }: TiltTask, phoneDegrees: number): number {
  if (kind === "line") return phoneDegrees;
  if (pivotAt === null) return Math.abs(phoneDegrees);
  return pivotAt === "right" ? phoneDegrees : -phoneDegrees;
}

/** Degrees as the entry has them, to a hundredth. */
export function degreesEntry(degrees: number): string {
  const rounded = Math.round(degrees * 100) / 100;
  return String(rounded === 0 ? 0 : rounded);
}

export function degreesText(degrees: number): string {
  const text = Math.abs(degrees).toFixed(1);
  return `${degrees < 0 && text !== "0.0" ? "−" : ""}${text}°`;
}

export function signWords({ kind, pivotAt }: TiltTask, degrees: number): string {
  if (Math.abs(degrees) < 0.05) return kind === "line" ? "level" : "upright";
  if (kind === "line") return degrees > 0 ? messages.lowerAtWheel : messages.higherAtWheel;
  if (pivotAt === null) return messages.fromUpright;
  return degrees > 0 ? messages.topTowardPivot : messages.topAwayFromPivot;
}

/**
 * The entry with one more reading. Its ± is the widest of its readings, since a record has one for
 * all repeats; what was there stays there.
 */
export function withTilt(id: ReadingId, entry: Entry, degrees: number, tolerance: number): Entry {
  const before = entry.texts.filter((text) => text.trim() !== "");
  const earlier = before.length === 0 ? null : readTolerance(id, entry);
  const widest = Math.max(tolerance, earlier?.ok ? earlier.value : 0);
  return {
    ...entry,
    texts: [...before, degreesEntry(degrees)],
    tol: String(Math.ceil(Number((widest * 100).toFixed(6))) / 100),
    tool: "phone",
  };
}

const faultSentences: { readonly [Fault in PostureFault]: string } = {
  flat: messages.phoneLiesFlat,
  onShortEdge: messages.phoneStandsOnItsShort,
  onLongEdge: messages.phoneLiesOnIts,
  upsideDown: messages.phoneIsUpsideDown,
  leansBack: messages.screenFacesUpOr,
};

export function faultSentence(kind: AngleKind, fault: PostureFault): string {
  if (fault !== "flat") return faultSentences[fault];
  return kind === "line" ? messages.phoneLiesFlatStand : messages.phoneLiesFlatHold;
}

const dayMs = 86_400_000;
/** A zero is asked for anew after so long. Common practice. */
const zeroLastsDays = 30;

export function zeroWords({ way, at }: TiltZero, now: Date): { words: string; old: boolean } {
  const date = new Date(at);
  const days = Math.floor((now.getTime() - date.getTime()) / dayMs);
  const when = date.toLocaleDateString(language, {
    day: "numeric",
    month: "long",
    year: "numeric",
  });
  const how = way === "turned" ? messages.byTurningItAround : messages.onLevelSurface;
  const old = days > zeroLastsDays;
  return { words: messages.zeroedIsOldSelectTrue({ how, when, isOld: Boolean(old), days }), old };
}
