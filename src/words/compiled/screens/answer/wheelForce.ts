// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const pressedSlowlyLinearRide: string = "Pressed slowly, linear ride spring.";
export const forceAboveWhatWheel: string = "Force above what the wheel carries at ride.";
export const rideSpringsRateIs: string = "The ride spring's rate is not known: the stop alone is drawn.";
export const springAlone: string = "spring alone";
export const springAndStop: string = "spring and stop";
export const stopAlone: string = "stop alone";
export const energyStopTakes: string = "energy the stop takes";
export const forceAtWheel = (d: { suffix: string | number }): string => "force at the wheel, " + d.suffix;
export const wheelTravelUpFrom = (d: { suffix: string | number }): string => "wheel travel up from ride, " + d.suffix;
export const fullyCompressed: string = "fully compressed";
export const hardContact: string = "hard contact";
export const fullCompression: string = "full compression";
export const upToStopTakes = (d: { end: string | number; joules: string | number }): string => "Up to " + d.end + " the stop takes " + d.joules + ".";
export const upToSpringTakes = (d: { end: string | number; joules: string | number; joules2: string | number }): string => "Up to " + d.end + " the spring takes " + d.joules + " and the stop " + d.joules2 + ".";
export const contactAt = (d: { contactMm: string | number }): string => "contact at " + d.contactMm;
export const fullyCompressedAt = (d: { fullStopMm: string | number }): string => "fully compressed at " + d.fullStopMm;
export const noClearanceMeasured: string = "no clearance measured";
export const hardContactAt = (d: { hardLimitMm: string | number }): string => "hard contact at " + d.hardLimitMm;
export const stopPressesOnWheel: string = "The stop presses on the wheel from contact on";
export const forceAtWheelRises: string = "The force at the wheel rises with the spring alone to contact, then with spring and stop together";
export const toWhereTravelEnds = (d: { course: string | number; end: string | number; marks: string | number; energy: string | number }): string => "" + d.course + ", to " + d.end + " where the travel ends. Marks: " + d.marks + ". " + d.energy;
export const wheelTravel: string = "Wheel travel";
export const springAlone2: string = "Spring alone";
export const springAndStop2: string = "Spring and stop";
export const notKnown: string = "not known";
export const contact: string = "contact";
