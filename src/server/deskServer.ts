import { join } from "node:path";
import { parseArgs } from "node:util";
import { erasePersonal } from "../engine/erase.ts";
import "../saying/everyText.ts";
import { inModelUnits } from "../saying/modelUnits.ts";
import { findNatsServer, natsServerMissing } from "../tooling/natsServer.mjs";
import {
  buildAddress,
  configPath,
  type DeskState,
  newDeskState,
  readDeskState,
  withNewSenders,
  withPerson,
  withTakenBack,
  writeCredential,
  writeDesk,
} from "./deskState.ts";
import type { NodePlan } from "./nodeConfig.ts";
import { startNode } from "./nodeProcess.ts";
import { connectKeeper, makeStreams } from "./streamsMade.ts";

/*
 * npm run desk-server                        one node on this machine, for trying it
 * npm run desk-server -- make --node a=10.0.0.1 --node b=10.0.0.2 --node c=10.0.0.3 \
 *     --address wss://desk.example --certificate /path/cert.pem --key /path/key.pem
 * npm run desk-server -- streams | person NAME | take-back NAME | new-senders | erase CHECK
 */

const help = "What each command does stands in src/server/RUNBOOK.md.";

function stop(sentence: string): never {
  console.error(sentence);
  process.exit(1);
}

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    folder: { type: "string", default: "desk-server" },
    address: { type: "string" },
    node: { type: "string", multiple: true },
    certificate: { type: "string" },
    key: { type: "string" },
    origin: { type: "string", multiple: true },
    "personal-days": { type: "string" },
    "inbox-megabytes": { type: "string" },
  },
});
const { folder } = values;
const [command = "try", subject = ""] = positionals;

const ports = { clientPort: 4222, webSocketPort: 4443, clusterPort: 6222 };
const reload =
  "Now copy each node's .conf to its machine and have it reload: nats-server --signal reload";

function wholeNumber(text: string | undefined, usual: number, what: string): number {
  if (text === undefined) return usual;
  const value = Number(text);
  if (!Number.isInteger(value) || value < 1)
    stop(`${what} is "${text}"; it must be a whole number.`);
  return value;
}

function limits() {
  return {
    inboxBytes: wholeNumber(values["inbox-megabytes"], 4096, "--inbox-megabytes") * 1024 ** 2,
    personalDays: wholeNumber(values["personal-days"], 365, "--personal-days"),
  };
}

async function make(): Promise<void> {
  if (readDeskState(folder)) stop(`There is a desk in ${folder} already. Choose another --folder.`);
  const named = values.node ?? [];
  if (named.length !== 1 && named.length !== 3) stop("Name one --node or three, each name=host.");
  const { address, certificate, key } = values;
  if (!address?.startsWith("wss://")) stop("Give --address wss://…, as browsers will reach it.");
  if (!certificate || !key) stop("Give --certificate and --key: browsers connect by TLS only.");
  const nodes = named.map((each): NodePlan => {
    const [name, host] = each.split("=");
    if (!name || !host) stop(`--node ${each}: write it as name=host.`);
    return {
      name,
      host,
      ...ports,
      folder: `/var/lib/stopfit-desk/${name}`,
      tls: { certificate, key },
      ...(values.origin && { origins: values.origin }),
    };
  });
  const state = await newDeskState({ url: address, nodes, limits: limits() });
  await writeDesk(folder, state);
  console.log(`Written to ${folder}: desk.json (secret, back it up) and one .conf a node.`);
  console.log(`\nThe app is built with:\nSTOPFIT_DESK='${buildAddress(state)}' npm run build`);
}

function present(): DeskState {
  return readDeskState(folder) ?? stop(`There is no desk in ${folder}. ${help}`);
}

async function addPerson(state: DeskState, name: string): Promise<DeskState> {
  const added = await withPerson(state, name);
  if ("trouble" in added) stop(added.trouble);
  await writeDesk(folder, added.state);
  const path = writeCredential(folder, name, added.credential);
  console.log(`${name}'s credential: ${path}. Hand it to ${name} alone, then delete it here.`);
  return added.state;
}

async function tryIt(): Promise<void> {
  if (findNatsServer() === null) stop(natsServerMissing);
  let state = readDeskState(folder);
  if (state === null) {
    const node = { name: "one", host: "127.0.0.1", ...ports, folder: join(folder, "one") };
    const url = `ws://127.0.0.1:${ports.webSocketPort}`;
    state = await newDeskState({ url, nodes: [node], limits: limits() });
    await writeDesk(folder, state);
    for (const name of ["first", "second"]) state = await addPerson(state, name);
  }
  if (state.nodes.length > 1)
    stop(`The desk in ${folder} has ${state.nodes.length} nodes. ${help}`);
  const [node] = state.nodes;
  const running = startNode(configPath(folder, node?.name ?? "one"), { log: "inherit" });
  for (const signal of ["SIGINT", "SIGTERM"] as const) process.on(signal, () => running.stop());
  const keeper = await connectKeeper(state);
  await makeStreams(state, keeper);
  await keeper.close();
  console.log(`\nThe desk runs. An app for it, on this machine:`);
  console.log(`STOPFIT_DESK='${buildAddress(state)}' npm start`);
  console.log("At the desk, open a credential file out of the folder. Ctrl+C stops it.");
  process.exitCode = (await running.ended) === 0 ? 0 : 1;
}

async function withKeeper<Value>(
  work: (state: DeskState, keeper: Awaited<ReturnType<typeof connectKeeper>>) => Promise<Value>,
): Promise<Value> {
  const state = present();
  const keeper = await connectKeeper(state);
  try {
    return await work(state, keeper);
  } finally {
    await keeper.close();
  }
}

const commands: { readonly [name: string]: () => Promise<void> } = {
  try: tryIt,
  make,
  streams: async () => {
    await withKeeper(makeStreams);
    console.log("Every stream is as it is to be.");
  },
  person: async () => {
    await addPerson(present(), subject);
  },
  "take-back": async () => {
    const changed = withTakenBack(present(), subject);
    if (changed === null) stop(`Nobody called ${subject} has a credential.`);
    await writeDesk(folder, changed);
    console.log(`${subject} is refused once the nodes have reloaded. ${reload}`);
  },
  "new-senders": async () => {
    const changed = withNewSenders(present());
    await writeDesk(folder, changed);
    console.log(`Build the app once more:\nSTOPFIT_DESK='${buildAddress(changed)}' npm run build`);
    console.log(`Once it is served: ${reload}`);
  },
  erase: async () => {
    if (!/^[0-9a-f-]{36}$/i.test(subject))
      stop("Give the number of the check, as the desk shows it.");
    const erased = await withKeeper((_, nats) => erasePersonal({ nats }, subject));
    if (!erased.ok) stop(inModelUnits(erased.fault.sentence));
    console.log(`${erased.value} messages with names, notes and photos of this check were erased.`);
  },
};

const run = commands[command];
if (!run) stop(`There is no command "${command}". ${help}`);
try {
  await run();
} catch (error) {
  stop(`${command}: ${error instanceof Error ? error.message : error}`);
}
