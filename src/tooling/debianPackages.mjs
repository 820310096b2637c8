import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { run } from "./run.mjs";

/** Debian's packages can be installed here without asking anyone. */
export function canInstallDebian() {
  return existsSync("/etc/debian_version") && process.getuid?.() === 0;
}

/** The version of Debian's package that is installed here, or null. */
export function debianVersion(name) {
  const told = spawnSync("dpkg-query", ["--show", name], { encoding: "utf8" });
  return told.status === 0 ? (told.stdout.split("\t")[1]?.trim() ?? null) : null;
}

/** Installs Debian's packages, giving up after `timeout` ms each for the lists and for them. */
export async function installDebian(packages, timeout) {
  if (!canInstallDebian()) return;
  console.log(`Installing Debian's ${packages.join(", ")} …`);
  const quiet = { env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" }, timeout };
  await run("apt-get", ["update", "-qq"], quiet);
  const install = ["install", "-y", "-qq", "--no-install-recommends", ...packages];
  await run("apt-get", install, quiet);
}
