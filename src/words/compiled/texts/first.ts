// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
import type { MessageTexts } from "../../message.ts";
export const texts: MessageTexts = {
  "records/check.noNameYet": "No name yet",
  "storage.savedFromAnotherTab": (d) => "" + d.name + " (saved from another tab)",
  "storage.notSavedThisBrowser": "Not saved: this browser refuses to store anything here, as in a private window. Save the check as a file before you close this page.",
  "storage.notSavedStorageOf": "Not saved: the storage of this phone is full. Save the check as a file, then free some space and try again.",
  "storage.notSavedStopfitIs": "Not saved: Stopfit is open in another tab with an older version. Close the other tab and try again.",
  "storage.notSavedNewerVersion": "Not saved: a newer version of Stopfit has been used on this phone. Load this page again to get it, and save the check as a file first.",
  "storage.notSavedStorageOfThis": "Not saved: the storage of this phone does not answer. Save the check as a file, then load this page again.",
  "storage.notSavedThisCheck": "Not saved: this check is no longer on this phone. Save it as a file.",
  "storage.notSavedStorageOfThisPhone": "Not saved: the storage of this phone reported a fault. Save the check as a file.",
};
