// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const spacingOfStops: string = "spacing of the stops";
export const axleRisesLevelBoth: string = "The axle rises level, both wheels together; the stop closes along its axis.";
export const lengthOfLowerArm: string = "length of the lower arm";
export const angleOfLowerArm: string = "angle of the lower arm";
export const distanceFromLowerJoint: string = "distance from the lower joint to the strut's top mount";
export const leanOfLineFrom: string = "lean of the line from the lower joint to the strut's top mount";
export const stopClosesAlongIts: string = "The stop closes along its own leaning axis as the wheel rises.";
export const measureArmUnderStrut: string = "measure the arm under the strut as well";
export const triangleOfArmsPivot: string = "Triangle of the arm's pivot, the lower joint and the strut's top mount; R = dz/ds.";
