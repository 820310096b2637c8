import type { StopContact } from "../../motion/contact/stopContact.ts";
import { DrawnFactor } from "../../motion/drawnFactor.ts";
import type { LinkageArm } from "../../motion/path/fourBarPath.ts";
import { LowerDrivenPath } from "../../motion/path/lowerDrivenPath.ts";
import { SwingPath } from "../../motion/path/swingPath.ts";
import { UpperDrivenPath } from "../../motion/path/upperDrivenPath.ts";
import type { WheelPath } from "../../motion/path/wheelPath.ts";
import { TurningMotion } from "../../motion/turningMotion.ts";
import { InstantCentreRatio, type WheelRatio, wheelOnArm } from "../../motion/wheelRatio.ts";
import type { LayoutSaid } from "../layoutSaid.ts";
import type { Places } from "../places.ts";
import type { ArmLinkage, ArmReading } from "./armLinkages.ts";
import { usualRatio } from "./usualRatio.ts";

type ArmPlaces = Places<ArmReading, ArmLinkage>;

/**
 * Stop and wheel moved by an arm. Of the linkages that its readings allow the first holds: carriesWheel,
 * fourBar, instantCentre, typed, prior.
 */
export function armMotion(
  said: LayoutSaid,
  places: ArmPlaces,
  arm: LinkageArm,
  contact: StopContact,
) {
  const { linkage, path, ratio } = wheelPath(said, places, arm);
  const before = [...places.quantities.map(({ quantity }) => quantity), ...ratio];
  const scale = places.modelScale(linkage);
  return { linkage, motion: new TurningMotion(before, contact, path, arm.line, scale) };
}

interface ChosenPath {
  readonly linkage: ArmLinkage;
  readonly path: WheelPath;
  /** κ, to be set before the path takes it. */
  readonly ratio: readonly WheelRatio[];
}

function wheelPath(said: LayoutSaid, places: ArmPlaces, arm: LinkageArm): ChosenPath {
  const { armRole, wheelPerOuter } = said;
  const swing = (linkage: ArmLinkage, ratio: WheelRatio): ChosenPath => ({
    linkage,
    path: new SwingPath(arm.length, arm.line, ratio),
    ratio: [ratio],
  });
  if (armRole === "carriesWheel") return swing("carriesWheel", wheelOnArm);
  const joints = ["otherArmAngle", "jointHeight", "tyreOffset"] as const;
  if ((armRole === "lower" || armRole === "upper") && joints.every((name) => places.has(name))) {
    if (places.has("otherArmLength")) return fourBar(armRole, places, arm);
    const line = places.optionalAngle("otherArmAngle");
    if (armRole === "lower" && line !== null) {
      return swing("instantCentre", new InstantCentreRatio(jointPlaces(places), arm.line, line));
    }
  }
  const [mean, halfWidth] =
    wheelPerOuter === undefined
      ? usualRatio[armRole ?? "notSaid"]
      : [wheelPerOuter, said.wheelPerOuterTol ?? 0];
  const place = places.wheelPerOuter(mean, halfWidth);
  return swing(wheelPerOuter === undefined ? "prior" : "typed", new DrawnFactor(place));
}

function fourBar(role: "lower" | "upper", places: ArmPlaces, arm: LinkageArm): ChosenPath {
  const other = {
    length: places.neededLength("otherArmLength"),
    line: places.angle("otherArmAngle"),
  };
  const joints = jointPlaces(places);
  const above = places.offset("wheelCentreAbove");
  const path =
    role === "lower"
      ? new LowerDrivenPath(arm, other, joints, above)
      : new UpperDrivenPath(other, arm, joints, above);
  return { linkage: "fourBar", path, ratio: [] };
}

function jointPlaces(places: ArmPlaces) {
  return {
    height: places.neededLength("jointHeight"),
    inset: places.offset("jointInset"),
    tyreOffset: places.neededLength("tyreOffset"),
  };
}
