// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const stopfit: string = "Stopfit";
export const allChecks: string = "All checks";
export const thisScreenCantBe: string = "This screen can't be shown";
export const somethingInStopfitWent: string = "Something in Stopfit went wrong here. What you typed before is saved on this phone. Go to all checks and open the check again.";
export const moreFor = (d: { name: string | number }): string => "More for " + d.name;
export const warning: string = "Warning:";
export const wrong: string = "Wrong:";
export const notSure: string = "Not sure:";
export const oneMoment: string = "One moment …";
export const printWord: string = "Print";
export const stopfit2 = (d: { what: string | number }): string => "Stopfit " + d.what;
export const save = (d: { what: string | number }): string => "Save the " + d.what;
export const thisPartOfStopfit: string = "This part of Stopfit could not be loaded. Find a signal, then try again.";
export const tryAgain: string = "Try again";
export const pageIsNotSaved: string = "The page is not saved: you closed the share sheet. Save it again and choose a place for it.";
