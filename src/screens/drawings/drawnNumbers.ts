import type { GeometryReadingName, LayoutKind, LimitKind } from "../../physics/fitment.ts";

/** The readings of the geometry that have a drawing. */
type DrawnGeometry = Extract<
  GeometryReadingName,
  | "pivotToStop"
  | "pivotToMount"
  | "pivotToOuter"
  | "armAngle"
  | "stopLineAngle"
  | "mountLineAngle"
  | "stopLean"
  | "damperLength"
  | "track"
  | "stopSpacing"
>;

/** Everything a drawing can show being measured. */
export type PicturedReading =
  | DrawnGeometry
  | "gap"
  | "rideHeight"
  | "cornerMass"
  | "freeHeight"
  | "usableCompression"
  | `limit:${LimitKind}`;

/** The current means: mm, deg, kg. Absent, undefined or not finite = not yet known. */
export type DrawingValues = { readonly [Name in PicturedReading]?: number | undefined };

/** One number per name, always finite and inside what can be drawn. */
export type DrawnNumbers = { readonly [Name in PicturedReading]: number };

const everyLayout: readonly PicturedReading[] = [
  "gap",
  "rideHeight",
  "cornerMass",
  "freeHeight",
  "usableCompression",
  "limit:tyre",
  "limit:damper",
  "limit:spring",
  "limit:metal",
  "limit:other",
];

/** The readings that each layout has a drawing for. */
export const drawnReadings: { readonly [Kind in LayoutKind]: readonly PicturedReading[] } = {
  arm: ["pivotToStop", "pivotToOuter", "armAngle", "stopLineAngle", "stopLean", ...everyLayout],
  damper: [
    "pivotToMount",
    "pivotToOuter",
    "armAngle",
    "mountLineAngle",
    "stopLean",
    "damperLength",
    ...everyLayout,
  ],
  strut: ["stopLean", ...everyLayout],
  axle: ["track", "stopSpacing", "stopLean", ...everyLayout],
};

/** Least, greatest, and what is drawn while the number is not known. */
const bounds: { readonly [Name in PicturedReading]: readonly [number, number, number] } = {
  pivotToStop: [40, 900, 150],
  pivotToMount: [40, 900, 270],
  pivotToOuter: [120, 1500, 410],
  armAngle: [-45, 55, 8],
  stopLineAngle: [-55, 65, 8],
  mountLineAngle: [-55, 65, 8],
  stopLean: [-50, 55, 0],
  damperLength: [150, 1000, 410],
  track: [700, 3000, 1560],
  stopSpacing: [150, 2800, 900],
  gap: [0, 400, 35],
  rideHeight: [150, 1500, 500],
  cornerMass: [1, 5000, 500],
  freeHeight: [12, 400, 60],
  usableCompression: [1, 380, 33],
  "limit:tyre": [0, 400, 120],
  "limit:damper": [0, 500, 100],
  "limit:spring": [0, 400, 90],
  "limit:metal": [0, 400, 60],
  "limit:other": [0, 400, 45],
};

const usualLean: { readonly [Kind in LayoutKind]: number } = {
  arm: 0,
  damper: 12,
  strut: 7,
  axle: 0,
};

/** An angle that is being measured but not yet known is drawn wide enough to be seen. */
const exampleLean = 14;
const exampleOffset = 7;

/** The largest part of a stop's free height that a drawing shows pressed together. */
const mostCompressed = 0.85;

export function isKnown(value: number | undefined): value is number {
  return value !== undefined && Number.isFinite(value);
}

export function clamp(value: number, least: number, greatest: number): number {
  return Math.min(Math.max(value, least), greatest);
}

/** Every number the drawing needs: the known ones held to what can be drawn, usual ones for the rest. */
export function drawnNumbers(
  kind: LayoutKind,
  reading: PicturedReading,
  values: DrawingValues,
): DrawnNumbers {
  const settle = (name: PicturedReading, usual = bounds[name][2]): number => {
    const value = values[name];
    const [least, greatest] = bounds[name];
    return clamp(isKnown(value) ? value : usual, least, greatest);
  };
  const armAngle = settle("armAngle");
  const lean = reading === "stopLean" ? exampleLean : usualLean[kind];
  const freeHeight = settle("freeHeight");
  const numbers: DrawnNumbers = {
    pivotToStop: settle("pivotToStop"),
    pivotToMount: settle("pivotToMount"),
    pivotToOuter: settle("pivotToOuter"),
    armAngle,
    stopLineAngle: settle(
      "stopLineAngle",
      reading === "stopLineAngle" ? armAngle + exampleOffset : armAngle,
    ),
    mountLineAngle: settle(
      "mountLineAngle",
      reading === "mountLineAngle" ? armAngle + exampleOffset : armAngle,
    ),
    stopLean: settle("stopLean", lean),
    damperLength: settle("damperLength"),
    track: settle("track"),
    stopSpacing: settle("stopSpacing"),
    gap: settle("gap"),
    rideHeight: settle("rideHeight"),
    cornerMass: settle("cornerMass"),
    freeHeight,
    usableCompression: Math.min(
      settle("usableCompression", 0.55 * freeHeight),
      mostCompressed * freeHeight,
    ),
    "limit:tyre": settle("limit:tyre"),
    "limit:damper": settle("limit:damper"),
    "limit:spring": settle("limit:spring"),
    "limit:metal": settle("limit:metal"),
    "limit:other": settle("limit:other"),
  };
  return numbers;
}
