import type { CheckId, Side, State } from "../../physics/fitment.ts";

export const verdictWords: Record<State, string> = {
  ok: "It fits",
  care: "Fits, with a warning",
  no: "It doesn't fit",
  unsure: "Not sure yet",
};

export const checkStateWords: Record<State, string> = {
  ok: "OK",
  care: "warning",
  no: "fails",
  unsure: "not sure",
};

export const checkTitles: Record<CheckId, string> = {
  clearance: "Fully compressed before hard contact",
  earlyContact: "Stop doesn't touch too soon",
  stiffness: "Stiffness",
  balance: "Left and right match",
  plausible: "Readings plausible",
};

export const sideWords: Record<Side, string> = { left: "Left", right: "Right" };
