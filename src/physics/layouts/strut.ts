import * as messages from "../../words/compiled/physics/layouts.ts";
import { TriangleContact } from "../motion/contact/triangleContact.ts";
import { StrutPath } from "../motion/path/strutPath.ts";
import { StraightMotion } from "../motion/straightMotion.ts";
import { TurningMotion } from "../motion/turningMotion.ts";
import type { LayoutDefinition } from "./layoutDefinition.ts";
import { along, armEnd, leaning, origin, type PlanePoint, turnedBy } from "./plane.ts";
import { noLinkage, type Posed, poseOnRod, type TravelPose, wheelByJoint } from "./pose.ts";
import { type GeometryDefinitions, usual } from "./readings/geometryDefinition.ts";
import type { ReadingOf } from "./readings/sharedReadings.ts";

/** The arm below a strut, in front view. The arm is square to its pivot line, its angle as of any arm. */
const readings = {
  lowerArmLength: {
    sort: "length",
    name: messages.lengthOfLowerArm,
    believable: [120, 1000],
    typical: 330,
    usualTolerance: usual.tape,
    of: "armUnderStrut",
    use: "optional",
    noDefault: true,
  },
  lowerArmAngle: {
    sort: "angle",
    name: messages.angleOfLowerArm,
    believable: [-35, 35],
    typical: 6,
    usualTolerance: usual.angle,
    of: "armUnderStrut",
    use: "optional",
    noDefault: true,
  },
  jointToTop: {
    sort: "length",
    name: messages.distanceFromLowerJoint,
    believable: [300, 1200],
    typical: 560,
    usualTolerance: usual.longTape,
    of: "armUnderStrut",
    use: "optional",
    noDefault: true,
  },
  jointToTopLean: {
    sort: "angle",
    name: messages.leanOfLineFrom,
    believable: [-45, 60],
    typical: 12,
    usualTolerance: usual.lean,
    of: "armUnderStrut",
    use: "optional",
    standIn: "stopLean",
  },
} as const satisfies GeometryDefinitions;

type StrutReading = keyof typeof readings | ReadingOf<"stop" | "wheelByJoint">;
type StrutLinkage = keyof typeof linkages;

/** What a planar model itself may be off: found on published geometries solved in three dimensions; provisional. */
const linkages = {
  strutArm: {
    doubt: 0.02,
    source: messages.triangleOfArmsPivot,
  },
  straight: {
    doubt: 0.04,
    source: messages.stopClosesAlongIts,
  },
} as const;

/** The stop on a strut's rod: by the arm below it where that was measured, else by its lean alone. */
export const strut = {
  tableWord: "strut",
  readings,
  takes: ["stop", "armUnderStrut", "wheelByJoint"],
  onArm: false,
  onRod: true,
  saysStopOn: false,
  joinsWheels: false,
  doubtful: "stopLean",
  closer: {
    parts: ["armUnderStrut", "wheelByJoint"],
    first: "lowerArmLength",
    ask: messages.measureArmUnderStrut,
    from: "straight",
    to: "strutArm",
    ofTwoArms: false,
  },
  linkages,

  motion(_said, places) {
    const lean = places.angle("stopLean");
    const armLength = places.optionalLength("lowerArmLength");
    const armLine = places.optionalAngle("lowerArmAngle");
    const jointToTop = places.optionalLength("jointToTop");
    const tyreOffset = places.optionalLength("tyreOffset");
    if (armLength === null || armLine === null || jointToTop === null || tyreOffset === null) {
      const scale = places.modelScale("straight");
      return { linkage: "straight", motion: new StraightMotion(lean, null, scale) };
    }
    const topLean = places.angle("jointToTopLean");
    const contact = new TriangleContact(armLength, armLine, jointToTop, topLean, lean);
    const path = new StrutPath({
      armLength,
      armLine,
      jointToTop,
      jointToTopLean: topLean,
      axisLean: lean,
      tyreOffset,
      wheelAbove: places.offset("wheelCentreAbove"),
    });
    const before = places.quantities.map(({ quantity }) => quantity);
    const scale = places.modelScale("strutArm");
    return {
      linkage: "strutArm",
      motion: new TurningMotion(before, contact, path, armLine, scale),
    };
  },

  turn(turned, standing) {
    const rod = {
      arm: "lowerArmLength",
      line: "lowerArmAngle",
      length: "jointToTop",
      lean: "jointToTopLean",
    } as const;
    turned.rod(rod, standing.arm);
    turned.angle("lowerArmAngle", standing.arm);
    turned.lean("stopLean", standing.carrier);
    turned.aroundJoint("tyreOffset", "wheelCentreAbove", standing.carrier, 1);
  },

  pose(posed, { s, turns }) {
    const lean = posed.angle("stopLean");
    const arm = posed.length("lowerArmLength");
    const jointToTop = posed.length("jointToTop");
    const offset = posed.length("tyreOffset");
    if (posed.linkage !== "strutArm" || arm === null || jointToTop === null || offset === null) {
      return poseAlone(posed, leaning(lean), s);
    }
    const joint = armEnd(arm, posed.angle("lowerArmAngle"));
    const topLean = posed.angle("jointToTopLean", lean);
    const head = along(joint, leaning(topLean), jointToTop);
    const outer = turnedBy(joint, turns.arm);
    const axis = leaning(lean + turns.carrier);
    const long = jointToTop * Math.cos(topLean - lean);
    const foot = along(head, axis, s - long);
    const above = posed.length("wheelCentreAbove") ?? 0;
    const wheel = wheelByJoint(outer, turns.carrier, offset, above);
    const linkage = { outer, otherArm: null, wheel, carrierTurn: turns.carrier };
    return poseOnRod({ foot, head }, long, posed.seatToPad, s, linkage);
  },
} as const satisfies LayoutDefinition<StrutReading, StrutLinkage> & {
  readonly readings: GeometryDefinitions;
};

/** A strut whose length was not measured, mm. */
const usualStrut = 480;

/** A strut by its lean alone; the origin is its own lower end at ride. */
function poseAlone(
  { seatToPad }: Posed<StrutReading, StrutLinkage>,
  head: PlanePoint,
  s: number,
): TravelPose {
  const foot = along(origin, head, s - usualStrut);
  const pose = poseOnRod({ foot, head: origin }, usualStrut, seatToPad, s, noLinkage);
  const by = along(origin, head, usualStrut);
  const moved = (point: PlanePoint): PlanePoint => ({ x: point.x + by.x, y: point.y + by.y });
  return {
    ...pose,
    seat: moved(pose.seat),
    pad: moved(pose.pad),
    rod: pose.rod && { foot: moved(pose.rod.foot), head: moved(pose.rod.head) },
  };
}
