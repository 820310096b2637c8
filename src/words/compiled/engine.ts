// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const reviewDesksAddressCant = (d: { why: string | number }): string => "The review desk's address can't be used: " + d.why + " Take it as the server prints it.";
export const itIsNoAddress: string = "it is no address.";
export const itMustBeginWith: string = "it must begin with wss://.";
export const partAfterIsNot: string = "the part after # is not whole.";
export const reviewDeskCantBe: string = "The review desk can't be reached now. It is tried again by itself.";
export const reviewDeskDoesNot: string = "The review desk does not accept this credential: it was taken back or replaced. Update Stopfit, or ask whoever keeps the review desk for a new one.";
export const reviewDeskHasNo: string = "The review desk has no room for more now. What you sent stays here and is tried again by itself.";
export const reviewDeskDoesNotAllow: string = "The review desk does not allow this with the credential used here.";
export const thisIsLargerThan: string = "This is larger than the review desk takes in one piece. Send the check as a file instead.";
export const reviewDesksMachinesAre: string = "The review desk's machines are changing over. It is tried again by itself.";
export const thisVersionOfStopfit: string = "This version of Stopfit has no key to the review desk that can be used. Update Stopfit, or send the check as a file.";
export const thisFileIsNo: string = "This file is no credential of a review desk. Choose the file that whoever keeps the review desk gave you.";
export const reviewDesksReply: string = "The review desk's reply";
