import type { LayoutKind } from "../../physics/fitment.ts";
import { layoutsOnScreen } from "../layouts/layoutsOnScreen.ts";
import type { DrawnNumbers, PicturedReading } from "../layouts/pictured.ts";
import type { Skeleton, Stand } from "../layouts/skeleton.ts";
import { clamp, leaning, tyreRadius } from "../shapes/geometry.ts";
import { viewOf } from "./viewOf.ts";

export function skeletonOf(
  kind: LayoutKind,
  reading: PicturedReading,
  numbers: DrawnNumbers,
  stopOn?: "frame" | "arm",
  fromSide = false,
): Skeleton {
  const axis = leaning(numbers.stopLean);
  const view = viewOf(reading);
  const around = view?.from === "along" ? view.around : null;
  const toStand = {
    around,
    numbers,
    axis,
    stand: standOf(reading, numbers),
    stopOnArm: stopOn === "arm",
  };
  const points = layoutsOnScreen[kind].points(toStand);
  const wheelCentre = fromSide ? points.outer : points.wheelCentre;
  const wheelRadius =
    fromSide && around === "ground"
      ? clamp(points.outer.y + numbers.pivotHeight, 200, 600)
      : tyreRadius;
  const archY =
    reading === "limit:tyre"
      ? wheelCentre.y + tyreRadius + numbers["limit:tyre"]
      : wheelCentre.y + clamp(numbers.rideHeight, tyreRadius + 40, 800);
  return { kind, axis, archY, fromSide, wheelRadius, ...points, wheelCentre };
}

function standOf(reading: PicturedReading, numbers: DrawnNumbers): Stand {
  if (reading === "pressedHeight") {
    return { stop: "pressed", gap: 0, height: numbers.pressedHeight };
  }
  if (reading === "seatToPad") return { stop: "missing", gap: 0, height: numbers.seatToPad };
  return { stop: "free", gap: numbers.gap, height: numbers.freeHeight };
}
