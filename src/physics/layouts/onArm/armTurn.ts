import type { Standing } from "../../motion/layoutMotion.ts";
import type { Turned } from "../turned.ts";
import type { ArmLinkage, ArmReading } from "./armLinkages.ts";

/** Has the arm, and of a measured linkage the other arm and the wheel carrier, turn to `standing`. */
export function turnArm(turned: Turned<ArmReading>, standing: Standing, linkage: ArmLinkage): void {
  turned.angle("armAngle", standing.arm);
  if (linkage === "fourBar") {
    turned.angle("otherArmAngle", standing.otherArm);
    turned.aroundJoint("jointInset", "jointHeight", standing.carrier, -1);
    turned.aroundJoint("tyreOffset", "wheelCentreAbove", standing.carrier, 1);
  }
  if (linkage === "instantCentre") turned.proportion(wheelPerOuter(turned), "otherArmAngle");
}

/** κ of an arm whose other arm's length was not measured; it is one number at every height. */
function wheelPerOuter(turned: Turned<ArmReading>): number {
  const lower = Math.tan(turned.angleBefore("armAngle"));
  const upper = Math.tan(turned.angleBefore("otherArmAngle"));
  const between = turned.lengthBefore("jointHeight") - turned.lengthBefore("jointInset") * upper;
  return 1 + (turned.lengthBefore("tyreOffset") * (lower - upper)) / between;
}
