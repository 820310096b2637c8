import type { ConnectionOptions, NatsConnection } from "@nats-io/nats-core";
import type { Fault, Outcome } from "../physics/outcome.ts";
import { faultOf } from "./engineFaults.ts";
import type { Login } from "./login.ts";
import { inboxPrefix } from "./subjects.ts";

/** Opens the connection itself: by WebSocket in a browser. */
export type Dial = (options: ConnectionOptions) => Promise<NatsConnection>;

export interface EngineConnection {
  readonly nats: NatsConnection;
  readonly publicKey: string;
  readonly name: string;
}

type ConnectionState = "on" | "off";

export interface ConnectPlan {
  readonly servers: string | readonly string[];
  readonly login: Login;
  readonly dial: Dial;
  /** A short errand gives up at once; a desk goes on trying. */
  readonly stay: boolean;
  onState?(state: ConnectionState): void;
  /** The engine closed it for good: the credential was taken back. */
  onRefused?(fault: Fault): void;
}

const waitMs = 8000;

/** Opens a connection to a desk's engine; the listeners that a phone needs are under its own key. */
export async function connectEngine(plan: ConnectPlan): Promise<Outcome<EngineConnection>> {
  const { login, stay } = plan;
  try {
    const nats = await plan.dial({
      servers: typeof plan.servers === "string" ? plan.servers : [...plan.servers],
      authenticator: login.authenticator,
      inboxPrefix: inboxPrefix(login.publicKey),
      name: "stopfit",
      timeout: waitMs,
      reconnect: stay,
      maxReconnectAttempts: stay ? -1 : 0,
      reconnectTimeWait: 1000,
      reconnectJitter: 500,
      pingInterval: 20_000,
      ignoreClusterUpdates: true,
    });
    follow(nats, plan);
    return { ok: true, value: { nats, publicKey: login.publicKey, name: login.name } };
  } catch (error) {
    return { ok: false, fault: faultOf(error) };
  }
}

async function follow(nats: NatsConnection, { onState, onRefused }: ConnectPlan): Promise<void> {
  nats.closed().then((error) => {
    onState?.("off");
    if (error) {
      const fault = faultOf(error);
      if (fault.code === "deskRefused") onRefused?.(fault);
    }
  });
  onState?.("on");
  for await (const { type } of nats.status()) {
    if (type === "disconnect") onState?.("off");
    if (type === "reconnect") onState?.("on");
  }
}
