import type { CheckId, Side, State } from "../../physics/fitment.ts";
import * as messages from "../../words/compiled/screens/assessment.ts";

export const verdictWords: Record<State, string> = {
  ok: messages.itFits,
  care: messages.fitsWithWarning,
  no: messages.itDoesntFit,
  unsure: messages.notSureYet,
};

export const checkStateWords: Record<State, string> = {
  ok: messages.ok,
  care: messages.warning,
  no: messages.fails,
  unsure: messages.notSure,
};

export const checkTitles: Record<CheckId, string> = {
  clearance: messages.fullyCompressedBeforeHard,
  earlyContact: messages.stopDoesntTouchToo,
  stiffness: messages.stiffness,
  balance: messages.leftAndRightMatch,
  plausible: messages.readingsPlausible,
};

export const sideWords: Record<Side, string> = { left: messages.left, right: messages.right };
