import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { connect, type NatsConnection } from "@nats-io/transport-node";
import { readDeskAddress } from "../../../src/engine/address.ts";
import { connectEngine, type EngineConnection } from "../../../src/engine/connection.ts";
import {
  type Login,
  newPhoneKey,
  type PhoneKey,
  personLogin,
  phoneLogin,
} from "../../../src/engine/login.ts";
import type { Outcome } from "../../../src/physics/outcome.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import {
  buildAddress,
  configPath,
  type DeskState,
  newDeskState,
  withPerson,
  writeDesk,
} from "../../../src/server/deskState.ts";
import { type NodeProcess, startNode } from "../../../src/server/nodeProcess.ts";
import { usualLimits } from "../../../src/server/streamPlans.ts";
import { connectKeeper, makeStreams } from "../../../src/server/streamsMade.ts";
import { findNatsServer } from "../../../src/tooling/natsServer.mjs";
import { freePort } from "../freePort.ts";

/** Whether there is an engine to test with; where there is none, its tests are skipped and counted. */
export const engineHere = findNatsServer() !== null;

/** Real nodes on this machine only, with all their streams; stopped and forgotten by `dispose`. */
export class EngineBench {
  #running = new Map<string, NodeProcess>();
  #open: NatsConnection[] = [];

  private constructor(
    readonly folder: string,
    public state: DeskState,
  ) {}

  static async start(
    count: 1 | 3,
    { inboxBytes = 256 * 1024 ** 2 }: { readonly inboxBytes?: number } = {},
  ): Promise<EngineBench> {
    const folder = mkdtempSync(join(tmpdir(), "stopfit-engine-"));
    const names = ["one", "two", "three"].slice(0, count);
    const nodes = [];
    for (const name of names) {
      const [clientPort, webSocketPort, clusterPort] = await Promise.all([
        freePort(),
        freePort(),
        freePort(),
      ]);
      nodes.push({
        name,
        host: "127.0.0.1",
        clientPort,
        webSocketPort,
        clusterPort,
        folder: join(folder, `${name}-store`),
      });
    }
    const url = `ws://127.0.0.1:${nodes[0]?.webSocketPort}`;
    const state = await newDeskState({ url, nodes, limits: { ...usualLimits, inboxBytes } });
    const bench = new EngineBench(folder, state);
    await writeDesk(folder, state);
    for (const name of names) bench.startNode(name);
    const keeper = await bench.keeper();
    await makeStreams(bench.state, keeper);
    return bench;
  }

  startNode(name: string): void {
    this.#running.set(name, startNode(configPath(this.folder, name)));
  }

  async killNode(name: string): Promise<void> {
    await this.#running.get(name)?.kill();
    this.#running.delete(name);
  }

  async keeper(): Promise<NatsConnection> {
    const keeper = await connectKeeper(this.state);
    this.#open.push(keeper);
    return keeper;
  }

  /** Another state, which the nodes read while they run. */
  async reload(state: DeskState): Promise<void> {
    this.state = state;
    await writeDesk(this.folder, state);
    await Promise.all([...this.#running.values()].map((node) => node.reload()));
  }

  get servers(): string[] {
    return this.state.nodes.map(({ host, clientPort }) => `${host}:${clientPort}`);
  }

  get buildAddress(): string {
    return buildAddress(this.state);
  }

  async connectAs(
    login: Outcome<Login>,
    { stay = true, onRefused }: { readonly stay?: boolean; readonly onRefused?: () => void } = {},
  ): Promise<Outcome<EngineConnection>> {
    if (!login.ok) return login;
    const opened = await connectEngine({
      servers: this.servers,
      login: login.value,
      dial: connect,
      stay,
      ...(onRefused && { onRefused }),
    });
    if (opened.ok) this.#open.push(opened.value.nats);
    return opened;
  }

  phoneLogin(key: PhoneKey = newPhoneKey(), address = this.buildAddress): Promise<Outcome<Login>> {
    const read = readDeskAddress(address);
    if (!read.ok) throw new Error("no address");
    return phoneLogin(key, read.value);
  }

  async phone(key?: PhoneKey): Promise<EngineConnection> {
    return opened(await this.connectAs(await this.phoneLogin(key)));
  }

  /** The credential of a person, made on first asking. */
  async credential(name: string): Promise<string> {
    const made = await withPerson(this.state, name);
    if ("trouble" in made) throw new Error(made.trouble);
    this.state = made.state;
    return made.credential;
  }

  async person(name: string): Promise<EngineConnection> {
    return opened(await this.connectAs(await personLogin(await this.credential(name))));
  }

  async dispose(): Promise<void> {
    await Promise.all(this.#open.map((nats) => nats.close().catch(() => undefined)));
    await Promise.all([...this.#running.values()].map((node) => node.kill()));
    rmSync(this.folder, { recursive: true, force: true });
  }
}

export function opened<Value>(outcome: Outcome<Value>): Value {
  if (!outcome.ok) throw new Error(inModelUnits(outcome.fault.sentence));
  return outcome.value;
}
