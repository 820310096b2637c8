import type { Use } from "../../physics/fitment.ts";

/** What a vehicle is used for, in the middle of a sentence. */
export const useWords: { readonly [Each in Use]: string } = {
  daily: "daily driving",
  towing: "towing",
  offroad: "off-road use",
};
