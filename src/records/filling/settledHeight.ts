import type { Side } from "../../physics/fitment.ts";
import type { StoredCheck } from "../check/storedCheck.ts";
import { entryText, parseText } from "../entry/entry.ts";
import { setAside, takeBack } from "./aside.ts";
import { setEntry } from "./changes.ts";
import { chosen, withChoice } from "./choice.ts";

/** Where the ride height was read: after the bumper was lifted and let go, after it was pushed down. */
export type SettledFrom = "lifted" | "pushed";

/** The entry of such a height; both together give half their difference as the side's friction. */
export function settledId(side: Side, from: SettledFrom): string {
  return `${side}.${from}Height`;
}

const both = (side: Side) => [settledId(side, "lifted"), settledId(side, "pushed")];

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
  return settled ? withSettledHeight(takeBack(said, both(side)), side) : setAside(said, both(side));
}

function heightOf(stored: StoredCheck, id: string): number | null {
  const entry = stored.entries[id];
  if (entry === undefined) return null;
  const parsed = parseText(entry.texts[0] ?? "", "length", entry.unit, "aboveZero");
  return parsed.ok ? parsed.value.value : null;
}

/** The check with its ride height as the mean of both. Common practice of service manuals. */
export function withSettledHeight(stored: StoredCheck, side: Side): StoredCheck {
  const lifted = heightOf(stored, settledId(side, "lifted"));
  const pushed = heightOf(stored, settledId(side, "pushed"));
  if (lifted === null || pushed === null) return stored;
  const id = `${side}.rideHeight`;
  const unit = stored.entries[settledId(side, "lifted")]?.unit === "in" ? "in" : "mm";
  const before = stored.entries[id];
  return setEntry(stored, id, {
    ...before,
    texts: [entryText((lifted + pushed) / 2, "length", unit)],
    unit,
    tol: before?.tol ?? "",
  });
}
