import { armAngles, armLengths } from "./armReadings.ts";
import { axleReadings } from "./axleReadings.ts";
import { boltDistances } from "./boltReadings.ts";
import type { GeometryDefinition, MadeOf } from "./geometryDefinition.ts";
import { heights } from "./heightReadings.ts";
import { type LayoutKind, layoutDefinitions, layoutKinds } from "./layoutDefinitions.ts";
import { linkageReadings } from "./linkageReadings.ts";
import { strutReadings } from "./strutReadings.ts";

/** Every reading of a suspension's geometry, in the order in which they are taken. */
const definitions = {
  ...axleReadings,
  ...armLengths,
  ...boltDistances,
  ...armAngles,
  ...heights,
  ...strutReadings,
  ...linkageReadings,
} as const;

type Definitions = typeof definitions;

export type GeometryReadingName = keyof Definitions;

/** The readings that a layout takes. */
export type GeometryReadingOf<Kind extends LayoutKind> = {
  [Name in GeometryReadingName]: Definitions[Name]["use"] extends {
    readonly [Taken in Kind]: unknown;
  }
    ? Name
    : never;
}[GeometryReadingName];

/** A definition whose parts and stand-in are readings of the registry themselves. */
export type RegisteredReading = Omit<GeometryDefinition, "madeOf" | "standIn"> & {
  readonly madeOf?: MadeOf<GeometryReadingName>;
  readonly standIn?: GeometryReadingName;
};

export const geometryRegistry: { readonly [Name in GeometryReadingName]: RegisteredReading } =
  definitions;

/** A layout whose doubtful reading is one of the registry. */
type RegisteredLayout = Omit<(typeof layoutDefinitions)[LayoutKind], "doubtful"> & {
  readonly doubtful: GeometryReadingName;
};

export const layoutRegistry: { readonly [Kind in LayoutKind]: RegisteredLayout } =
  layoutDefinitions;

export const geometryNames = Object.keys(definitions) as readonly GeometryReadingName[];

export function isGeometryReadingName(name: string): name is GeometryReadingName {
  return Object.hasOwn(definitions, name);
}

/** The readings of a layout, in the order in which they are taken. */
export const layoutReadingsInOrder = byLayout(() => true);

/** Those without which, or without what they are made of, a layout has no motion. */
export const neededReadings = byLayout((use) => use === "needed");

function byLayout(
  wanted: (use: GeometryDefinition["use"][LayoutKind]) => boolean,
): Readonly<Record<LayoutKind, readonly GeometryReadingName[]>> {
  const of = (kind: LayoutKind) =>
    geometryNames.filter((name) => {
      const use = geometryRegistry[name].use[kind];
      return use !== undefined && wanted(use);
    });
  const found: Record<string, readonly GeometryReadingName[]> = Object.fromEntries(
    layoutKinds.map((kind) => [kind, of(kind)]),
  );
  return found as Record<LayoutKind, readonly GeometryReadingName[]>;
}
