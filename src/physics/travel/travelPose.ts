import type { CornerAtMeans } from "../budget/cornerAtMeans.ts";
import type { Layout } from "../fitment.ts";
import type { Standing } from "../kinematics/layoutMotion.ts";
import type { GeometryReadingName } from "../readings/geometryRegistry.ts";

/**
 * A point or a direction in the plane that the wheel moves in, mm: x outboard, y up. Of an arm that
 * carries its wheel, seen from beside the vehicle, x points along the arm. The arm's pivot is the
 * origin; of a beam axle, the middle of its tube at ride.
 */
export interface PlanePoint {
  readonly x: number;
  readonly y: number;
}

/** How the parts that were measured stand at one wheel travel, the body held still. */
export interface TravelPose {
  /** The arm's outer joint, or the wheel's center where the arm carries it; null without an arm. */
  readonly outer: PlanePoint | null;
  /** Of two measured arms the other one; null where its length was not measured. */
  readonly otherArm: { readonly pivot: PlanePoint; readonly joint: PlanePoint } | null;
  /** The wheel's center where its place beside the joint was measured; null elsewhere. */
  readonly wheel: PlanePoint | null;
  /** Turn of the wheel carrier since ride, rad, its top inboard positive. */
  readonly carrierTurn: number;
  /** Where the stop is mounted, its spacer included. */
  readonly seat: PlanePoint;
  /** What the stop meets, straight along its axis from the seat. */
  readonly pad: PlanePoint;
  /** Unit direction along the pad's face. */
  readonly padAlong: PlanePoint;
  /** Lower and upper eye of the damper, or the strut's lower joint and top mount; null elsewhere. */
  readonly rod: { readonly foot: PlanePoint; readonly head: PlanePoint } | null;
}

const origin: PlanePoint = { x: 0, y: 0 };

function along(from: PlanePoint, direction: PlanePoint, distance: number): PlanePoint {
  return { x: from.x + direction.x * distance, y: from.y + direction.y * distance };
}

/** Turned about a center by an angle, rad, the outer end up. */
function turned(point: PlanePoint, angle: number, center = origin): PlanePoint {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const [x, y] = [point.x - center.x, point.y - center.y];
  return { x: center.x + x * cos - y * sin, y: center.y + y * cos + x * sin };
}

function across({ x, y }: PlanePoint): PlanePoint {
  return { x: y, y: -x };
}

/** The top inboard. */
function leaning(angle: number): PlanePoint {
  return { x: -Math.sin(angle), y: Math.cos(angle) };
}

const ridden: Standing = { arm: 0, armPerMm: 0, carrier: 0, otherArm: 0 };

/**
 * Where the parts of a layout stand, from the lengths and angles of its own motion and the turns that this
 * motion gives. Nothing is found anew: the stop's closing and the turns come in from outside.
 */
export class TravelPoses {
  readonly #layout: Layout;
  readonly #atMeans: CornerAtMeans;
  readonly #seatToPad: number;
  readonly #lengths = new Map<string, number>();
  readonly #angles = new Map<string, number>();

  /** @param seatToPad from the stop's seat to its pad at ride, mm */
  constructor(layout: Layout, atMeans: CornerAtMeans, seatToPad: number) {
    this.#layout = layout;
    this.#atMeans = atMeans;
    this.#seatToPad = seatToPad;
    for (const { name, quantity } of atMeans.quantities) {
      // A motion sets only those that it needs itself.
      quantity.set(atMeans.means, 0);
      if ("sin" in quantity) this.#angles.set(name, Math.atan2(quantity.sin, quantity.cos));
      else this.#lengths.set(name, quantity.value);
    }
  }

  /** @param z wheel travel, mm @param s closing of the stop, mm @param standing turns; null without an arm */
  at(z: number, s: number, standing: Standing | null): TravelPose {
    const turns = standing ?? ridden;
    switch (this.#layout.kind) {
      case "arm":
        return this.#arm(s, turns);
      case "damper":
        return this.#damper(s, turns);
      case "strut":
        return this.#strut(s, turns);
      case "axle":
        return this.#axle(z, s);
    }
  }

