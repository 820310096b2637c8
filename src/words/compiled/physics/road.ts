// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const uOfE: string = "u of E";
export const payloadIsNotNumber: string = "The payload is not a number. Enter the load this corner carries in use.";
export const springsRateAtWheel: string = "The spring's rate at the wheel must be above 0. Check the wheel rate.";
export const underThisPayloadWheel = (d: { springAlone: string | number }): string => "Under this payload the wheel would move " + d.springAlone + " up, farther than this layout can move. Check the payload, the wheel rate and the arm's readings.";
export const massOnThisWheel: string = "mass on this wheel";
export const dampingAtWheel: string = "damping at the wheel";
export const tiresRate: string = "tire's rate";
export const speedOnRoad: string = "speed on the road";
export const numberOfContactsAllowed: string = "number of contacts allowed per km";
export const mustBeAbove0 = (d: { words: string | number }): string => "The " + d.words + " must be above 0. Check that value.";
