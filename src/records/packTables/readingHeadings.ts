import type { GeometryReadingName, RideQuantity } from "../../physics/fitment.ts";
import type { platformReadings } from "../check/recordFormat.ts";

/** What a column of the vehicles' table may hold besides words. */
export type ReadingColumn =
  | GeometryReadingName
  | (typeof platformReadings)[number]
  | `ride.${RideQuantity}`;

/** The heading of each, as the format has it, whatever language a reading is named in elsewhere. */
export const readingHeadings: { readonly [Name in ReadingColumn]: string } = {
  pivotToStop: "distance from pivot to stop",
  pivotToOuter: "distance from pivot to outer joint",
  boltSpacing: "distance between the pivot bolts",
  frontBoltToStop: "distance from front bolt to stop",
  rearBoltToStop: "distance from rear bolt to stop",
  frontBoltToOuter: "distance from front bolt to outer joint",
  rearBoltToOuter: "distance from rear bolt to outer joint",
  armAngle: "arm angle",
  stopLineAngle: "angle of the line from pivot to stop",
  stopLean: "lean of the stop",
  pivotHeight: "height of the pivot line",
  outerHeight: "height of the outer joint",
  stopHeight: "height of the stop's contact patch",
  otherPivotHeight: "height of the other arm's pivot line",
  otherOuterHeight: "height of the other arm's outer joint",
  otherArmAngle: "angle of the other arm",
  otherArmLength: "length of the other arm",
  jointHeight: "height of the upper joint above the lower",
  jointInset: "upper joint's distance inboard of the lower",
  tyreOffset: "distance from the lower joint out to the middle of the tire",
  wheelCentreAbove: "height of the wheel's center above the lower joint",
  pivotToMount: "distance from pivot to shock mount",
  damperLength: "shock length",
  frontBoltToMount: "distance from front bolt to shock mount",
  rearBoltToMount: "distance from rear bolt to shock mount",
  mountLineAngle: "angle of the line from pivot to shock mount",
  mountHeight: "height of the shock's lower mount",
  lowerArmLength: "length of the lower arm",
  lowerArmAngle: "angle of the lower arm",
  jointToTop: "distance from the lower joint to the strut's top mount",
  jointToTopLean: "lean of the line from the lower joint to the strut's top mount",
  track: "track",
  stopSpacing: "spacing of the stops",
  rideHeight: "ride height",
  gap: "gap",
  cornerMassKg: "corner weight",
  "ride.unsprungMassKg": "unsprung mass",
  "ride.wheelRateNPerMm": "wheel rate",
  "ride.tyreRateNPerMm": "tire rate",
  "ride.damperBumpNsPerMm": "damping in bump",
  "ride.damperReboundNsPerMm": "damping in rebound",
  "ride.payloadPerCornerKg": "payload",
};