  #length(name: GeometryReadingName): number | null {
    return this.#lengths.get(name) ?? null;
  }

  #angle(name: GeometryReadingName, standIn = 0): number {
    return this.#angles.get(name) ?? standIn;
  }

  /** From the arm's pivot, on a line below the horizontal. */
  #onArm(length: number, angle: number): PlanePoint {
    return { x: length * Math.cos(angle), y: -length * Math.sin(angle) };
  }

  #outerAtRide(): PlanePoint {
    return this.#onArm(this.#length("pivotToOuter") ?? 0, this.#angle("armAngle"));
  }

  #arm(s: number, turns: Standing): TravelPose {
    const { stopOn } = this.#layout as Layout & { kind: "arm" };
    const axis = leaning(this.#angle("stopLean"));
    const patch = this.#onArm(
      this.#length("pivotToStop") ?? 0,
      this.#angle("stopLineAngle", this.#angle("armAngle")),
    );
    const left = this.#seatToPad - s;
    if (stopOn === "arm") {
      const padAtRide = along(patch, axis, this.#lengths.get("gap") ?? 0);
      const seat = turned(along(padAtRide, axis, -this.#seatToPad), turns.arm);
      const pad = along(seat, turned(axis, turns.arm), left);
      return { ...this.#linkage(turns), seat, pad, padAlong: across(axis), rod: null };
    }
    const seat = along(patch, axis, this.#seatToPad);
    const padAlong = turned(across(axis), stopOn === "frame" ? turns.arm : 0);
    return { ...this.#linkage(turns), seat, pad: along(seat, axis, -left), padAlong, rod: null };
  }

  #damper(s: number, turns: Standing): TravelPose {
    const mount = this.#onArm(
      this.#length("pivotToMount") ?? 0,
      this.#angle("mountLineAngle", this.#angle("armAngle")),
    );
    const long = this.#length("damperLength") ?? 0;
    const head = along(mount, leaning(this.#angle("stopLean")), long);
    return this.#onRod(turned(mount, turns.arm), head, long, s, this.#linkage(turns));
  }

  /** A stop on a rod: its seat under the upper eye, its pad on the body, whose length does not change. */
  #onRod(
    foot: PlanePoint,
    head: PlanePoint,
    longAtRide: number,
    s: number,
    rest: Pick<TravelPose, "outer" | "otherArm" | "wheel" | "carrierTurn">,
  ): TravelPose {
    const long = Math.hypot(head.x - foot.x, head.y - foot.y);
    const axis = { x: (head.x - foot.x) / long, y: (head.y - foot.y) / long };
    const body = bodyShare * longAtRide;
    const mount = Math.min(eyeToSeat, longAtRide - body - this.#seatToPad);
    const seat = along(head, axis, -mount);
    const pad = along(seat, axis, s - this.#seatToPad);
    return { ...rest, seat, pad, padAlong: across(axis), rod: { foot, head } };
  }

  #strut(s: number, turns: Standing): TravelPose {
    const lean = this.#angle("stopLean");
    const arm = this.#length("lowerArmLength");
    const jointToTop = this.#length("jointToTop");
    const offset = this.#length("tyreOffset");
    if (
      this.#atMeans.linkage !== "strutArm" ||
      arm === null ||
      jointToTop === null ||
      offset === null
    ) {
      const head = leaning(lean);
      const foot = along(origin, head, s - usualStrut);
      const rest = { outer: null, otherArm: null, wheel: null, carrierTurn: 0 };
      const pose = this.#onRod(foot, origin, usualStrut, s, rest);
      // The origin is the strut's own lower end at ride.
      const up = along(origin, head, usualStrut);
      return movedBy(pose, up);
    }
    const joint = this.#onArm(arm, this.#angle("lowerArmAngle"));
    const topLean = this.#angle("jointToTopLean", lean);
    const head = along(joint, leaning(topLean), jointToTop);
    const outer = turned(joint, turns.arm);
    const axis = leaning(lean + turns.carrier);
    const long = jointToTop * Math.cos(topLean - lean);
    const foot = along(head, axis, s - long);
    const wheel = this.#besideJoint(outer, turns.carrier, offset);
    return this.#onRod(foot, head, long, s, {
      outer,
      otherArm: null,
      wheel,
      carrierTurn: turns.carrier,
    });
  }

  #axle(z: number, s: number): TravelPose {
    const track = this.#length("track") ?? 0;
    const spacing = this.#length("stopSpacing") ?? 0;
    const axis = leaning(this.#angle("stopLean"));
    const seat = along({ x: spacing / 2, y: 0 }, axis, this.#seatToPad);
    return {
      outer: null,
      otherArm: null,
      wheel: { x: track / 2, y: z },
      carrierTurn: 0,
      seat,
      pad: along(seat, axis, s - this.#seatToPad),
      padAlong: across(axis),
      rod: null,
    };
  }

  /** The arm's outer joint, the other arm and the wheel, as far as they were measured. */
  #linkage(turns: Standing): Pick<TravelPose, "outer" | "otherArm" | "wheel" | "carrierTurn"> {
    const atRide = this.#outerAtRide();
    const outer = turned(atRide, turns.arm);
    const { linkage } = this.#atMeans;
    if (linkage === "carriesWheel") {
      return { outer, otherArm: null, wheel: outer, carrierTurn: 0 };
    }
    const long = this.#length("otherArmLength");
    const height = this.#length("jointHeight");
    const offset = this.#length("tyreOffset");
    if (linkage !== "fourBar" || long === null || height === null || offset === null) {
      return { outer, otherArm: null, wheel: null, carrierTurn: 0 };
    }
    const measuresUpper = this.#layout.armRole === "upper";
    const toUpper = { x: -(this.#length("jointInset") ?? 0), y: height };
    const sign = measuresUpper ? -1 : 1;
    const otherAtRide = { x: atRide.x + sign * toUpper.x, y: atRide.y + sign * toUpper.y };
    const line = this.#onArm(long, this.#angle("otherArmAngle"));
    const pivot = { x: otherAtRide.x - line.x, y: otherAtRide.y - line.y };
    const joint = turned(otherAtRide, turns.otherArm, pivot);
    const lower = measuresUpper ? joint : outer;
    return {
      outer,
      otherArm: { pivot, joint },
      wheel: this.#besideJoint(lower, turns.carrier, offset),
      carrierTurn: turns.carrier,
    };
  }

  /** The wheel's center, which stands still against the carrier: beside its lower joint. */
  #besideJoint(joint: PlanePoint, carrierTurn: number, offset: number): PlanePoint {
    const above = this.#length("wheelCentreAbove") ?? 0;
    const beside = { x: joint.x + offset, y: joint.y + above };
    return turned(beside, carrierTurn, joint);
  }
}

/** Of a damper's length at ride its body, at least; from its upper eye down to the seat at most, mm. */
const bodyShare = 0.3;
const eyeToSeat = 30;
/** A strut whose length was not measured, mm. */
const usualStrut = 480;

function movedBy(pose: TravelPose, by: PlanePoint): TravelPose {
  const moved = (point: PlanePoint): PlanePoint => ({ x: point.x + by.x, y: point.y + by.y });
  return {
    ...pose,
    seat: moved(pose.seat),
    pad: moved(pose.pad),
    rod: pose.rod && { foot: moved(pose.rod.foot), head: moved(pose.rod.head) },
  };
}
