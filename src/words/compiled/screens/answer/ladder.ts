// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
import { select } from "@messageformat/runtime";
export const left: string = "Left";
export const right: string = "Right";
export const wheelTravelUpFrom = (d: { side: string | number; label: string | number }): string => "" + d.side + ": wheel travel up from ride" + d.label;
export const loadSinksVehicleOn: string = "The load sinks the vehicle on a linear spring; the bands are those of the readings.";
export const asMeasured: string = "as measured";
export const to: string = " to ";
export const mark: string = "Mark";
export const asMeasured2: string = "As measured";
export const n95Range: string = "95 % range";
export const loaded: string = "Loaded";
export const notKnown: string = "not known";
export const fullyCompressed: string = "fully compressed";
export const to2 = (d: { bareLength: string | number; high: string | number }): string => "" + d.bareLength + " to " + d.high;
export const after = (d: { words: string | number; travelMm: string | number; band: string | number }): string => "" + d.words + " after " + d.travelMm + d.band;
export const loadedNotKnown: string = "Loaded: not known.";
export const loadedSameNoPayload: string = "Loaded: the same, no payload entered.";
export const loadedStandingLower = (d: { sagMm: string | number; sagMm2: string | number }): string => "Loaded, standing " + d.sagMm + " lower: " + d.sagMm2 + ".";
export const left2 = (d: { side: string | undefined; told: string | number; loaded: string | number }): string => select(d.side, { left: "Left", other: "Right" }) + ", wheel travel up from ride: " + d.told + ". " + d.loaded;
export const contact: string = "contact";
export const rest: string = "rest";
export const loaded2: string = "loaded";
