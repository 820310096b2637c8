import type { Side } from "../../physics/fitment.ts";
import type { ReadingId } from "../../physics/readings/index.ts";
import type { ChoiceValue } from "../check/choices.ts";
import type { StoredCheck } from "../check/storedCheck.ts";
import { setAside, takeBack, withoutReading } from "./aside.ts";
import { setEntry } from "./changes.ts";
import { chosen, withChoice } from "./choice.ts";

/** How the stop stands on the vehicle: air before it, just touching, pressed, or none there. */
export type Stand = ChoiceValue<`${Side}.stand`>;

const readingOf = {
  gap: "gap",
  touching: "gap",
  pressed: "pressedHeight",
  missing: "seatToPad",
} as const satisfies { readonly [Each in Stand]: string };

/** As chosen, or as the record has it; air before it where neither says. */
export function standOf(stored: StoredCheck, side: Side): Stand {
  const choice = chosen(stored, `${side}.stand`);
  if (choice !== null) return choice;
  const corner = stored.record.corners.find((each) => each.side === side);
  if (corner?.pressedHeight !== undefined) return "pressed";
  if (corner?.seatToPad !== undefined) return "missing";
  return "gap";
}

/** The id of the reading that is taken of a stop that stands so. */
export function standReading(side: Side, stand: Stand): ReadingId {
  return `${side}.${readingOf[stand]}`;
}

/** The check with the stop standing so; what was typed for another stand waits for it. */
export function chooseStand(stored: StoredCheck, side: Side, stand: Stand): StoredCheck {
  const kept = standReading(side, stand);
  const others = (["gap", "pressed", "missing"] as const)
    .map((each) => standReading(side, each))
    .filter((id) => id !== kept);
  const touched = standOf(stored, side) === "touching";
  const cleared = touched ? withoutReading(stored, standReading(side, "touching")) : stored;
  const aside = setAside(withChoice(cleared, `${side}.stand`, stand), others);
  if (stand !== "touching") return takeBack(aside, [kept]);
  return setEntry(setAside(aside, [kept]), kept, { texts: ["0"], unit: "mm", tol: "0.5" });
}
