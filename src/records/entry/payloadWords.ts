import * as messages from "../../words/compiled/records/entry.ts";
import type { Message } from "../../words/message.ts";
import type { Axle } from "../check/checkRecord.ts";

/** What the vehicle usually carries, in a customer's words. */
export type PayloadWord = "empty" | "tools" | "people" | "full" | "trailer";

export interface UsualPayload {
  readonly word: PayloadWord;
  /** "Tools and boxes". */
  readonly label: Message;
  /** More than it stood under when it was measured, per corner of the axle, kg, and its ±. */
  readonly perCornerKg: {
    readonly [Each in Axle]: { readonly value: number; readonly tol: number };
  };
}

/** Common practice, no source: adjustable in the full check. */
export const usualPayloads: readonly UsualPayload[] = [
  {
    word: "empty",
    label: messages.empty,
    perCornerKg: { front: { value: 0, tol: 0 }, rear: { value: 0, tol: 0 } },
  },
  {
    word: "tools",
    label: messages.toolsAndBoxes,
    perCornerKg: { front: { value: 10, tol: 10 }, rear: { value: 60, tol: 25 } },
  },
  {
    word: "people",
    label: messages.allSeatsTaken,
    perCornerKg: { front: { value: 35, tol: 15 }, rear: { value: 75, tol: 25 } },
  },
  {
    word: "full",
    label: messages.loadedToLimit,
    perCornerKg: { front: { value: 40, tol: 20 }, rear: { value: 180, tol: 60 } },
  },
  {
    word: "trailer",
    label: messages.trailerOnHitch,
    perCornerKg: { front: { value: 0, tol: 10 }, rear: { value: 70, tol: 25 } },
  },
];

/** The payload of a word. */
export function usualPayload(word: PayloadWord): UsualPayload {
  return usualPayloads.find((each) => each.word === word) ?? (usualPayloads[0] as UsualPayload);
}
