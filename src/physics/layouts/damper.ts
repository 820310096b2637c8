import { TriangleContact } from "../motion/contact/triangleContact.ts";
import type { LayoutDefinition } from "./layoutDefinition.ts";
import { type ArmLinkage, armLinkages, armParts, otherArmReadings } from "./onArm/armLinkages.ts";
import { armMotion } from "./onArm/armMotion.ts";
import { armPose } from "./onArm/armPose.ts";
import { turnArm } from "./onArm/armTurn.ts";
import { along, armEnd, leaning, turnedBy } from "./plane.ts";
import { poseOnRod } from "./pose.ts";
import { measuredArm } from "./readings/armReadings.ts";
import type { ReadingOf } from "./readings/sharedReadings.ts";

const takes = [...armParts, "rodOnArm"] as const;

/** The stop on the rod of a damper whose lower mount is on an arm. */
export const damper = {
  tableWord: "shock",
  takes,
  onArm: true,
  onRod: true,
  saysStopOn: false,
  joinsWheels: false,
  doubtful: "pivotToMount",
  closer: otherArmReadings,
  linkages: armLinkages,

  motion(said, places) {
    const length = places.neededLength("pivotToMount");
    const measured = measuredArm(places);
    const line = places.angle("mountLineAngle");
    const lean = places.angle("stopLean");
    const long = places.neededLength("damperLength");
    return armMotion(said, places, measured, new TriangleContact(length, line, long, lean, null));
  },

  turn(turned, standing, { linkage }) {
    const rod = {
      arm: "pivotToMount",
      line: "mountLineAngle",
      length: "damperLength",
      lean: "stopLean",
    } as const;
    turned.rod(rod, standing.arm);
    turned.measuredAngle("mountLineAngle", standing.arm);
    turnArm(turned, standing, linkage);
  },

  pose(posed, { s, turns }) {
    const line = posed.angle("mountLineAngle", posed.angle("armAngle"));
    const mount = armEnd(posed.length("pivotToMount") ?? 0, line);
    const long = posed.length("damperLength") ?? 0;
    const head = along(mount, leaning(posed.angle("stopLean")), long);
    const foot = turnedBy(mount, turns.arm);
    return poseOnRod({ foot, head }, long, posed.seatToPad, s, armPose(posed, turns));
  },
} as const satisfies LayoutDefinition<ReadingOf<(typeof takes)[number]>, ArmLinkage>;
