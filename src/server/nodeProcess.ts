import { type ChildProcess, spawn } from "node:child_process";
import { findNatsServer } from "../tooling/natsServer.mjs";

/** A node that runs. */
export interface NodeProcess {
  /** Reads its configuration again: credentials that were taken back are refused from then on. */
  reload(): void;
  /** Ends it at once, as a machine that fails. */
  kill(): Promise<void>;
  stop(): Promise<void>;
  readonly ended: Promise<number | null>;
}

/** Starts a node with its configuration. */
export function startNode(
  config: string,
  { log = "ignore" }: { readonly log?: "ignore" | "inherit" } = {},
): NodeProcess {
  const program = findNatsServer();
  if (program === null) throw new Error("There is no nats-server here.");
  const child: ChildProcess = spawn(program, ["-c", config], { stdio: ["ignore", log, log] });
  const ended = new Promise<number | null>((resolve) => {
    child.on("error", () => resolve(null));
    child.on("exit", (code) => resolve(code));
  });
  const end = async (signal: NodeJS.Signals): Promise<void> => {
    child.kill(signal);
    await ended;
  };
  return {
    reload: () => child.kill("SIGHUP"),
    kill: () => end("SIGKILL"),
    stop: () => end("SIGTERM"),
    ended,
  };
}
