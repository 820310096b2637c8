// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
import { select } from "@messageformat/runtime";
export const landingFrom = (d: { eventLength: string | number }): string => "Landing from " + d.eventLength;
export const speedBump = (d: { kind: string | undefined; eventLength: string | number; eventLength2: string | number; speed: string | number }): string => select(d.kind, { hump: "Speed bump", other: "Obstacle" }) + " " + d.eventLength + " high, " + d.eventLength2 + " long, at " + d.speed;
export const itFits: string = "It fits";
export const fitsWithWarning: string = "Fits, with a warning";
export const itDoesntFit: string = "It doesn't fit";
export const notSureYet: string = "Not sure yet";
export const warning: string = "warning";
export const fails: string = "fails";
export const notSure: string = "not sure";
export const fullyCompressedBeforeHard: string = "Fully compressed before hard contact";
export const stopDoesntTouchToo: string = "Stop doesn't touch too soon";
export const stiffness: string = "Stiffness";
export const leftAndRightMatch: string = "Left and right match";
export const readingsPlausible: string = "Readings plausible";
export const left: string = "Left";
export const right: string = "Right";
export const ok: string = "OK";
export const itFitsWithin: string = "it fits";
export const fitsWithWarningWithin: string = "fits, with a warning";
export const itDoesntFitWithin: string = "it doesn't fit";
export const notSureYetWithin: string = "not sure yet";
export const fullyCompressedBeforeHardWithin: string = "fully compressed before hard contact";
export const stopDoesntTouchTooWithin: string = "stop doesn't touch too soon";
export const stiffnessWithin: string = "stiffness";
export const leftAndRightMatchWithin: string = "left and right match";
export const readingsPlausibleWithin: string = "readings plausible";
