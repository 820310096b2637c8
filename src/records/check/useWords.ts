import type { Use } from "../../physics/fitment.ts";
import * as messages from "../../words/compiled/records/check.ts";

/** What a vehicle is used for, in the middle of a sentence. */
export const useWords: { readonly [Each in Use]: string } = {
  daily: messages.dailyDriving,
  towing: messages.towing,
  offroad: messages.offRoadUse,
};
