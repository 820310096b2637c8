import type { Corner, GeometryReadingName, Layout, LayoutKind, Reading } from "./fitment.ts";
import type { ReadingId } from "./outcome.ts";

/** One place in a layout's formulas. A length must be measured; an angle that was not is 0. */
interface GeometryPlace {
  readonly name: GeometryReadingName;
  readonly sort: "length" | "angle";
  /** The reading that an angle equals where it was not measured itself. */
  readonly standIn?: GeometryReadingName;
}

const armAngle: GeometryPlace = { name: "armAngle", sort: "angle" };
const stopLean: GeometryPlace = { name: "stopLean", sort: "angle" };

/** The readings of each layout, in the one order that the formulas and the draws use. */
export const geometryPlaces: Readonly<Record<LayoutKind, readonly GeometryPlace[]>> = {
  arm: [
    { name: "pivotToStop", sort: "length" },
    { name: "pivotToOuter", sort: "length" },
    armAngle,
    { name: "stopLineAngle", sort: "angle", standIn: "armAngle" },
    stopLean,
  ],
  damper: [
    { name: "pivotToMount", sort: "length" },
    { name: "pivotToOuter", sort: "length" },
    armAngle,
    { name: "mountLineAngle", sort: "angle", standIn: "armAngle" },
    stopLean,
    { name: "damperLength", sort: "length" },
  ],
  strut: [stopLean],
  axle: [{ name: "track", sort: "length" }, { name: "stopSpacing", sort: "length" }, stopLean],
};

/** A reading of the geometry as one corner uses it. `reading` null: not measured, taken as 0. */
export interface GeometryReading {
  /** The place it fills. */
  readonly name: GeometryReadingName;
  readonly sort: "length" | "angle";
  /** The reading that fills it: another's id where that one stands in. */
  readonly id: ReadingId;
  readonly reading: Reading | null;
  /** False: a length that must be there is not. */
  readonly present: boolean;
}

/**
 * The geometry of one corner, place by place in the order of `geometryPlaces`: the corner's own
 * readings before the layout's; an angle that was not measured is the one that stands in for it, or 0.
 * With `side`, the ids of the corner's own readings carry it ("right.armAngle"); shared ones do not.
 */
export function geometryReadings(
  layout: Layout,
  geometry?: Corner["geometry"],
  side?: Corner["side"],
): readonly GeometryReading[] {
  const shared: { readonly [Name in GeometryReadingName]?: Reading } = layout.readings;
  const places = geometryPlaces[layout.kind];
  const find = (name: GeometryReadingName): { id: ReadingId; reading: Reading } | null => {
    const own = geometry?.[name];
    if (own !== undefined)
      return { id: side === undefined ? name : `${side}.${name}`, reading: own };
    const common = shared[name];
    return common === undefined ? null : { id: name, reading: common };
  };
  return places.map(({ name, sort, standIn = name }) => {
    const found = find(name) ?? find(standIn);
    return {
      name,
      sort,
      id: found?.id ?? name,
      reading: found?.reading ?? null,
      present: found !== null || sort === "angle",
    };
  });
}
