// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const veryGood: string = "A, very good";
export const bGood: string = "B, good";
export const cAverage: string = "C, average";
export const dPoor: string = "D, poor";
export const eVeryPoor: string = "E, very poor";
export const roadAsMeasuredLoaded = (d: { roadClass: string | number; orUnknown: string | number; orUnknown2: string | number }): string => "Road " + d.roadClass + ": as measured " + d.orUnknown + ", loaded " + d.orUnknown2 + ".";
export const onRoadOfThis = (d: { roadClass: string | number; speed: string | number; orUnknown: string | number; orUnknown2: string | number; orUnknown3: string | number }): string => "On the road of this use (" + d.roadClass + ", " + d.speed + "): " + d.orUnknown + " as measured, " + d.orUnknown2 + " loaded. Allowed: " + d.orUnknown3 + " (common practice).";
export const roadClass: string = "Road class";
export const asMeasured: string = "As measured";
export const loaded: string = "Loaded";
export const notKnown: string = "not known";
