// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const heightOfItsInnerEnd: string = "height of its inner end";
export const heightOfItsOuterEnd: string = "height of its outer end";
export const leanOfTheLineToTheTop: string = "lean of the line to the top";
export const zOfTheLastContact: string = "z of the last contact";
export const itsDirectionAtRide: string = "its direction at ride";
export const restWithoutPayload: string = "rest without payload";
export const heightAtContact: string = "height at contact";
export const heightAtRide: string = "height at ride";
export const directionOfQ: string = "direction of Q";
export const zAtTheWheel: string = "z at the wheel";
export const springAlone: string = "spring alone";
