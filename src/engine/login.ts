import { createUser, encodeUser, fromPublic, fromSeed, parseCreds } from "@nats-io/jwt";
import { type Authenticator, jwtAuthenticator } from "@nats-io/nats-core";
import { fail, type Outcome, succeed } from "../physics/outcome.ts";
import * as messages from "../words/compiled/engine.ts";
import type { DeskAddress } from "./address.ts";
import { personName } from "./subjects.ts";

const bytes = new TextEncoder();
const text = new TextDecoder();

/** By what a connection is known to the engine. */
export interface Login {
  /** Stands in the subjects of what a phone sends. */
  readonly publicKey: string;
  /** Of a person of the desk; "phone" otherwise. */
  readonly name: string;
  readonly authenticator: Authenticator;
}

/** A phone's own key, made on it once: nobody else can fetch what is sent to it. */
export interface PhoneKey {
  readonly publicKey: string;
  readonly seed: string;
}

export function newPhoneKey(): PhoneKey {
  const key = createUser();
  return { publicKey: key.getPublicKey(), seed: text.decode(key.getSeed()) };
}

/** The credential a phone makes for itself; what it may do, the engine says. */
export async function phoneLogin(key: PhoneKey, address: DeskAddress): Promise<Outcome<Login>> {
  try {
    const user = fromSeed(bytes.encode(key.seed));
    const token = await encodeUser(
      "phone",
      user,
      fromPublic(address.account),
      {},
      { signer: fromSeed(bytes.encode(address.sendersSeed)), scopedUser: true },
    );
    const authenticator = jwtAuthenticator(token, bytes.encode(key.seed));
    return succeed({ publicKey: key.publicKey, name: "phone", authenticator });
  } catch {
    return fail("deskCredential", [messages.thisVersionOfStopfit]);
  }
}

/** A credential file of one person, as the desk's server writes it. */
export async function personLogin(credential: string): Promise<Outcome<Login>> {
  try {
    const { key, jwt, uc } = await parseCreds(bytes.encode(credential));
    if (!personName.test(uc.name)) throw new Error("unnamed");
    return succeed({
      publicKey: uc.sub,
      name: uc.name,
      authenticator: jwtAuthenticator(jwt, bytes.encode(key)),
    });
  } catch {
    return fail("deskCredential", [messages.thisFileIsNo]);
  }
}
