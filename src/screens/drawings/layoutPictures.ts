import type { GeometryReadingName, LayoutKind } from "../../physics/fitment.ts";

/** How a layout is drawn where nothing is known of the vehicle. */
interface LayoutPicture {
  /** The lean of its stop, degrees. */
  readonly usualLean: number;
  /** The picture of right and wrong of that lean. */
  readonly leanPair: "stopLean" | "damperLean" | "strutLean";
  /** For its small picture: larger than life, so that the stop is found at a glance. */
  readonly values: {
    readonly [Name in GeometryReadingName | "gap" | "freeHeight" | "rideHeight"]?: number;
  };
}

export const layoutPictures: { readonly [Kind in LayoutKind]: LayoutPicture } = {
  arm: {
    usualLean: 0,
    leanPair: "stopLean",
    values: {
      pivotToStop: 190,
      pivotToOuter: 420,
      armAngle: 9,
      gap: 40,
      freeHeight: 105,
      rideHeight: 470,
    },
  },
  damper: {
    usualLean: 12,
    leanPair: "damperLean",
    values: {
      pivotToMount: 270,
      pivotToOuter: 420,
      stopLean: 14,
      damperLength: 470,
      gap: 70,
      freeHeight: 115,
      rideHeight: 470,
    },
  },
  strut: {
    usualLean: 7,
    leanPair: "strutLean",
    values: { stopLean: 8, gap: 75, freeHeight: 120, rideHeight: 470 },
  },
  axle: {
    usualLean: 0,
    leanPair: "stopLean",
    values: { track: 1500, stopSpacing: 780, gap: 70, freeHeight: 160, rideHeight: 500 },
  },
};
