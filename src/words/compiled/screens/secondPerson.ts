// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const toAnswer: string = "To the answer";
export const check: string = "Check";
export const begin: string = "Begin";
export const back: string = "Back";
export const next: string = "Next";
export const leaveOut: string = "Leave out";
export const secondPersonMeasures: string = "A second person measures";
export const nothingWasMeasuredOn: string = "Nothing was measured on this vehicle yet.";
export const sameReadingsWithoutSeeing = (d: { ids: string | number }): string => "The same " + d.ids + " readings, without seeing the first ones. How far two people differ shows what a reading is worth.";
export const leaveVehicleAsIt: string = "Leave the vehicle as it stands. Do not lift, load or bounce it in between.";
export const yourName: string = "Your name";
export const firstReadingsAreBy: string = "The first readings are by this name. Another person takes these.";
export const readingBySecondPerson = (d: { place: string | number }): string => "Reading " + d.place + ", by a second person";
export const howTwoDiffer: string = "How the two differ";
export const nothingWasTypedBy: string = "Nothing was typed by the second person.";
export const andApart = (d: { entryName: string | number; id: string | number; id2: string | number; id3: string | number }): string => "" + d.entryName + ": " + d.id + " and " + d.id2 + ", " + d.id3 + " apart";
export const moreThanBothAllow: string = "– more than both ± allow. Look together where the tape goes.";
export const answerStaysWithFirst: string = "The answer stays with the first readings. The second ones stay with the check.";
export const placeOfCount = (d: { place: string | number; count: string | number }): string => "" + d.place + " of " + d.count;
