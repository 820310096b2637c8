import type { HardLimitPlace } from "../../physics/budget/index.ts";
import type { Corner, Fitment, LayoutKind } from "../../physics/fitment.ts";
import { layoutRegistry } from "../../physics/readings/index.ts";
import type { CornerTravel, TravelMoment } from "../../physics/travel/index.ts";
import { meanOf } from "../../physics/uncertainty/index.ts";
import {
  add,
  between,
  distance,
  type Point,
  quarterTurn,
  tyreRadius,
  tyreWidth,
} from "../shapes/geometry.ts";

/** Where a hard limit meets: its part that moves and what that runs into, in the body's frame, mm. */
export interface ClashPlace {
  readonly limit: HardLimitPlace;
  readonly moving: Point;
  readonly still: Point;
  readonly closed: boolean;
}

/** Everything that a picture of one moment needs, in the body's frame, mm. */
export interface DrawnMoment {
  readonly moment: TravelMoment;
  readonly wheel: Point;
  /** The axis from the pad up to the seat. */
  readonly axis: Point;
  /** The damper and spring beside a stop that sits elsewhere; null where the rod carries the stop. */
  readonly damper: { readonly foot: Point; readonly head: Point; readonly bodyTop: Point } | null;
  readonly clashes: readonly ClashPlace[];
}

/** One corner as it is drawn: what was measured to scale, and around it what only tells where one looks. */
export interface DrawnCorner {
  readonly kind: LayoutKind;
  /** Seen from beside the vehicle, where the arm trails; along it elsewhere. */
  readonly fromSide: boolean;
  readonly stopOnArm: boolean;
  readonly armRole: string | undefined;
  readonly travel: CornerTravel;
  readonly atRide: DrawnMoment;
  readonly tyreRadius: number;
  /** The fender's lip: as high as a measured clearance has it. */
  readonly lipY: number;
  readonly groundY: number;
  /** The box that the moving parts stay in, opposite corners. */
  readonly bounds: readonly [Point, Point];
  at(travelMm: number): DrawnMoment;
}

const usualRoomOverTire = 130;
const axleTube = 42;
/** Of an arm's length, where its damper stands. */
const damperShare = 0.72;
const damperRise: Point = { x: -60, y: 400 };
/** A bracket beside the stop, from the stop's axis. */
const bracketAside = 64;

