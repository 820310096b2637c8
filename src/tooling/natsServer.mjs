import { installDebian } from "./debianPackages.mjs";
import { canRun, installedProgram } from "./installedProgram.mjs";

const usualPlaces = [
  "/usr/sbin/nats-server",
  "/usr/bin/nats-server",
  "/usr/local/bin/nats-server",
  "/opt/homebrew/bin/nats-server",
];

export const natsServerMissing =
  "The shared desk needs nats-server, which is not installed here. Install it (Debian and Ubuntu: " +
  "sudo apt-get install nats-server) or set NATS_SERVER_PATH to the program.";

/** The program named by NATS_SERVER_PATH, else the first in a usual place, else null. */
export function findNatsServer(environment = process.env, places = usualPlaces, runs = canRun) {
  return installedProgram(environment.NATS_SERVER_PATH, places, runs);
}

const installMs = 90_000;

/** Finds it, installing Debian's where that is possible and does not take long; null where it is missing. */
export async function ensureNatsServer() {
  const found = findNatsServer();
  if (found || process.env.NATS_SERVER_PATH) return found;
  await installDebian(["nats-server"], installMs);
  return findNatsServer();
}
