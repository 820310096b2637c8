import type { Fault } from "../physics/outcome.ts";
import * as messages from "../words/compiled/engine.ts";
import type { Message } from "../words/message.ts";

export type EngineFaultCode =
  | "deskUnreachable"
  | "deskRefused"
  | "deskFull"
  | "deskForbids"
  | "tooLarge"
  | "deskBusy";

const sentences: { readonly [Code in EngineFaultCode]: Message } = {
  deskUnreachable: messages.reviewDeskCantBe,
  deskRefused: messages.reviewDeskDoesNot,
  deskFull: messages.reviewDeskHasNo,
  deskForbids: messages.reviewDeskDoesNotAllow,
  tooLarge: messages.thisIsLargerThan,
  deskBusy: messages.reviewDesksMachinesAre,
};

export function engineFault(code: EngineFaultCode): Fault {
  return { code, sentence: [sentences[code]] };
}

/** Said by a stream that has this very subject already: it was sent before. */
export function isThereAlready(error: unknown): boolean {
  return /maximum messages per subject/i.test(wordsOf(error));
}

function wordsOf(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  const cause = error.cause instanceof Error ? ` ${wordsOf(error.cause)}` : "";
  return `${error.name} ${error.message}${cause}`;
}

/** What the engine or its library said, as a fault with a sentence. */
export function faultOf(error: unknown): Fault {
  const words = wordsOf(error);
  // A slow machine or line is no refusal.
  if (/time-?out/i.test(words)) return engineFault("deskUnreachable");
  if (/authorization|authentication|revoked|expired/i.test(words))
    return engineFault("deskRefused");
  if (/permission/i.test(words)) return engineFault("deskForbids");
  if (/maximum bytes|maximum messages|insufficient|resource/i.test(words)) {
    return engineFault("deskFull");
  }
  if (/payload|message size/i.test(words)) return engineFault("tooLarge");
  if (/no responders|no leader|not available|temporarily|offline|503/i.test(words)) {
    return engineFault("deskBusy");
  }
  return engineFault("deskUnreachable");
}
