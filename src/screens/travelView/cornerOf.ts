import type { Fitment, Side } from "../../physics/fitment.ts";
import { cornerTravel } from "../../physics/travel/index.ts";
import { type DrawnCorner, drawnCorner } from "./drawnCorner.ts";

/** One side of a fitment as it is drawn; null where it has no motion. */
export function cornerOf(fitment: Fitment, side: Side): DrawnCorner | null {
  const corner = fitment.corners.find((one) => one.side === side);
  const travel = corner && cornerTravel(fitment, corner);
  return corner && travel?.ok ? drawnCorner(fitment, corner, travel.value) : null;
}

/** Outboard is to the right where the left side is seen from the front, or the right one from behind. */
export function outboard(side: Side, axle: "front" | "rear"): 1 | -1 {
  return (side === "left") === (axle === "front") ? 1 : -1;
}
