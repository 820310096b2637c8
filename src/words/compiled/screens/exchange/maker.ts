// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
import { en } from "@messageformat/runtime/lib/cardinals";
import { plural, select } from "@messageformat/runtime";
export const reviewDeskAnsweredAbout: string = "The review desk answered about “";
export const readAnswer: string = "Read the answer";
export const goesToReadingsAnd = (d: { maker: string | number; hasPhotos: boolean; photos: number }): string => "Goes to " + d.maker + ": the readings and the vehicle's name, for good. Your name, how to answer you, notes" + select(d.hasPhotos, { true: " and " + plural(d.photos, 0, en, { one: "the photo", other: d.photos + " photos" }), other: "" }) + " stand apart. They are erased after a time, or when you ask " + d.maker + ".";
export const yourName: string = "Your name";
export const mailOrPhoneIf: string = "Mail or phone, if the answer can't reach this phone";
export const sendThisVersionTo = (d: { maker: string | number }): string => "Send this version to " + d.maker;
export const sendTo = (d: { maker: string | number }): string => "Send to " + d.maker;
export const giveMailAddressOr: string = "Give a mail address or a phone number first.";
export const withoutSignalItWaits: string = "Without a signal it waits on this phone, also after Stopfit was closed. You can go on measuring.";
export const version = (d: { versions: string | number }): string => "Version " + d.versions + ": ";
export const waitsOnThisPhone = (d: { version: string | number }): string => "" + d.version + "waits on this phone to be sent.";
export const receivedByNoAnswer = (d: { version: string | number; maker: string | number; time: string | number }): string => "" + d.version + "received by " + d.maker + ", " + d.time + ". No answer yet.";
export const itWasChangedSince: string = "It was changed since. Send it once more: it goes as a new version of it.";
export const maker: string = "the maker";
export const answer: string = "The answer";
export const changedSinceItWas: string = "Changed since it was sent";
export const waitsToBeSent: string = "Waits to be sent";
export const answered: string = "Answered";
export const receivedByReviewDesk: string = "Received by the review desk";
export const versionAnswered = (d: { version: string | number }): string => "" + d.version + "answered.";
