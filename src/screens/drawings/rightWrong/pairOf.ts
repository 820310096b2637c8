import type { LayoutKind, LimitKind } from "../../../physics/fitment.ts";
import { type LimitPlace, layoutRegistry } from "../../../physics/readings/index.ts";
import { layoutsOnScreen } from "../../layouts/layoutsOnScreen.ts";
import type { PicturedReading } from "../drawnNumbers.ts";
import * as corner from "./cornerPairs.tsx";
import * as geometry from "./geometryPairs.tsx";
import * as limit from "./limitPairs.tsx";
import type { Pair } from "./pair.ts";

const atWheel: { readonly [Kind in LimitKind]: Pair } = {
  tyre: limit.tyreClearance,
  damper: corner.damperTravel,
  spring: limit.springTravel,
  metal: limit.metalClearance,
  other: limit.otherClearance,
};

const atStop: { readonly [Kind in LimitKind]: Pair } = {
  tyre: limit.tyreAtStop,
  damper: limit.closingAtStop,
  spring: limit.springTravel,
  metal: limit.closingAtStop,
  other: limit.otherClearance,
};

const { stopLean, damperLean, strutLean } = geometry;
const leans = { stopLean, damperLean, strutLean };

const plain: { readonly [Name in PicturedReading]?: Pair } = {
  pivotToStop: geometry.pivotToStop,
  pivotToOuter: geometry.pivotToOuter,
  pivotToMount: geometry.pivotToMount,
  damperLength: geometry.damperLength,
  track: geometry.track,
  stopSpacing: geometry.stopSpacing,
  armAngle: geometry.armAngle,
  stopLineAngle: geometry.stopLineAngle,
  mountLineAngle: geometry.mountLineAngle,
  rideHeight: corner.rideHeight,
  cornerMass: corner.cornerMass,
  freeHeight: corner.freeHeight,
  usableCompression: corner.usableCompression,
};

/** The commonest mistake with a reading beside how it is taken; null where none is drawn. */
export function pairOf(
  reading: PicturedReading,
  kind: LayoutKind,
  at: LimitPlace = "wheel",
): Pair | null {
  if (reading === "gap") {
    return layoutRegistry[kind].onRod ? corner.gapOnRod : corner.gapToPad;
  }
  if (reading === "stopLean") return leans[layoutsOnScreen[kind].picture.leanPair];
  const limitKind = /^limit:(\w+)$/.exec(reading)?.[1] as LimitKind | undefined;
  if (limitKind !== undefined) return (at === "stop" ? atStop : atWheel)[limitKind];
  return plain[reading] ?? null;
}
