import type { Side } from "../../physics/fitment.ts";
import type { LimitPlace } from "../../physics/readings/index.ts";
import type { Skeleton } from "../layouts/skeleton.ts";
import { add, tyreRadius } from "../shapes/geometry.ts";
import { lengthBetween, type Measurement, minus, outboard, up } from "../shapes/measurement.ts";
import type { DrawnNumbers, PicturedReading } from "./drawnNumbers.ts";
import { viewOf } from "./viewOf.ts";

export function measurementOf(
  reading: PicturedReading,
  numbers: DrawnNumbers,
  skeleton: Skeleton,
  side: Side,
  at: LimitPlace = "wheel",
): Measurement {
  const { pad, stopFace, stopTop, axis, wheelCentre } = skeleton;
  const view = viewOf(reading);
  if (view?.from === "along") return view.measure({ skeleton, numbers, side });
  if (at === "stop" && reading.startsWith("limit:")) {
    return {
      ...lengthBetween(pad, add(pad, axis, numbers[reading]), axis, outboard),
      offset: 52,
      numberBeside: true,
    };
  }
  switch (reading) {
    case "pressedHeight":
    case "seatToPad":
      return {
        ...lengthBetween(stopTop, pad, skeleton.stopOnArm ? axis : minus(axis), outboard),
        offset: 60,
      };
    case "gap":
      return {
        ...lengthBetween(stopFace, pad, skeleton.stopOnArm ? axis : minus(axis), outboard),
        offset: 52,
      };
    case "rideHeight":
      return {
        ...lengthBetween({ x: 0, y: 0 }, { x: 0, y: numbers.rideHeight }, up, outboard),
        offset: 0,
      };
    case "cornerMass":
      return { kind: "mass", at: { x: 0, y: 0 } };
    case "freeHeight":
      return {
        ...lengthBetween({ x: 0, y: 0 }, { x: 0, y: numbers.freeHeight }, up, outboard),
        offset: 118,
      };
    case "usableCompression": {
      const pressed = numbers.freeHeight - numbers.usableCompression;
      const x = 0.75 * numbers.freeHeight;
      return {
        ...lengthBetween({ x, y: pressed }, { x, y: numbers.freeHeight }, up, outboard),
        offset: 66,
      };
    }
    case "limit:tyre": {
      const top = { x: wheelCentre.x, y: wheelCentre.y + tyreRadius };
      return { ...lengthBetween(top, add(top, up, numbers[reading]), up, outboard), offset: 28 };
    }
    case "limit:spring":
      return {
        ...lengthBetween(
          { x: springPlace, y: springSolid },
          { x: springPlace, y: springSolid + numbers[reading] },
          up,
          outboard,
        ),
        offset: 44,
      };
    default:
      return {
        ...lengthBetween({ x: 0, y: 0 }, { x: 0, y: numbers[reading] }, up, outboard),
        offset: 64,
      };
  }
}

/** The drawing of a spring: half the distance between its two pictures, and its height coil on coil, mm. */
export const springPlace = 70;
export const springSolid = 98;
