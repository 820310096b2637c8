import { chmodSync, existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { deskAddressText } from "../engine/address.ts";
import { personName } from "../engine/subjects.ts";
import {
  type DeskKeys,
  keyOf,
  newDeskKeys,
  newSendersKey,
  personCredential,
  type Revoked,
  serverTokens,
} from "./keys.ts";
import { type NodePlan, nodeConfig } from "./nodeConfig.ts";
import { type StreamLimits, usualLimits } from "./streamPlans.ts";

/** A person who has a credential, or had one. */
interface Person {
  readonly name: string;
  readonly publicKey: string;
  readonly since: string;
  readonly takenBackAt?: string;
}

/** All that whoever keeps a desk has of it: secrets too. One file in a folder that nobody else reads. */
export interface DeskState {
  readonly version: 1;
  /** Where browsers reach it. */
  readonly url: string;
  readonly keys: DeskKeys;
  readonly operatorToken: string;
  readonly nodes: readonly NodePlan[];
  readonly limits: StreamLimits;
  readonly people: readonly Person[];
  readonly revoked: Revoked;
}

/** Later than any credential: a phone makes its own anew for each connection. */
const forGood = Date.UTC(2100, 0, 1) / 1000;

export async function newDeskState({
  url,
  nodes,
  limits = usualLimits,
}: {
  readonly url: string;
  readonly nodes: readonly NodePlan[];
  readonly limits?: StreamLimits;
}): Promise<DeskState> {
  const keys = newDeskKeys();
  const { operator } = await serverTokens(keys);
  return {
    version: 1,
    url,
    keys,
    operatorToken: operator,
    nodes,
    limits,
    people: [],
    revoked: {},
  };
}

/** What a build of the app is given as STOPFIT_DESK. */
export function buildAddress({ url, keys }: DeskState): string {
  const account = keyOf(keys.account).getPublicKey();
  return deskAddressText({ url, account, sendersSeed: keys.senders });
}

/** Every node's configuration, by its name. */
export async function nodeConfigs(state: DeskState): Promise<ReadonlyMap<string, string>> {
  const tokens = {
    ...(await serverTokens(state.keys, state.revoked)),
    // The engine refuses another operator while it runs.
    operator: state.operatorToken,
  };
  return new Map(
    state.nodes.map((node) => [
      node.name,
      nodeConfig(node, state.nodes, tokens, state.keys.cluster),
    ]),
  );
}

export async function withPerson(
  state: DeskState,
  name: string,
): Promise<
  { readonly state: DeskState; readonly credential: string } | { readonly trouble: string }
> {
  if (!personName.test(name)) {
    return {
      trouble: `"${name}" can't be a name here: letters, digits, - and _ only, 40 at most.`,
    };
  }
  if (state.people.some((each) => each.name === name && each.takenBackAt === undefined)) {
    return { trouble: `${name} has a credential already. Take it back first: take-back ${name}` };
  }
  const { publicKey, credential } = await personCredential(state.keys, name);
  const person = { name, publicKey, since: new Date().toISOString() };
  return { state: { ...state, people: [...state.people, person] }, credential };
}

/** A person's credential, or a phone's key, is refused from the next reload on. */
export function withTakenBack(state: DeskState, who: string): DeskState | null {
  const at = new Date().toISOString();
  if (/^U[A-Z2-7]{55}$/.test(who)) {
    return { ...state, revoked: { ...state.revoked, [who]: forGood } };
  }
  const found = state.people.filter(
    ({ name, takenBackAt }) => name === who && takenBackAt === undefined,
  );
  if (found.length === 0) return null;
  return {
    ...state,
    people: state.people.map((each) =>
      found.includes(each) ? { ...each, takenBackAt: at } : each,
    ),
    revoked: {
      ...state.revoked,
      ...Object.fromEntries(found.map(({ publicKey }) => [publicKey, forGood])),
    },
  };
}

/** Another key for phones: apps with the one before are refused once the nodes have reloaded. */
export function withNewSenders(state: DeskState): DeskState {
  return { ...state, keys: { ...state.keys, senders: newSendersKey() } };
}

const stateFile = "desk.json";

export function readDeskState(folder: string): DeskState | null {
  const path = join(folder, stateFile);
  return existsSync(path) ? (JSON.parse(readFileSync(path, "utf8")) as DeskState) : null;
}

export function configPath(folder: string, node: string): string {
  return resolve(folder, `${node}.conf`);
}

function writeSecret(path: string, text: string): void {
  writeFileSync(path, text, { mode: 0o600 });
  chmodSync(path, 0o600);
}

/** Writes the state, and every node's configuration beside it. */
export async function writeDesk(folder: string, state: DeskState): Promise<void> {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  writeSecret(join(folder, stateFile), `${JSON.stringify(state, null, 2)}\n`);
  for (const [name, config] of await nodeConfigs(state)) {
    writeSecret(configPath(folder, name), config);
  }
}

export function writeCredential(folder: string, name: string, credential: string): string {
  const path = resolve(folder, `${name}.credential.txt`);
  writeSecret(path, credential);
  return path;
}
