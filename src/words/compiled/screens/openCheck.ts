// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const stopfit: string = "Stopfit";
export const allChecks: string = "All checks";
export const thisCheckIsNot: string = "This check is not here";
export const itWasDeletedOr: string = "It was deleted, or it was never on this phone. A deleted check can be brought back from the list.";
