import type { CheckId, Side, State } from "../../physics/fitment.ts";

export const verdictWords: Record<State, string> = {
  ok: "It fits",
  care: "It fits, take care",
  no: "It does not fit",
  unsure: "Not sure yet",
};

export const checkStateWords: Record<State, string> = {
  ok: "in order",
  care: "take care",
  no: "fails",
  unsure: "not sure",
};

export const checkTitles: Record<CheckId, string> = {
  clearance: "Full stop before anything harder",
  earlyContact: "Contact not too early",
  stiffness: "Stiffness",
  balance: "Left and right alike",
  plausible: "Readings believable",
};

export const sideWords: Record<Side, string> = { left: "Left", right: "Right" };
