import { jetstreamManager, type StreamConfig } from "@nats-io/jetstream";
import { connect, credsAuthenticator, type NatsConnection } from "@nats-io/transport-node";
import type { DeskState } from "./deskState.ts";
import { keeperCredential } from "./keys.ts";
import { streamPlans } from "./streamPlans.ts";

const bytes = new TextEncoder();

/** Connects as whoever keeps the desk. */
export async function connectKeeper(state: DeskState): Promise<NatsConnection> {
  return connect({
    servers: state.nodes.map(({ host, clientPort }) => `${host}:${clientPort}`),
    authenticator: credsAuthenticator(bytes.encode(await keeperCredential(state.keys))),
    name: "keeper",
    waitOnFirstConnect: true,
    maxReconnectAttempts: 30,
    reconnectTimeWait: 250,
  });
}

const triesMs = 30_000;
const againMs = 150;

/** Makes every stream that is missing and brings the others to their plan; what is in them stays. */
export async function makeStreams(state: DeskState, keeper: NatsConnection): Promise<void> {
  const started = Date.now();
  for (const plan of streamPlans(state.nodes.length, state.limits)) {
    for (;;) {
      try {
        // A cluster takes some moments until it has a leader.
        const manager = await jetstreamManager(keeper, { timeout: 3000 });
        const present = await manager.streams.info(plan.name).catch((error: Error) => {
          if (/not found/.test(error.message)) return null;
          throw error;
        });
        if (present) await manager.streams.update(plan.name, { ...present.config, ...plan });
        else await manager.streams.add(plan as StreamConfig & { name: string });
        break;
      } catch (error) {
        if (Date.now() - started > triesMs) throw error;
        await new Promise((resolve) => setTimeout(resolve, againMs));
      }
    }
  }
}
