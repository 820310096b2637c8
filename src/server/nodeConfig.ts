import { greatestMessage } from "../engine/subjects.ts";
import type { ServerTokens } from "./keys.ts";

/** One node of the engine. */
export interface NodePlan {
  readonly name: string;
  /** Where clients of this machine and the other nodes reach it. */
  readonly host: string;
  readonly clientPort: number;
  readonly webSocketPort: number;
  readonly clusterPort: number;
  /** Where it keeps its streams. */
  readonly folder: string;
  /** Absent: without TLS, which is for trying it on one machine only. */
  readonly tls?: { readonly certificate: string; readonly key: string };
  /** Pages of which origins may connect; none named: all. */
  readonly origins?: readonly string[];
}

function quoted(value: string): string {
  return JSON.stringify(value);
}

/** The configuration of one node; with others, of one in a cluster. */
export function nodeConfig(
  node: NodePlan,
  all: readonly NodePlan[],
  tokens: ServerTokens,
  clusterSecret: string,
  { greatestStoreBytes = 50 * 1024 ** 3 }: { readonly greatestStoreBytes?: number } = {},
): string {
  const webSocket = [
    `  listen: ${quoted(`${node.host}:${node.webSocketPort}`)}`,
    ...(node.tls
      ? [`  tls { cert_file: ${quoted(node.tls.certificate)}, key_file: ${quoted(node.tls.key)} }`]
      : ["  no_tls: true"]),
    ...(node.origins?.length
      ? [`  allowed_origins: [${node.origins.map(quoted).join(", ")}]`]
      : []),
    "  compression: true",
    "  handshake_timeout: 5s",
  ];
  const cluster =
    all.length < 2
      ? []
      : [
          "cluster {",
          '  name: "stopfit-desk"',
          `  listen: ${quoted(`${node.host}:${node.clusterPort}`)}`,
          `  authorization { user: desk, password: ${quoted(clusterSecret)}, timeout: 5 }`,
          `  routes: [${all
            .filter(({ name }) => name !== node.name)
            .map(({ host, clusterPort }) =>
              quoted(`nats-route://desk:${clusterSecret}@${host}:${clusterPort}`),
            )
            .join(", ")}]`,
          "}",
        ];
  return `${[
    `server_name: ${quoted(node.name)}`,
    `listen: ${quoted(`${node.host}:${node.clientPort}`)}`,
    `max_payload: ${greatestMessage}`,
    "max_control_line: 4096",
    "max_pending: 33554432",
    "authorization { timeout: 10 }",
    `operator: ${quoted(tokens.operator)}`,
    `system_account: ${quoted(tokens.systemKey)}`,
    "resolver: MEMORY",
    "resolver_preload {",
    `  ${tokens.systemKey}: ${quoted(tokens.system)}`,
    `  ${tokens.accountKey}: ${quoted(tokens.account)}`,
    "}",
    "jetstream {",
    `  store_dir: ${quoted(node.folder)}`,
    `  max_file_store: ${greatestStoreBytes}`,
    "  max_memory_store: 67108864",
    "}",
    "websocket {",
    ...webSocket,
    "}",
    ...cluster,
  ].join("\n")}\n`;
}
