import type { LayoutKind } from "../../physics/fitment.ts";
import { clamp, type DrawnNumbers, type PicturedReading } from "./drawnNumbers.ts";
import { add, belowHorizontal, leaning, type Point } from "./geometry.ts";

/**
 * The points of one side of a layout as it stands, seen along the vehicle: mm, x outboard, y up. The
 * origin is the arm's pivot, or for a beam axle the middle of the axle.
 */
export interface Skeleton {
  readonly kind: LayoutKind;
  readonly pivot: Point;
  readonly outer: Point;
  /** The arm's bend under the stop or at the damper's mount. */
  readonly bend: Point;
  /** Unit direction up the stop's axis. */
  readonly axis: Point;
  /** The damper's or strut's lower eye; where the stop acts on an arm or axle, the contact patch. */
  readonly foot: Point;
  /** What the stop meets. */
  readonly pad: Point;
  readonly stopFace: Point;
  /** The stop's mounted end. */
  readonly stopTop: Point;
  /** The damper's or strut's upper eye; where the stop acts on an arm or axle, the stop's top. */
  readonly head: Point;
  readonly stopHeight: number;
  readonly wheelCentre: Point;
  readonly archY: number;
  /** A damper and its spring beside the stop, where the layout's stop sits elsewhere. */
  readonly damperFoot: Point;
  readonly damperHead: Point;
}

export const tyreRadius = 370;
export const tyreWidth = 230;
/** From an arm's pad down to the middle of the arm. */
export const padDepth = 30;
export const axleTubeRadius = 42;
export const mountPlate = 22;
/** The part of a damper that is body at least, mm, and as a share of a damper shown at its true length. */
const leastBody = 110;
const leastBodyShare = 0.4;

export function skeletonOf(
  kind: LayoutKind,
  reading: PicturedReading,
  numbers: DrawnNumbers,
): Skeleton {
  const axis = leaning(numbers.stopLean);
  const points =
    kind === "arm"
      ? armPoints(numbers, axis)
      : kind === "axle"
        ? axlePoints(numbers, axis)
        : telescopicPoints(kind, reading, numbers, axis);
  const archY =
    reading === "limit:tyre"
      ? points.wheelCentre.y + tyreRadius + numbers["limit:tyre"]
      : points.wheelCentre.y + clamp(numbers.rideHeight, tyreRadius + 40, 800);
  return { kind, axis, archY, ...points };
}

type KindPoints = Omit<Skeleton, "kind" | "axis" | "archY">;

function armPoints(numbers: DrawnNumbers, axis: Point): KindPoints {
  const pivot = { x: 0, y: 0 };
  const outer = add(pivot, belowHorizontal(numbers.armAngle), numbers.pivotToOuter);
  const pad = add(pivot, belowHorizontal(numbers.stopLineAngle), numbers.pivotToStop);
  const stopFace = add(pad, axis, numbers.gap);
  const stopTop = add(stopFace, axis, numbers.freeHeight);
  const damperFoot = add(pivot, belowHorizontal(numbers.armAngle), 0.72 * numbers.pivotToOuter);
  return {
    pivot,
    outer,
    bend: add(pad, axis, -padDepth),
    foot: pad,
    pad,
    stopFace,
    stopTop,
    head: stopTop,
    stopHeight: numbers.freeHeight,
    wheelCentre: add(outer, { x: 135, y: 75 }),
    damperFoot,
    damperHead: add(damperFoot, { x: -60, y: 400 }),
  };
}

function telescopicPoints(
  kind: "damper" | "strut",
  reading: PicturedReading,
  numbers: DrawnNumbers,
  axis: Point,
): KindPoints {
  const pivot = { x: 0, y: 0 };
  const outer =
    kind === "damper"
      ? add(pivot, belowHorizontal(numbers.armAngle), numbers.pivotToOuter)
      : add(pivot, belowHorizontal(6), 330);
  const wheelCentre = add(outer, { x: kind === "damper" ? 135 : 160, y: 75 });
  const foot =
    kind === "damper"
      ? add(pivot, belowHorizontal(numbers.mountLineAngle), numbers.pivotToMount)
      : add(outer, { x: 20, y: 115 });
  const trueLength = kind === "damper" ? numbers.damperLength : 460;
  const wanted = numbers.gap + numbers.freeHeight;
  const keepsLength = reading === "damperLength";
  const length = keepsLength ? trueLength : Math.max(trueLength, wanted + mountPlate + leastBody);
  const room = length * (1 - leastBodyShare) - mountPlate;
  const share = keepsLength ? Math.min(1, Math.max(room, 1) / Math.max(wanted, 1)) : 1;
  const head = add(foot, axis, length);
  const stopTop = add(head, axis, -mountPlate);
  const stopHeight = numbers.freeHeight * share;
  const stopFace = add(stopTop, axis, -stopHeight);
  return {
    pivot,
    outer,
    bend: kind === "damper" ? foot : outer,
    foot,
    pad: add(stopFace, axis, -numbers.gap * share),
    stopFace,
    stopTop,
    head,
    stopHeight,
    wheelCentre,
    damperFoot: foot,
    damperHead: head,
  };
}

function axlePoints(numbers: DrawnNumbers, axis: Point): KindPoints {
  const middle = { x: 0, y: 0 };
  const wheelCentre = { x: numbers.track / 2, y: 0 };
  const pad = { x: numbers.stopSpacing / 2, y: axleTubeRadius + 12 };
  const stopFace = add(pad, axis, numbers.gap);
  const stopTop = add(stopFace, axis, numbers.freeHeight);
  const damperFoot = { x: Math.max(numbers.stopSpacing / 2 - 150, 60), y: axleTubeRadius };
  return {
    pivot: middle,
    outer: wheelCentre,
    bend: middle,
    foot: pad,
    pad,
    stopFace,
    stopTop,
    head: stopTop,
    stopHeight: numbers.freeHeight,
    wheelCentre,
    damperFoot,
    damperHead: add(damperFoot, { x: -60, y: 330 }),
  };
}
