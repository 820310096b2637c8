import type { Standing } from "../../motion/layoutMotion.ts";
import { armEnd, turnedBy } from "../plane.ts";
import { noLinkage, type Posed, type PosedLinkage, wheelByJoint } from "../pose.ts";
import type { ArmLinkage, ArmReading } from "./armLinkages.ts";

/** The arm's outer joint, the other arm and the wheel, as far as they were measured. */
export function armPose(posed: Posed<ArmReading, ArmLinkage>, turns: Standing): PosedLinkage {
  const atRide = armEnd(posed.length("pivotToOuter") ?? 0, posed.angle("armAngle"));
  const outer = turnedBy(atRide, turns.arm);
  const { linkage } = posed;
  if (linkage === "carriesWheel") return { ...noLinkage, outer, wheel: outer };
  const long = posed.length("otherArmLength");
  const height = posed.length("jointHeight");
  const offset = posed.length("tyreOffset");
  if (linkage !== "fourBar" || long === null || height === null || offset === null) {
    return { ...noLinkage, outer };
  }
  const measuresUpper = posed.said.armRole === "upper";
  const toUpper = { x: -(posed.length("jointInset") ?? 0), y: height };
  const sign = measuresUpper ? -1 : 1;
  const otherAtRide = { x: atRide.x + sign * toUpper.x, y: atRide.y + sign * toUpper.y };
  const line = armEnd(long, posed.angle("otherArmAngle"));
  const pivot = { x: otherAtRide.x - line.x, y: otherAtRide.y - line.y };
  const joint = turnedBy(otherAtRide, turns.otherArm, pivot);
  const lower = measuresUpper ? joint : outer;
  const above = posed.length("wheelCentreAbove") ?? 0;
  return {
    outer,
    otherArm: { pivot, joint },
    wheel: wheelByJoint(lower, turns.carrier, offset, above),
    carrierTurn: turns.carrier,
  };
}
