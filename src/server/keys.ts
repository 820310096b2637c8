import { randomBytes } from "node:crypto";
import {
  createAccount,
  createOperator,
  createUser,
  encodeAccount,
  encodeOperator,
  encodeUser,
  fmtCreds,
  fromSeed,
  type Key,
  newScopedSigner,
} from "@nats-io/jwt";
import {
  deskPermissions,
  greatestMessage,
  type Permissions,
  senderPermissions,
} from "../engine/subjects.ts";

/** The secrets that all others come from, as seeds. Whoever has them has the desk. */
export interface DeskKeys {
  readonly operator: string;
  readonly system: string;
  readonly account: string;
  /** Phones make their credential with it themselves: it is in the app, and no secret. */
  readonly senders: string;
  /** Signs the credentials of people. */
  readonly people: string;
  /** By which the nodes know each other. */
  readonly cluster: string;
}

const text = new TextDecoder();
const bytes = new TextEncoder();

function seedOf(key: Key): string {
  return text.decode((key as ReturnType<typeof createUser>).getSeed());
}

export function keyOf(seed: string): ReturnType<typeof createUser> {
  return fromSeed(bytes.encode(seed));
}

export function newDeskKeys(): DeskKeys {
  return {
    operator: seedOf(createOperator()),
    system: seedOf(createAccount()),
    account: seedOf(createAccount()),
    senders: seedOf(createAccount()),
    people: seedOf(createAccount()),
    cluster: randomBytes(24).toString("hex"),
  };
}

export function newSendersKey(): string {
  return seedOf(createAccount());
}

/** A credential taken back: who had one made before this moment (s) is refused. */
export type Revoked = { readonly [publicKey: string]: number };

const unlimited = -1;

function template({ publish, subscribe }: Permissions, subs: number) {
  return {
    pub: { allow: [...publish] },
    sub: { allow: [...subscribe] },
    subs,
    data: unlimited,
    payload: greatestMessage,
  };
}

export interface ServerTokens {
  readonly operator: string;
  readonly systemKey: string;
  readonly system: string;
  readonly accountKey: string;
  readonly account: string;
}

/** What the nodes are told: whom to trust, and what each role may do. */
export async function serverTokens(keys: DeskKeys, revoked: Revoked = {}): Promise<ServerTokens> {
  const operator = keyOf(keys.operator);
  const system = keyOf(keys.system);
  const account = keyOf(keys.account);
  const connections = { conn: unlimited, subs: unlimited, data: unlimited, payload: unlimited };
  const sharing = { imports: 0, exports: 0, leaf: 0, wildcards: true };
  return {
    operator: await encodeOperator("desk", operator, { system_account: system.getPublicKey() }),
    systemKey: system.getPublicKey(),
    system: await encodeAccount(
      "system",
      system,
      { limits: { ...connections, imports: unlimited, exports: unlimited } },
      { signer: operator },
    ),
    accountKey: account.getPublicKey(),
    account: await encodeAccount(
      "desk",
      account,
      {
        limits: {
          ...connections,
          ...sharing,
          mem_storage: unlimited,
          disk_storage: unlimited,
          streams: unlimited,
          consumer: unlimited,
        },
        signing_keys: [
          newScopedSigner(keyOf(keys.senders), "sender", template(senderPermissions, 20)),
          newScopedSigner(keyOf(keys.people), "desk", template(deskPermissions, 2000)),
        ],
        revocations: { ...revoked },
      },
      { signer: operator },
    ),
  };
}

export interface PersonCredential {
  readonly publicKey: string;
  /** What the person opens at the desk. */
  readonly credential: string;
}

/** A credential of one person of the desk. */
export async function personCredential(keys: DeskKeys, name: string): Promise<PersonCredential> {
  const user = createUser();
  const token = await encodeUser(
    name,
    user,
    keyOf(keys.account),
    {},
    { signer: keyOf(keys.people), scopedUser: true },
  );
  return { publicKey: user.getPublicKey(), credential: text.decode(fmtCreds(token, user)) };
}

/** For making and widening the streams: it may do everything in the desk's account. */
export async function keeperCredential(keys: DeskKeys): Promise<string> {
  const user = createUser();
  const token = await encodeUser("keeper", user, keyOf(keys.account));
  return text.decode(fmtCreds(token, user));
}
