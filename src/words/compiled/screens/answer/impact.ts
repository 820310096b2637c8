// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const wheelTravel = (d: { suffix: string | number }): string => "wheel travel, " + d.suffix;
export const fullyCompressed: string = "fully compressed";
export const hardContact: string = "hard contact";
export const forceOfStop = (d: { suffix: string | number }): string => "force of the stop, " + d.suffix;
export const accelerationOfBodyUp: string = "acceleration of the body, up, g";
export const mostAllowed: string = "most allowed";
export const time = (d: { suffix: string | number }): string => "time, " + d.suffix;
export const goesPastFullCompression: string = "goes past full compression";
export const somethingHardTouches: string = "something hard touches";
export const moreThanGAllowed = (d: { accelerationCapG: string | number }): string => "more than the " + d.accelerationCapG + " g allowed";
export const withinWhatIsAllowed: string = "within what is allowed";
export const wheelUpStopForce = (d: { name: string | number; travel: string | number; force: string | number; acceleration: string | number; ends: string | number }): string => "" + d.name + ": wheel up " + d.travel + ", stop force " + d.force + ", body up to " + d.acceleration + "; " + d.ends + ".";
export const greatestWheelTravel: string = "Greatest wheel travel";
export const greatestCompression: string = "Greatest compression";
export const greatestStopForce: string = "Greatest stop force";
export const greatestAcceleration: string = "Greatest acceleration";
export const energyIntoStop: string = "Energy into the stop";
export const energyBackOut: string = "Energy back out";
export const speedLeavingStop: string = "Speed leaving the stop";
export const figure: string = "Figure";
export const pastFullCompression: string = "Past full compression";
export const somethingHardTouches2: string = "Something hard touches";
export const yes: string = "yes";
export const no: string = "no";
export const contact: string = "contact";
