import type { Side } from "../../physics/fitment.ts";
import { changeRecord, type StoredCheck } from "../check/storedCheck.ts";
import { entryText, parseText } from "../entry/entry.ts";
import { withCorner, withField } from "../entry/entryPath.ts";
import { setEntry } from "./changes.ts";
import { chosen, withChoice } from "./choice.ts";

/** Where the ride height was read: after the bumper was lifted and let go, after it was pushed down. */
export type SettledFrom = "lifted" | "pushed";

export function settledId(side: Side, from: SettledFrom): string {
  return `${side}.rideHeight.${from}`;
}

/** Is the ride height the mean of two readings, one from above and one from below? */
export function isHeightSettled(stored: StoredCheck, side: Side): boolean {
  return chosen(stored, `${side}.rideHeight.way`) === "settled";
}

export function chooseSettledHeight(
  stored: StoredCheck,
  side: Side,
  settled: boolean,
): StoredCheck {
  const said = withChoice(stored, `${side}.rideHeight.way`, settled ? "settled" : null);
  return settled ? withSettledHeight(said, side) : withSettle(said, side, undefined);
}

function heightOf(stored: StoredCheck, id: string): number | null {
  const entry = stored.entries[id];
  if (entry === undefined) return null;
  const parsed = parseText(entry.texts[0] ?? "", "length", entry.unit, "aboveZero");
  return parsed.ok ? parsed.value.value : null;
}

function withSettle(stored: StoredCheck, side: Side, settleMm: number | undefined): StoredCheck {
  return changeRecord(stored, (record) =>
    withCorner(record, side, (corner) => withField(corner, "settleMm", settleMm)),
  );
}

/**
 * The check with its ride height from both readings: their mean, and half their difference as the
 * friction that holds the suspension where it was left. Common practice of service manuals.
 */
export function withSettledHeight(stored: StoredCheck, side: Side): StoredCheck {
  const lifted = heightOf(stored, settledId(side, "lifted"));
  const pushed = heightOf(stored, settledId(side, "pushed"));
  if (lifted === null || pushed === null) return withSettle(stored, side, undefined);
  const id = `${side}.rideHeight`;
  const unit = stored.entries[settledId(side, "lifted")]?.unit === "in" ? "in" : "mm";
  const before = stored.entries[id];
  const mean = setEntry(stored, id, {
    ...before,
    texts: [entryText((lifted + pushed) / 2, "length", unit)],
    unit,
    tol: before?.tol ?? "",
  });
  return withSettle(mean, side, Math.abs(lifted - pushed) / 2);
}
