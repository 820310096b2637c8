// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
import { select } from "@messageformat/runtime";
export const n1DsDz: string = "1 / ds/dz";
export const thisSuspensionHasNo: string = "This suspension has no arm to measure a clearance on. Measure it at the wheel.";
export const thatPointOfArm = (d: { clearance: string | number }): string => "That point of the arm cannot rise by " + d.clearance + ". Check its distance from the pivot line and the clearance.";
export const suspensionCannotReachWheel = (d: { z: string | number }): string => "The suspension cannot reach a wheel travel of " + d.z + ". Check the readings.";
export const wheelTravelIsNot: string = "A wheel travel is not a usable number. Check the readings.";
export const suspensionCannotCloseStop = (d: { s: string | number }): string => "The suspension cannot close the stop by " + d.s + ". Check the readings.";
export const closingOfStopIs: string = "A closing of the stop is not a usable number. Check the readings.";
export const rideHeightIsAbove = (d: { raisedMm: string | number; hasRaisedMm: boolean }): string => "The ride height is " + d.raisedMm + " " + select(d.hasRaisedMm, { true: "above", other: "below" }) + " the usual one, which this suspension cannot reach by its springs. Re-measure the ride height, from the wheel's center to the fender.";
export const wheelsTravelPerTravel: string = "The wheel's travel per travel of the outer joint must be a number above zero, its ± zero or more.";
export const withTheseAnglesStops: string = "With these angles the stop's axis points along the arm, so it has no lever. Re-measure the lean and the angles.";
export const armStandsUprightSo: string = "The arm stands upright, so it cannot move the wheel. Re-measure the arm angle.";
export const lengthMustBeAbove: string = "A length must be above zero. Re-measure it.";
export const distancesFromTwoBolts: string = "The distances from the two bolts do not meet in one point. Re-measure all three, straight from the bolt centers.";
export const heightsDifferByMore: string = "The heights differ by more than the arm is long. Re-measure them, from the same level ground.";
export const withTheseReadingsPivot: string = "With these readings the pivot and the shock's two mounts do not form a triangle. Re-measure the shock length and the lean.";
export const withTheseReadingsTwo: string = "With these readings the two arms nearly meet at their joints. Re-measure the joint height and the inset.";
export const withTheseReadingsOther: string = "With these readings the other arm points along the wheel carrier. Re-measure the angles of both arms.";
export const withTheseReadingsWheel: string = "With these readings the wheel does not rise with its arm. Re-measure the other arm and the tire's offset.";
export const stopLiesFlatSo: string = "The stop lies flat, so the wheel cannot close it. Re-measure its lean.";
export const r1DsDz: string = "R = 1/(ds/dz) at that wheel travel";
