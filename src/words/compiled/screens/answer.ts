// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const workingOutAnswer: string = "Working out the answer …";
export const notSureYet: string = "Not sure yet";
export const toThatReading: string = "To that reading";
export const details: string = "Details";
export const travelLadder: string = "Travel ladder";
export const reMeasure: string = "Re-measure";
export const anotherStop: string = "Another stop";
export const forceAndImpact: string = "Force and impact";
export const leftAndRight: string = "Left and right";
export const checks: string = "The checks";
export const whatToReMeasure: string = "What to re-measure";
export const fullTravelCheckBy: string = "Full-travel check by hand";
export const compareAnotherStop: string = "Compare another stop";
export const whichStopOfLibrary: string = "Which stop of the library fits?";
export const orTryEachStop = (d: { stopTitle: string | number }): string => "Or try each stop of the library here, and set one against " + d.stopTitle + ".";
export const tryLibrarysStopsHere: string = "Try the library's stops here, one by one";
export const forceImpactAndStiffness: string = "Force, impact and stiffness";
export const allChecks: string = "All checks";
export const newCheck: string = "New check";
export const almostCertain: string = "almost certain";
export const veryLikely: string = "very likely";
export const couldGoEitherWay: string = "could go either way";
export const veryUnlikely: string = "very unlikely";
export const almostRuledOut: string = "almost ruled out";
export const over999: string = "over 99.9 %";
export const under01: string = "under 0.1 %";
