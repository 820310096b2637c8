import { fail, type Outcome, succeed } from "../physics/outcome.ts";
import * as messages from "../words/compiled/sharing.ts";
import type { Frame } from "./frame.ts";
import { readPayload } from "./payload.ts";
import { type ReceivedText, sharedOfText } from "./receivedFile.ts";
import { type Shared, sharedOfFrame } from "./sharedCheck.ts";
import { findPayloads } from "./shareLink.ts";

/** What was found in a text, a file or the address of a link. Nothing of it is kept. */
export type Opened =
  | Shared
  /** One code of several: the camera goes on with the others. */
  | { readonly kind: "part"; readonly frame: Frame };

/** Links opened from one text; what more of them there are is said. */
const linksAtOnce = 50;

/** Everything that a text holds: a check, a reply, or up to fifty links with one each. */
export function openText(received: ReceivedText): readonly Outcome<Opened>[] {
  const { text } = received;
  if (/^\ufeff?\s*[{[]/.test(text)) return [sharedOfText(received)];
  const payloads = findPayloads(text, linksAtOnce + 1);
  if (payloads.length < 2) return [sharedOfText(received)];
  const opened = payloads.slice(0, linksAtOnce).map((payload) => openPayload(payload));
  if (payloads.length <= linksAtOnce) return opened;
  return [...opened, tooManyLinks(linksAtOnce)];
}

export function tooManyLinks(most: number): Outcome<never> {
  return fail("tooManyLinks", [messages.onlyLinksAreOpened({ most })]);
}

/** What the payload of a link holds. */
export function openPayload(payload: string): Outcome<Opened> {
  const frame = readPayload(payload);
  if (!frame.ok) return frame;
  return frame.value.parts > 1
    ? succeed({ kind: "part", frame: frame.value })
    : sharedOfFrame(frame.value);
}
