import { add, type Point } from "../shapes/geometry.ts";
import type { LayoutPoints, ToStand } from "./skeleton.ts";

const mountPlate = 22;
/** The part of a damper that is body at least, mm, and as a share of a damper shown at its true length. */
const leastBody = 110;
const leastBodyShare = 0.4;

interface Telescopic extends Pick<LayoutPoints, "outer" | "bend" | "foot" | "wheelCentre"> {
  /** From eye to eye, mm. */
  readonly trueLength: number;
}

/** A stop on a rod, between its lower eye and its upper one. */
export function telescopicPoints(
  { around, axis, stand }: ToStand,
  { trueLength, ...points }: Telescopic,
): LayoutPoints {
  const { foot } = points;
  const wanted = stand.gap + stand.height;
  const keepsLength = around === "rod";
  const length = keepsLength ? trueLength : Math.max(trueLength, wanted + mountPlate + leastBody);
  const room = length * (1 - leastBodyShare) - mountPlate;
  const share = keepsLength ? Math.min(1, Math.max(room, 1) / Math.max(wanted, 1)) : 1;
  const head = add(foot, axis, length);
  const stopTop = add(head, axis, -mountPlate);
  const stopHeight = stand.height * share;
  const stopFace = add(stopTop, axis, -stopHeight);
  return {
    ...points,
    pivot: armPivot,
    pad: add(stopFace, axis, -stand.gap * share),
    stopFace,
    stopTop,
    head,
    stopHeight,
    stop: stand.stop,
    stopOnArm: false,
    damperFoot: foot,
    damperHead: head,
  };
}

export const armPivot: Point = { x: 0, y: 0 };
