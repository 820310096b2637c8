import type { LayoutKind } from "../../physics/fitment.ts";
import type { DrawingValues } from "./drawnNumbers.ts";

/** How a layout is drawn where nothing is known of the vehicle. */
interface LayoutPicture {
  /** The lean of its stop, degrees. */
  readonly usualLean: number;
  /** For its small picture: larger than life, so that the stop is found at a glance. */
  readonly values: DrawingValues;
}

export const layoutPictures: { readonly [Kind in LayoutKind]: LayoutPicture } = {
  arm: {
    usualLean: 0,
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
  strut: { usualLean: 7, values: { stopLean: 8, gap: 75, freeHeight: 120, rideHeight: 470 } },
  axle: {
    usualLean: 0,
    values: { track: 1500, stopSpacing: 780, gap: 70, freeHeight: 160, rideHeight: 500 },
  },
};