export function drawnCorner(fitment: Fitment, corner: Corner, travel: CornerTravel): DrawnCorner {
  const { kind, armRole } = fitment.layout;
  const { joinsWheels } = layoutRegistry[kind];
  const stopOnArm = "stopOn" in fitment.layout && fitment.layout.stopOn === "arm";
  const fromSide = travel.linkage === "carriesWheel";
  const poseAtRide = travel.at(0).pose;
  const wheelAtRide = poseAtRide.wheel ?? wheelBeside(armRole, poseAtRide.outer);
  const radius = radiusOf(corner);
  const tyreLimit = travel.limits.find((limit) => limit.kind === "tyre");
  const lipY = wheelAtRide.y + radius + (tyreLimit?.travelMm ?? usualRoomOverTire);

  const damperAtRide = damperBeside(kind, poseAtRide.outer, travel.at(0));
  const closing = travel.limits.find((limit) => limit.kind === "damper" || limit.kind === "spring");
  const damperHead = damperAtRide && add(damperAtRide, damperRise);
  const bodyLength = damperHead === null ? 0 : bodyLengthOf();

  function bodyLengthOf(): number {
    if (damperHead === null) return 0;
    const end = closing?.travelMm ?? (tyreLimit?.travelMm ?? 100) + 40;
    const foot = damperBeside(kind, travel.at(end).pose.outer, travel.at(end));
    return foot === null ? 0 : Math.max(distance(foot, damperHead) - 16, 60);
  }

  const at = (travelMm: number): DrawnMoment => {
    const moment = travel.at(travelMm);
    const { pose } = moment;
    // Contacts found by hand lead the wheel's travel away from what its arm alone would give.
    const wheel = {
      x: pose.wheel?.x ?? wheelAtRide.x + (pose.outer?.x ?? 0) - (poseAtRide.outer?.x ?? 0),
      y: wheelAtRide.y + moment.travelMm,
    };
    const long = Math.max(distance(pose.seat, pose.pad), 1e-6);
    const axis = { x: (pose.seat.x - pose.pad.x) / long, y: (pose.seat.y - pose.pad.y) / long };
    const foot = damperBeside(kind, pose.outer, moment);
    const damper =
      foot && damperHead
        ? {
            foot,
            head: damperHead,
            bodyTop: add(
              foot,
              between({ x: 0, y: 0 }, along(foot, damperHead), 1),
              Math.min(bodyLength, distance(foot, damperHead) - 10),
            ),
          }
        : null;
    const drawn = { moment, wheel, axis, damper };
    return { ...drawn, clashes: travel.limits.map((limit) => clashOf(limit, drawn)) };
  };

  // The same at every moment that is drawn.
  const ends = new Map(travel.limits.map((limit) => [limit, travel.at(limit.travelMm)]));

  const clashOf = (limit: HardLimitPlace, drawn: Omit<DrawnMoment, "clashes">): ClashPlace => {
    const closed = drawn.moment.travelMm >= limit.travelMm - 0.05;
    const end = ends.get(limit) ?? travel.at(limit.travelMm);
    const { pose } = drawn.moment;
    const place = (moving: Point, still: Point): ClashPlace => ({ limit, moving, still, closed });
    if (limit.kind === "tyre") {
      return place(add(drawn.wheel, { x: 0, y: radius }), { x: drawn.wheel.x, y: lipY });
    }
    if (limit.kind === "damper" || limit.kind === "spring") {
      if (drawn.damper === null) return place(pose.pad, pose.seat);
      const { bodyTop, head } = drawn.damper;
      return place(bodyTop, add(head, along(head, bodyTop), 16));
    }
    if (limit.at === "arm" && limit.distanceMm !== null && pose.outer && end.pose.outer) {
      const share = limit.distanceMm / Math.max(distance({ x: 0, y: 0 }, pose.outer), 1);
      const over: Point = { x: 0, y: 19 };
      return place(
        add(between({ x: 0, y: 0 }, pose.outer, share), over),
        add(between({ x: 0, y: 0 }, end.pose.outer, share), over),
      );
    }
    if (limit.at === "stop" && pose.rod === null) {
      const axis = drawn.axis;
      const side = quarterTurn(axis);
      const aside = side.x > 0 ? -bracketAside : bracketAside;
      const left = travel.seatToPadMm - end.closingMm;
      return place(add(pose.pad, side, aside), add(add(pose.seat, axis, -left), side, aside));
    }
    return joinsWheels
      ? place(
          { x: drawn.wheel.x - 190, y: drawn.wheel.y + axleTube },
          { x: drawn.wheel.x - 190, y: wheelAtRide.y + limit.travelMm + axleTube },
        )
      : place(add(drawn.wheel, { x: -150, y: 60 }), {
          x: drawn.wheel.x - 150,
          y: wheelAtRide.y + 60 + limit.travelMm,
        });
  };

  const atRide = at(0);
  const { pose } = atRide.moment;
  const groundY = wheelAtRide.y - radius;
  const out = fromSide ? radius : tyreWidth / 2;
  const tops = [lipY, pose.seat.y + 70, pose.rod?.head.y ?? 0, damperHead?.y ?? 0];
  const inner = joinsWheels ? Math.max(0, pose.seat.x - 300) : Math.min(-80, pose.seat.x - 60);
  return {
    kind,
    fromSide,
    stopOnArm,
    armRole,
    travel,
    atRide,
    tyreRadius: radius,
    lipY,
    groundY,
    bounds: [
      { x: inner, y: groundY - 26 },
      { x: wheelAtRide.x + out + 34, y: Math.max(...tops) + 34 },
    ],
    at,
  };
}

/** Unit direction from one point to another. */
function along(from: Point, to: Point): Point {
  const long = Math.max(distance(from, to), 1e-6);
  return { x: (to.x - from.x) / long, y: (to.y - from.y) / long };
}

/** The wheel's center where nobody measured it, beside the joint that carries it. */
function wheelBeside(armRole: string | undefined, outer: Point | null): Point {
  if (outer === null) return { x: 140, y: -40 };
  return add(outer, armRole === "upper" ? { x: 120, y: -140 } : { x: 135, y: 75 });
}

/** The lower eye of a damper beside the stop; null where the stop sits on it. */
function damperBeside(kind: LayoutKind, outer: Point | null, { pose }: TravelMoment): Point | null {
  if (pose.rod !== null) return null;
  if (layoutRegistry[kind].joinsWheels) {
    return { x: Math.max(pose.pad.x - 170, 60), y: (pose.wheel?.y ?? 0) + axleTube };
  }
  return outer && between({ x: 0, y: 0 }, outer, damperShare);
}

/** Center to fender less the clearance over the tire, where that gives a tire. */
function radiusOf({ rideHeight, limits }: Corner): number {
  const over = limits.find(({ kind, at }) => kind === "tyre" && at === "wheel");
  if (!rideHeight || !over) return tyreRadius;
  const radius = meanOf(rideHeight) - meanOf(over.reading);
  return radius >= 280 && radius <= 520 ? radius : tyreRadius;
}
