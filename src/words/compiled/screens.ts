// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const stopfit: string = "Stopfit";
export const allChecks: string = "All checks";
export const thereIsNothingAt: string = "There is nothing at this address";
export const linkMayBeCut: string = "The link may be cut short. Your checks are in the list.";
export const partsLibraryThatCame: string = "The parts library that came with this app could not be read. Find a signal, then open this page again.";
