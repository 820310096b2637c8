import { fail, type Outcome, succeed } from "../physics/outcome.ts";
import * as messages from "../words/compiled/engine.ts";
import type { Message } from "../words/message.ts";

/** Where a desk's engine is, and what a phone makes its credential with. */
export interface DeskAddress {
  /** wss://host:port */
  readonly url: string;
  /** The desk's account, a public key. */
  readonly account: string;
  /** The key that phones sign their own credential with; it is in the app, and no secret. */
  readonly sendersSeed: string;
}

const onThisMachine = /^(localhost|127\.0\.0\.1|\[::1\])$/;

/**
 * An address as a build is given it: `wss://host:port#ACCOUNT.SEED`, as the desk's server prints it. Without
 * TLS (`ws:`) only on this machine.
 */
export function readDeskAddress(text: string): Outcome<DeskAddress> {
  const wrong = (why: Message) => fail("deskAddress", [messages.reviewDesksAddressCant({ why })]);
  let url: URL;
  try {
    url = new URL(text);
  } catch {
    return wrong(messages.itIsNoAddress);
  }
  if (url.protocol !== "wss:" && !(url.protocol === "ws:" && onThisMachine.test(url.hostname))) {
    return wrong(messages.itMustBeginWith);
  }
  const [account = "", sendersSeed = "", more] = url.hash.slice(1).split(".");
  if (
    !/^A[A-Z2-7]{55}$/.test(account) ||
    !/^SA[A-Z2-7]{56}$/.test(sendersSeed) ||
    more !== undefined
  ) {
    return wrong(messages.partAfterIsNot);
  }
  return succeed({ url: `${url.protocol}//${url.host}`, account, sendersSeed });
}

/** The address as a build takes it. */
export function deskAddressText({ url, account, sendersSeed }: DeskAddress): string {
  return `${url}#${account}.${sendersSeed}`;
}
