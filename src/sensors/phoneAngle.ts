import type { Up } from "./upDirection.ts";

const degrees = (radians: number): number => (radians * 180) / Math.PI;

/**
 * How far the phone's long edge falls toward the phone's top, degrees, −90…90: the edge's angle to the
 * horizontal, positive where the top end is the lower one. With the top toward the wheel that is an
 * arm's angle as the record has it (outer end lower is positive). It does not depend on how the phone
 * is rolled about that edge, nor on which way it faces.
 */
export function longEdgeFall(up: Up): number {
  return -degrees(Math.asin(Math.min(1, Math.max(-1, up.y))));
}

/**
 * How far the phone's top leans to the right of the person before the screen, degrees, −180…180, seen
 * square to the screen: 0 upright. Positive to the right. Undefined where the phone lies flat.
 */
export function leanToRight(up: Up): number {
  return degrees(Math.atan2(-up.x, up.y));
}

/** How a phone lies for a reading. An offset found in one posture does not hold in another. */
export const postures = ["leftEdge", "rightEdge", "upright"] as const;
export type Posture = (typeof postures)[number];

/** What is measured: the fall of a line, or the lean of an axis. */
export type AngleKind = "line" | "lean";

export function angleOf(kind: AngleKind): (up: Up) => number {
  return kind === "line" ? longEdgeFall : leanToRight;
}

export type PostureFault =
  /** Face up or face down. */
  | "flat"
  /** Upright, where it should lie along a line. */
  | "onShortEdge"
  /** Lying along a line, where it should stand upright. */
  | "onLongEdge"
  | "upsideDown"
  /** The screen faces the sky or the floor more than the person. */
  | "leansBack";

export type PostureFound =
  | { readonly ok: true; readonly posture: Posture }
  | { readonly ok: false; readonly fault: PostureFault };

const sine = (angle: number): number => Math.sin((angle * Math.PI) / 180);
/** A line is measured up to this fall: beyond it the phone rather stands upright. Common practice. */
const steepestLine = 70;
/** A lean is measured up to this; beyond it the phone rather lies. Common practice. */
const greatestLean = 60;
/** The screen may face this far up or down. Common practice. */
const mostBackward = 30;

/** How the phone lies, for what is measured; or why that will not do. */
export function postureOf(kind: AngleKind, up: Up): PostureFound {
  if (kind === "line") {
    if (Math.abs(up.y) > sine(steepestLine)) return { ok: false, fault: "onShortEdge" };
    if (Math.abs(up.z) > Math.abs(up.x)) return { ok: false, fault: "flat" };
    // Up along +x: the left edge of the screen lies below.
    return { ok: true, posture: up.x > 0 ? "leftEdge" : "rightEdge" };
  }
  if (Math.abs(up.z) > sine(60)) return { ok: false, fault: "flat" };
  if (up.y < -0.5) return { ok: false, fault: "upsideDown" };
  if (Math.abs(up.z) > sine(mostBackward)) return { ok: false, fault: "leansBack" };
  if (Math.abs(leanToRight(up)) > greatestLean) return { ok: false, fault: "onLongEdge" };
  return { ok: true, posture: "upright" };
}

/** Quarter turns clockwise by which words on the screen stand upright, with the page turned by `page`. */
export function quarterTurns(up: Up, page: number): 0 | 1 | 2 | 3 {
  if (Math.hypot(up.x, up.y) < 0.5) return 0;
  const turned = degrees(Math.atan2(up.x, up.y)) - page;
  return (((Math.round(turned / 90) % 4) + 4) % 4) as 0 | 1 | 2 | 3;
}
