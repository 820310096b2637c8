import type { LayoutKind } from "../../physics/fitment.ts";
import {
  type GeometryReadingName,
  geometryNames,
  geometryRegistry,
  isGeometryReadingName,
  layoutReadingsInOrder,
  layoutRegistry,
} from "../../physics/readings/index.ts";
import { layoutsOnScreen } from "../layouts/layoutsOnScreen.ts";
import type { DrawingValues, DrawnNumbers, PicturedReading } from "../layouts/pictured.ts";
import { clamp } from "../shapes/geometry.ts";

export type { DrawingValues, DrawnNumbers, PicturedReading };

const everyLayout: readonly PicturedReading[] = [
  "gap",
  "pressedHeight",
  "seatToPad",
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

/** The readings that a layout has a drawing for. */
export function drawnReadings(kind: LayoutKind): readonly PicturedReading[] {
  const onArm = layoutRegistry[kind].onArm ? (["limitDistance"] as const) : [];
  return [...layoutReadingsInOrder[kind], ...onArm, ...everyLayout];
}

/** Least, greatest, and what is drawn while the number is not known. */
const bounds: {
  readonly [Name in Exclude<PicturedReading, GeometryReadingName>]: readonly [
    number,
    number,
    number,
  ];
} = {
  gap: [0, 400, 35],
  pressedHeight: [8, 400, 40],
  seatToPad: [8, 500, 95],
  rideHeight: [150, 1500, 500],
  cornerMass: [1, 5000, 500],
  freeHeight: [12, 400, 60],
  usableCompression: [1, 380, 33],
  limitDistance: [20, 1500, 260],
  "limit:tyre": [0, 400, 120],
  "limit:damper": [0, 500, 100],
  "limit:spring": [0, 400, 90],
  "limit:metal": [0, 400, 60],
  "limit:other": [0, 400, 45],
};

function boundsOf(name: PicturedReading): readonly [number, number, number] {
  if (!isGeometryReadingName(name)) return bounds[name];
  const { believable, typical } = geometryRegistry[name];
  return [...believable, typical];
}

/** An angle that is being measured but not yet known is drawn wide enough to be seen. */
const exampleLean = 14;
const exampleOffset = 7;

/** Of its free height, what a stop is drawn pressed to while nobody has measured it. */
const usuallyPressed = 0.7;

/** The largest part of a stop's free height that a drawing shows pressed together. */
const mostCompressed = 0.85;

export function isKnown(value: number | undefined): value is number {
  return value !== undefined && Number.isFinite(value);
}

/**
 * Every number the drawing needs: the known ones held to what can be drawn, usual ones for the rest.
 * An arm's angle that was not measured is drawn as its two heights have it, where both are known.
 */
export function drawnNumbers(
  kind: LayoutKind,
  reading: PicturedReading,
  values: DrawingValues,
): DrawnNumbers {
  const settle = (name: PicturedReading, usual = boundsOf(name)[2]): number => {
    const value = values[name];
    const [least, greatest] = boundsOf(name);
    return clamp(isKnown(value) ? value : usual, least, greatest);
  };
  const settled = (names: readonly PicturedReading[]) =>
    Object.fromEntries(names.map((name) => [name, settle(name)]));
  const armAngle = settle(
    "armAngle",
    angleByHeights(values.pivotHeight, values.outerHeight, values.pivotToOuter),
  );
  const besideArm = (name: "stopLineAngle" | "mountLineAngle") =>
    settle(name, reading === name ? armAngle + exampleOffset : armAngle);
  const stopLean = settle(
    "stopLean",
    reading === "stopLean" ? exampleLean : layoutsOnScreen[kind].picture.usualLean,
  );
  const freeHeight = settle("freeHeight");
  return {
    ...(settled(geometryNames) as {
      [Name in GeometryReadingName]: number;
    }),
    ...(settled(Object.keys(bounds) as PicturedReading[]) as {
      [Name in keyof typeof bounds]: number;
    }),
    armAngle,
    stopLineAngle: besideArm("stopLineAngle"),
    mountLineAngle: besideArm("mountLineAngle"),
    stopLean,
    otherArmAngle: settle(
      "otherArmAngle",
      angleByHeights(values.otherPivotHeight, values.otherOuterHeight, values.otherArmLength),
    ),
    jointToTopLean: settle("jointToTopLean", stopLean + exampleOffset),
    pressedHeight: Math.min(settle("pressedHeight", usuallyPressed * freeHeight), freeHeight),
    usableCompression: Math.min(
      settle("usableCompression", 0.55 * freeHeight),
      mostCompressed * freeHeight,
    ),
  };
}

/** Degrees below the horizontal; undefined where a height or the length is not known. */
function angleByHeights(
  inner: number | undefined,
  outer: number | undefined,
  length: number | undefined,
): number | undefined {
  if (!isKnown(inner) || !isKnown(outer) || !isKnown(length)) return undefined;
  const sine = (inner - outer) / length;
  return Math.abs(sine) < 1 ? (Math.asin(sine) * 180) / Math.PI : undefined;
}
