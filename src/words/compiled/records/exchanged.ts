// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const somethingCameInThat: string = "Something came in that is no part of a check. It was left out.";
export const whatCameIn: string = "What came in";
export const checkCameInFrom: string = "A check came in from a newer version of Stopfit. Update Stopfit at this review desk to see it.";
export const check: string = "The check";
export const photoCameInThat: string = "A photo came in that is no picture. It was left out.";
export const somethingCameInThatIs: string = "Something came in that is no decision. It was left out.";
export const whatCameFromReview: string = "What came from the review desk";
