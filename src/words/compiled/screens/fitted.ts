// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const checkAgainAfterChange: string = "Check again after the change";
export const whatWasFitted: string = "What was fitted";
export const scanBagOfWhat: string = "Scan the bag of what was really put in, or type its part number. One entry holds for both sides.";
export const advised = (d: { advice: string | number }): string => "Advised: " + d.advice;
export const part: string = "Part";
export const fitted = (d: { inPack: string | number; part: string | number }): string => "Fitted: " + d.inPack + d.part;
export const whatWasFittedIs = (d: { otherwise: string | number }): string => "What was fitted is " + d.otherwise + ". Check again after the change.";
export const notInPartsLibrary: string = "Not in the parts library? Its number as printed";
export const batch: string = "Batch";
export const asOnBagOr: string = "As on the bag or on the part.";
export const spacerDateWho: string = "Spacer, date, who";
export const spacerIfOneWas: string = "Spacer (if one was fitted)";
export const heightOf0To: string = "A height of 0 to 300 mm, such as 10 or 3/8 in.";
export const whoFittedIt: string = "Who fitted it";
export const date: string = "Date";
export const yearMonthDay2026: string = "Year, month, day: 2026-05-31.";
export const dayThatWasTyped: string = "A day that was, typed as 2026-05-31.";
export const odometerIfYouLike: string = "Odometer (if you like)";
export const wholeMilesOrKilometers: string = "Whole miles or kilometers, such as 51 200 mi.";
export const photos: string = "Photos";
export const photoKeepsTimeYour: string = "A photo keeps the time, your name and a hash of its own. What the camera wrote beside it is taken out.";
export const fittedPart: string = "fitted part";
export const nothingWasFitted: string = "Nothing was fitted";
export const oncePartIsTold: string = "Once the part is entered, you can add photos and check the vehicle again.";
export const somethingAboveCantBe: string = "Something above can't be read yet. Everything you typed stays.";
export const withSpacerOf = (d: { spacerMm: string | number }): string => "With a spacer of " + d.spacerMm + ".";
export const checkAgainStartsNew: string = "\"Check again\" starts a new check of the same job. Geometry and clearances carry over; the gap is re-measured.";
