import type { LayoutDefinition } from "./layoutDefinition.ts";
import { type LayoutKind, layoutKinds } from "./layoutKinds.ts";
import { geometryDefinitions as definitions, layouts } from "./layouts.ts";
import type { GeometryDefinition, MadeOf } from "./readings/geometryDefinition.ts";

type Definitions = typeof definitions;
type Layouts = typeof layouts;

export type GeometryReadingName = keyof Definitions;

/** The readings that a layout takes. */
export type GeometryReadingOf<Kind extends LayoutKind> = {
  [Name in GeometryReadingName]: Definitions[Name]["of"] extends Layouts[Kind]["takes"][number]
    ? Name
    : never;
}[GeometryReadingName];

/** The readings that a layout defines in its own file. */
export type OwnReadingOf<Kind extends LayoutKind> = {
  [Each in Kind]: Layouts[Each] extends { readonly readings: infer Own }
    ? keyof Own & GeometryReadingName
    : never;
}[Kind];

/** How the wheel's travel was found from the stop's closing. */
export type Linkage = { [Kind in LayoutKind]: keyof Layouts[Kind]["linkages"] }[LayoutKind];

/** What a layout's definition says of one of these, as a type. */
export type LayoutFact<
  Kind extends LayoutKind,
  Fact extends "onArm" | "saysStopOn",
> = Layouts[Kind][Fact];

/** A part of a suspension that readings are taken of. */
type MeasuredPart = Definitions[GeometryReadingName]["of"];

/** A definition whose parts and stand-in are readings of the registry themselves. */
export type RegisteredReading = Omit<GeometryDefinition, "of" | "madeOf" | "standIn"> & {
  readonly of: MeasuredPart;
  readonly madeOf?: MadeOf<GeometryReadingName>;
  readonly standIn?: GeometryReadingName;
};

export const geometryRegistry: { readonly [Name in GeometryReadingName]: RegisteredReading } =
  definitions;

/** A layout whose parts have readings in the registry. */
export type RegisteredLayout = LayoutDefinition<GeometryReadingName, Linkage> & {
  readonly takes: readonly MeasuredPart[];
};

export const layoutRegistry: { readonly [Kind in LayoutKind]: RegisteredLayout } = layouts;

export const geometryNames = Object.keys(definitions) as readonly GeometryReadingName[];

export function isGeometryReadingName(name: string): name is GeometryReadingName {
  return Object.hasOwn(definitions, name);
}

/** The readings of a layout, in the order in which they are taken. */
export const layoutReadingsInOrder = byLayout(() => true);

/** Those without which, or without what they are made of, a layout has no motion. */
export const neededReadings = byLayout(({ use }) => use === "needed");

/** Those that tell how its wheel moves with the arm or strut, asked for only where they are wanted. */
export const closerReadings = byLayout(
  ({ of, use }, kind) => use !== "part" && layoutRegistry[kind].closer?.parts.includes(of) === true,
);

function byLayout(
  wanted: (reading: RegisteredReading, kind: LayoutKind) => boolean,
): Readonly<Record<LayoutKind, readonly GeometryReadingName[]>> {
  const of = (kind: LayoutKind) =>
    geometryNames.filter((name) => {
      const reading = geometryRegistry[name];
      return layoutRegistry[kind].takes.includes(reading.of) && wanted(reading, kind);
    });
  const found: Record<string, readonly GeometryReadingName[]> = Object.fromEntries(
    layoutKinds.map((kind) => [kind, of(kind)]),
  );
  return found as Record<LayoutKind, readonly GeometryReadingName[]>;
}
