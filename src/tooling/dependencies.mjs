import { existsSync, readFileSync } from "node:fs";
import { run } from "./run.mjs";

const oldestNode = [20, 19];

function read(path) {
  return JSON.parse(readFileSync(path, "utf8"));
}

/** Packages of package-lock.json that node_modules lacks or has in another version. */
export function missingPackages(wanted, installed) {
  return Object.entries(wanted.packages)
    .filter(([path, entry]) => path !== "" && !entry.optional && !entry.link)
    .filter(([path, entry]) => installed.packages[path]?.version !== entry.version)
    .map(([path]) => path);
}

/** Installs what is missing. Resolves with a sentence if that fails, with null if all is there. */
export async function ensureDependencies() {
  const [major, minor] = process.versions.node.split(".").map(Number);
  if (major < oldestNode[0] || (major === oldestNode[0] && minor < oldestNode[1])) {
    return `Node ${oldestNode.join(".")} or newer is needed; this is Node ${process.versions.node}.`;
  }
  const record = "node_modules/.package-lock.json";
  if (existsSync(record) && missingPackages(read("package-lock.json"), read(record)).length === 0) {
    return null;
  }
  console.log("Installing the packages of package-lock.json …");
  const code = await run("npm", ["ci", "--no-audit", "--no-fund", "--loglevel=error"]);
  return code === 0 ? null : "npm ci failed; see its message above. It needs the npm registry.";
}
