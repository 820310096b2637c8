import * as messages from "../../words/compiled/screens/layouts.ts";
/** Asks for the other of two arms. */
export const otherArmWords = {
  lead: messages.wheelDoesNotRise,
  legend: messages.measureOtherArmToo,
} as const;
