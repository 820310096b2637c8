import type { CheckId, Side, State } from "../../physics/fitment.ts";
import * as messages from "../../words/compiled/screens/assessment.ts";

export const verdictWords: Record<State, string> = {
  ok: messages.itFits,
  care: messages.fitsWithWarning,
  no: messages.itDoesntFit,
  unsure: messages.notSureYet,
};

/** The same within a sentence. */
export const verdictWithin: Record<State, string> = {
  ok: messages.itFitsWithin,
  care: messages.fitsWithWarningWithin,
  no: messages.itDoesntFitWithin,
  unsure: messages.notSureYetWithin,
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

/** The same within a sentence. */
export const checkTitlesWithin: Record<CheckId, string> = {
  clearance: messages.fullyCompressedBeforeHardWithin,
  earlyContact: messages.stopDoesntTouchTooWithin,
  stiffness: messages.stiffnessWithin,
  balance: messages.leftAndRightMatchWithin,
  plausible: messages.readingsPlausibleWithin,
};

export const sideWords: Record<Side, string> = { left: messages.left, right: messages.right };
