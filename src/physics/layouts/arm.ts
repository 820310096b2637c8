import { FlatContact } from "../motion/contact/flatContact.ts";
import { RoundContact } from "../motion/contact/roundContact.ts";
import type { LayoutDefinition } from "./layoutDefinition.ts";
import { type ArmLinkage, armLinkages, armParts, otherArmReadings } from "./onArm/armLinkages.ts";
import { armMotion } from "./onArm/armMotion.ts";
import { armPose } from "./onArm/armPose.ts";
import { turnArm } from "./onArm/armTurn.ts";
import { across, along, armEnd, leaning, turnedBy } from "./plane.ts";
import { measuredArm } from "./readings/armReadings.ts";
import type { ReadingOf } from "./readings/sharedReadings.ts";

const takes = [...armParts, "stopOnArm"] as const;

/** The stop acts on an arm: it hangs from the frame, or stands on the arm itself. */
export const arm = {
  tableWord: "arm",
  takes,
  onArm: true,
  onRod: false,
  saysStopOn: true,
  joinsWheels: false,
  doubtful: "pivotToStop",
  closer: otherArmReadings,
  linkages: armLinkages,

  motion(said, places) {
    const length = places.neededLength("pivotToStop");
    const measured = measuredArm(places);
    const line = places.angle("stopLineAngle");
    const lean = places.angle("stopLean");
    const contact =
      said.stopOn === undefined
        ? new RoundContact(length, line, lean)
        : new FlatContact(length, line, lean, said.stopOn === "arm" ? places.standOff() : null);
    return armMotion(said, places, measured, contact);
  },

  turn(turned, standing, { said, linkage }) {
    if (said.stopOn === "arm") turned.lean("stopLean", standing.arm);
    turned.measuredAngle("stopLineAngle", standing.arm);
    turnArm(turned, standing, linkage);
  },

  pose(posed, { s, turns }) {
    const { said, seatToPad } = posed;
    const axis = leaning(posed.angle("stopLean"));
    const line = posed.angle("stopLineAngle", posed.angle("armAngle"));
    const patch = armEnd(posed.length("pivotToStop") ?? 0, line);
    const left = seatToPad - s;
    const linkage = armPose(posed, turns);
    if (said.stopOn === "arm") {
      const padAtRide = along(patch, axis, posed.standOff);
      const seat = turnedBy(along(padAtRide, axis, -seatToPad), turns.arm);
      const pad = along(seat, turnedBy(axis, turns.arm), left);
      return { ...linkage, seat, pad, padAlong: across(axis), rod: null };
    }
    const seat = along(patch, axis, seatToPad);
    const padAlong = turnedBy(across(axis), said.stopOn === "frame" ? turns.arm : 0);
    return { ...linkage, seat, pad: along(seat, axis, -left), padAlong, rod: null };
  },
} as const satisfies LayoutDefinition<ReadingOf<(typeof takes)[number]>, ArmLinkage>;
