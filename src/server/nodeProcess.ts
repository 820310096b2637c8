import { type ChildProcess, spawn } from "node:child_process";
import { findNatsServer } from "../tooling/natsServer.mjs";

/** A node that runs. */
export interface NodeProcess {
  /** Reads its configuration again: once this ends, credentials that were taken back are refused. */
  reload(): Promise<void>;
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
  const child: ChildProcess = spawn(program, ["-c", config], { stdio: ["ignore", log, "pipe"] });
  const heard = new Set<(line: string) => void>();
  child.stderr?.setEncoding("utf8").on("data", (text: string) => {
    if (log === "inherit") process.stderr.write(text);
    for (const hear of heard) hear(text);
  });
  const ended = new Promise<number | null>((resolve) => {
    child.on("error", () => resolve(null));
    child.on("exit", (code) => resolve(code));
  });
  const end = async (signal: NodeJS.Signals): Promise<void> => {
    child.kill(signal);
    await ended;
  };
  return {
    reload: () => {
      const read = new Promise<void>((resolve) => {
        const hear = (text: string) => {
          if (!text.includes("Reloaded server configuration")) return;
          heard.delete(hear);
          resolve();
        };
        heard.add(hear);
      });
      child.kill("SIGHUP");
      return Promise.race([read, ended.then(() => undefined)]);
    },
    kill: () => end("SIGKILL"),
    stop: () => end("SIGTERM"),
    ended,
  };
}
