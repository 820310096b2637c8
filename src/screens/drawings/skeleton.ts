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
  /** "missing": seat and pad face each other with nothing between. */
  readonly stop: "free" | "pressed" | "missing";
  /** The stop stands on the arm and meets a pad on the frame. */
  readonly stopOnArm: boolean;
  readonly wheelCentre: Point;
  readonly wheelRadius: number;
  /** A trailing arm, seen from beside the vehicle: x rearward, the wheel a circle about the arm's end. */
  readonly fromSide: boolean;
  readonly archY: number;
  /** A damper and its spring beside the stop, where the layout's stop sits elsewhere. */
  readonly damperFoot: Point;
  readonly damperHead: Point;
}

export const tyreRadius = 370;
export const tyreWidth = 230;
/** From an arm's pad down to the middle of the arm. */
const padDepth = 30;
export const axleTubeRadius = 42;
const mountPlate = 22;
/** The part of a damper that is body at least, mm, and as a share of a damper shown at its true length. */
const leastBody = 110;
const leastBodyShare = 0.4;

export function skeletonOf(
  kind: LayoutKind,
  reading: PicturedReading,
  numbers: DrawnNumbers,
  stopOn?: "frame" | "arm",
  fromSide = false,
): Skeleton {
  const axis = leaning(numbers.stopLean);
  const stand = standOf(reading, numbers);
  const points =
    kind === "arm"
      ? armPoints(reading, numbers, axis, stand, stopOn === "arm")
      : kind === "axle"
        ? axlePoints(numbers, axis, stand)
        : telescopicPoints(kind, reading, numbers, axis, stand);
  const wheelCentre = fromSide ? points.outer : points.wheelCentre;
  const wheelRadius =
    fromSide && heightOfGround[reading]
      ? clamp(points.outer.y + numbers.pivotHeight, 200, 600)
      : tyreRadius;
  const archY =
    reading === "limit:tyre"
      ? wheelCentre.y + tyreRadius + numbers["limit:tyre"]
      : wheelCentre.y + clamp(numbers.rideHeight, tyreRadius + 40, 800);
  return { kind, axis, archY, fromSide, wheelRadius, ...points, wheelCentre };
}

type KindPoints = Omit<Skeleton, "kind" | "axis" | "archY" | "fromSide" | "wheelRadius">;

/** How the stop stands at ride: the gap before it and its height as it is, mm. */
interface Stand {
  readonly stop: Skeleton["stop"];
  readonly gap: number;
  readonly height: number;
}

function standOf(reading: PicturedReading, numbers: DrawnNumbers): Stand {
  if (reading === "pressedHeight") {
    return { stop: "pressed", gap: 0, height: numbers.pressedHeight };
  }
  if (reading === "seatToPad") return { stop: "missing", gap: 0, height: numbers.seatToPad };
  return { stop: "free", gap: numbers.gap, height: numbers.freeHeight };
}

const heightOfGround: { readonly [Name in PicturedReading]?: true } = {
  pivotHeight: true,
  outerHeight: true,
  stopHeight: true,
  mountHeight: true,
};

/** The wheel's center: beside the outer joint, or as high as the ground's distance from the pivot line has it. */
function wheelCentreOf(reading: PicturedReading, numbers: DrawnNumbers, outer: Point): Point {
  const beside = add(outer, { x: 135, y: 75 });
  return heightOfGround[reading] ? { x: beside.x, y: tyreRadius - numbers.pivotHeight } : beside;
}

function armPoints(
  reading: PicturedReading,
  numbers: DrawnNumbers,
  axis: Point,
  { stop, gap, height }: Stand,
  stopOnArm: boolean,
): KindPoints {
  const pivot = { x: 0, y: 0 };
  const outer = add(pivot, belowHorizontal(numbers.armAngle), numbers.pivotToOuter);
  const touched = add(pivot, belowHorizontal(numbers.stopLineAngle), numbers.pivotToStop);
  const pad = stopOnArm ? add(touched, axis, gap) : touched;
  const stopFace = stopOnArm ? touched : add(pad, axis, gap);
  const stopTop = add(stopFace, axis, stopOnArm ? -height : height);
  const onArm = stopOnArm ? stopTop : pad;
  const head = stopOnArm ? pad : stopTop;
  const damperFoot = add(pivot, belowHorizontal(numbers.armAngle), 0.72 * numbers.pivotToOuter);
  return {
    pivot,
    outer,
    bend: add(onArm, axis, -padDepth),
    foot: stopOnArm ? stopFace : pad,
    pad,
    stopFace,
    stopTop,
    head,
    stopHeight: height,
    stop,
    stopOnArm,
    wheelCentre: wheelCentreOf(reading, numbers, outer),
    damperFoot,
    damperHead: add(damperFoot, { x: -60, y: 400 }),
  };
}

function telescopicPoints(
  kind: "damper" | "strut",
  reading: PicturedReading,
  numbers: DrawnNumbers,
  axis: Point,
  stand: Stand,
): KindPoints {
  const pivot = { x: 0, y: 0 };
  const outer =
    kind === "damper"
      ? add(pivot, belowHorizontal(numbers.armAngle), numbers.pivotToOuter)
      : add(pivot, belowHorizontal(6), 330);
  const wheelCentre =
    kind === "damper" ? wheelCentreOf(reading, numbers, outer) : add(outer, { x: 160, y: 75 });
  const foot =
    kind === "damper"
      ? add(pivot, belowHorizontal(numbers.mountLineAngle), numbers.pivotToMount)
      : add(outer, { x: 20, y: 115 });
  const trueLength = kind === "damper" ? numbers.damperLength : 460;
  const wanted = stand.gap + stand.height;
  const keepsLength = reading === "damperLength";
  const length = keepsLength ? trueLength : Math.max(trueLength, wanted + mountPlate + leastBody);
  const room = length * (1 - leastBodyShare) - mountPlate;
  const share = keepsLength ? Math.min(1, Math.max(room, 1) / Math.max(wanted, 1)) : 1;
  const head = add(foot, axis, length);
  const stopTop = add(head, axis, -mountPlate);
  const stopHeight = stand.height * share;
  const stopFace = add(stopTop, axis, -stopHeight);
  return {
    pivot,
    outer,
    bend: kind === "damper" ? foot : outer,
    foot,
    pad: add(stopFace, axis, -stand.gap * share),
    stopFace,
    stopTop,
    head,
    stopHeight,
    stop: stand.stop,
    stopOnArm: false,
    wheelCentre,
    damperFoot: foot,
    damperHead: head,
  };
}

function axlePoints(numbers: DrawnNumbers, axis: Point, { stop, gap, height }: Stand): KindPoints {
  const middle = { x: 0, y: 0 };
  const wheelCentre = { x: numbers.track / 2, y: 0 };
  const pad = { x: numbers.stopSpacing / 2, y: axleTubeRadius + 12 };
  const stopFace = add(pad, axis, gap);
  const stopTop = add(stopFace, axis, height);
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
    stopHeight: height,
    stop,
    stopOnArm: false,
    wheelCentre,
    damperFoot,
    damperHead: add(damperFoot, { x: -60, y: 330 }),
  };
}
