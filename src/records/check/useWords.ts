import type { Use } from "../../physics/fitment.ts";
import type { Message } from "../../physics/sentence.ts";
import * as messages from "../../words/compiled/records/check.ts";

/** What a vehicle is used for, in the middle of a sentence. */
export const useWords: { readonly [Each in Use]: Message } = {
  daily: messages.dailyDriving,
  towing: messages.towing,
  offroad: messages.offRoadUse,
};
