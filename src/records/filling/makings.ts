import type { GeometryReadingName } from "../../physics/fitment.ts";
import { geometryRegistry, layoutReadingsInOrder } from "../../physics/readings/index.ts";
import type { StoredCheck } from "../check/storedCheck.ts";
import { setAside, takeBack } from "./aside.ts";
import { chosen, withChoice } from "./choice.ts";

/** Two ways to come by a reading without taking it itself: a length from both bolts, an angle from heights. */
export type Making = "bolts" | "heights";

const sides = ["", "left.", "right."] as const;

function madeReadings(stored: StoredCheck, by: Making): readonly GeometryReadingName[] {
  const kind = stored.record.layout?.kind;
  if (kind === undefined) return [];
  return layoutReadingsInOrder[kind].filter((name) => geometryRegistry[name].madeOf?.by === by);
}

function partsOf(name: GeometryReadingName): readonly GeometryReadingName[] {
  const { madeOf } = geometryRegistry[name];
  return madeOf === undefined ? [] : [...madeOf.common, ...madeOf.own];
}

/** Are such readings made of others here: as chosen, or as the record of a file has it? */
export function isMadeOfParts(stored: StoredCheck, by: Making): boolean {
  const choice = chosen(stored, `way.${by}`);
  if (choice !== null) return choice === "parts";
  const readings = stored.record.layout?.readings ?? {};
  return madeReadings(stored, by).some(
    (name) =>
      readings[name] === undefined &&
      (geometryRegistry[name].madeOf?.own ?? []).some((part) => readings[part] !== undefined),
  );
}

/**
 * The check with such readings taken themselves, or made of others. What was typed the other way waits
 * until that way is chosen again: a direct reading would go before one made of others.
 */
export function chooseMaking(stored: StoredCheck, by: Making, parts: boolean): StoredCheck {
  const made = madeReadings(stored, by);
  const everySide = (names: readonly GeometryReadingName[]) =>
    sides.flatMap((side) => names.map((name) => `${side}${name}`));
  const own = made.flatMap((name) => geometryRegistry[name].madeOf?.own ?? []);
  const common = made
    .flatMap((name) => geometryRegistry[name].madeOf?.common ?? [])
    .filter((name) => geometryRegistry[name].use === "part");
  const ofParts = everySide([...new Set([...common, ...own])]);
  const direct = everySide(made);
  const chosenWay = withChoice(stored, `way.${by}`, parts ? "parts" : "direct");
  return parts
    ? takeBack(setAside(chosenWay, direct), ofParts)
    : takeBack(setAside(chosenWay, ofParts), direct);
}

/** The readings to take for these ones: themselves, or the parts that they are made of; each once. */
export function withMakings(
  stored: StoredCheck,
  names: readonly GeometryReadingName[],
): readonly GeometryReadingName[] {
  const asked = names.flatMap((name) => {
    const { madeOf } = geometryRegistry[name];
    return madeOf !== undefined && isMadeOfParts(stored, madeOf.by) ? partsOf(name) : [name];
  });
  return [...new Set(asked)];
}

/** The reading that a part is taken for, on this layout; the reading itself where it is none. */
export function readingMadeOf(
  stored: StoredCheck,
  part: GeometryReadingName,
): GeometryReadingName | null {
  const kind = stored.record.layout?.kind;
  if (kind === undefined) return null;
  const use = (name: GeometryReadingName) => geometryRegistry[name].madeOf;
  if (use(part) !== undefined) return part;
  return layoutReadingsInOrder[kind].find((name) => partsOf(name).includes(part)) ?? null;
}
