import { existsSync } from "node:fs";
import { pathToFileURL } from "node:url";
import { kernels } from "./kernels.mjs";
import { runToolHeld } from "./run.mjs";

const compiler = "typescript/bin/tsc";
const plain = ["--noEmit", "--pretty", "false"];

/** What the compiler found, each with the lines below it that belong to it. */
export function findingsIn(output) {
  const found = [];
  for (const line of output.split("\n")) {
    if (/^\s/.test(line) && found.length > 0) found.push(`${found.pop()}\n${line}`);
    else if (line.trim() !== "") found.push(line);
  }
  return found;
}

/** A finding that an element of an array may be missing, in a file where it is not. */
export function isOfKernel(finding, files = kernels) {
  return files.some((file) => finding.startsWith(`${file}(`));
}

/** Everything by tsconfig.json, and all but the kernels once more by tsconfig.indexed.json. */
async function main() {
  const [whole, indexed] = await Promise.all([
    runToolHeld(compiler, plain),
    runToolHeld(compiler, ["-p", "tsconfig.indexed.json", ...plain]),
  ]);
  const first = findingsIn(whole.output);
  const more = findingsIn(indexed.output).filter((finding) => !isOfKernel(finding));
  const absent = kernels
    .filter((file) => !existsSync(file))
    .map((file) => `${file} is listed in src/tooling/kernels.mjs and does not exist.`);
  const all = [...new Set([...first, ...more, ...absent])];
  for (const finding of all) console.log(finding);
  // Every failure of the second run must be accounted for by what it printed.
  const isTold = indexed.code === 0 || findingsIn(indexed.output).length > 0;
  process.exitCode = whole.code === 0 && isTold && all.length === 0 ? 0 : 1;
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) await main();
