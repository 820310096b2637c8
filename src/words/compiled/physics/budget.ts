// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
import { select } from "@messageformat/runtime";
export const onWheelTravelsFound = (d: { side: string | undefined }): string => "On the " + select(d.side, { left: "left", other: "right" }) + ", the wheel travels found by hand do not rise from the stop to the block. Check both, and the block's height.";
export const isSaidToBe = (d: { readingName: string | number }): string => "" + d.readingName + " is said to be on an arm, and this layout has none. Measure it at the wheel.";
export const whereStopStandsIs = (d: { side: string | undefined }): string => "Where the " + select(d.side, { left: "left", other: "right" }) + " stop stands is missing. Measure its gap, its height if it is pressed, or seat to pad if there is none.";
export const stopHasGapPressed = (d: { side: string | undefined }): string => "The " + select(d.side, { left: "left", other: "right" }) + " stop has a gap, a pressed height or a seat to pad at once. Keep the one that is true.";
export const mIWheelTravel: string = "m_i: wheel travel by hand over the computed one";
export const sAtWhichZ: string = "s at which z is z_asked, found by search; the lines above show it";
export const mustCloseByMore = (d: { readingName: string | number }): string => "" + d.readingName + " must close by more than nothing per wheel travel.";
export const isMoreThanThis = (d: { readingName: string | number; greatest: string | number }): string => "" + d.readingName + " is more than this suspension can move: it reaches " + d.greatest + " of wheel travel at most. Re-measure it.";
export const bothOrOne: string = "both or one";
export const isMoreThanThisSuspension = (d: { readingName: string | number; gapMm: string | number }): string => "" + d.readingName + ", " + d.gapMm + ", is more than this suspension can close. Re-measure it and the arm's readings.";
export const thisSuspensionCannotPress = (d: { usableCompressionMm: string | number; readingName: string | number; gapMm: string | number }): string => "This suspension cannot press the stop by its usable " + d.usableCompressionMm + " after " + d.readingName + " of " + d.gapMm + ". Re-measure the gap and the arm's readings.";
export const hardContactLiesWhere: string = "The hard contact lies where this suspension cannot reach. Re-measure it.";
export const zMThere = (d: { zOfTheLastContact: string | number }): string => "z = " + d.zOfTheLastContact + " + m·(ẑ − ẑ there)";
export const zHLeastOf: string = "z_h = least of them";
export const z = (d: { heightAtRide: string | number; heightAtContact: string | number }): string => "z = " + d.heightAtRide + " − " + d.heightAtContact;
export const reserveZHZ: string = "reserve = z_h − z_u";
export const oneWheelUpZ = (d: { zAtTheWheel: string | number }): string => "one wheel up: " + d.zAtTheWheel + " − z_u·2·T/(T + S)";
export const reserveLesser: string = "reserve = the lesser";
export const oneWheelUpR = (d: { zAtTheWheel: string | number }): string => "one wheel up: (" + d.zAtTheWheel + " − r)·(T + S)/(2·T)";
export const sLesser: string = "s = the lesser";
export const freeShareZC: string = "free share = z_c / min(z_u, z_h)";
