// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
import { select } from "@messageformat/runtime";
export const shiftScatter = (d: { id: string | number }): string => "" + d.id + " shift scatter";
export const reserve = (d: { where: string | number }): string => "the " + d.where + "reserve";
export const freeTravelAgainstWhat = (d: { where: string | number }): string => "the " + d.where + "free travel against what is needed";
export const moreRepeats = (d: { more: string | number }): string => ", " + d.more + " more repeats";
export const knownTwiceAsExactly: string = ", known twice as exactly";
export const againWith = (d: { name: string | number; toolQuantity: string | number }): string => ", again with " + d.name + " (±" + d.toolQuantity + ")";
export const takesMarginOfError = (d: { lineName: string | number; way: string | number; about: string | number; halfWidthNowMm: string | number; halfWidthThenMm: string | number }): string => "" + d.lineName + d.way + ": takes the margin of error of " + d.about + " from ±" + d.halfWidthNowMm + " to ±" + d.halfWidthThenMm + ".";
export const otherArmMeasuredAs: string = "The other arm measured as well";
export const wholeTravelFoundBy: string = "The whole travel found by hand with a block, by a qualified person";
export const blockAsHighAs: string = "A block as high as the stop when fully pressed, in the check by hand";
export const usableCompressionKnownTwice: string = "The usable compression known twice as exactly, from the stop's maker or a test";
export const takesMarginOfErrorOf = (d: { way: string | number; about: string | number; halfWidthNowMm: string | number; halfWidthThenMm: string | number }): string => "" + d.way + ": takes the margin of error of " + d.about + " from ±" + d.halfWidthNowMm + " to ±" + d.halfWidthThenMm + ".";
export const whatCouldHitFirst = (d: { side: string | undefined }): string => "What could hit first on the " + select(d.side, { left: "left", other: "right" }) + ": never measured. Without it the reserve is unknown.";
export const notKnownWithoutIt = (d: { lineName: string | number }): string => "" + d.lineName + ": not known. Without it how often and how hard the stop touches is unknown.";
export const evenWithEveryReading: string = "Even with every reading re-measured, it will most likely stay undecided: ";
export const reMeasuringWithTools: string = "Re-measuring with the tools at hand would not settle it: ";
export const spacerOfOr = (d: { sure: string | number }): string => "a spacer of " + d.sure + ", or ";
export const reserveIsTooClose = (d: { start: string | number; side: string | undefined; canGrow: string | number }): string => "" + d.start + "the " + select(d.side, { left: "left", other: "right" }) + " reserve is too close to the limit. What would settle it: " + d.canGrow + "having a qualified person go through the whole travel by hand.";
export const freeTravelOnIs = (d: { side: string | undefined }): string => "the free travel on the " + select(d.side, { left: "left", other: "right" }) + " is too close to what the use needs. What would settle it: measured damping and wheel rate, a shorter stop or less payload.";
