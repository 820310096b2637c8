import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/*
 * npm run mutation [-- folder …]: mutants of each folder of src/physics, "whole" for the files beside them,
 * and of the folders by which something comes in ("sharing", "storage", "records/check" …).
 * "folder/file.ts" asks for those of one file.
 */

const every = readdirSync("src/physics", { withFileTypes: true });
const doors = ["backup", "check", "photo", "text"].map((name) => `records/${name}`);
const folders = [
  ...every.filter((entry) => entry.isDirectory()).map(({ name }) => name),
  "whole",
  ...doors,
  "sharing",
  "storage",
];
const wanted = process.argv.length > 2 ? process.argv.slice(2) : folders;
const reports = mkdtempSync(join(tmpdir(), "stopfit-mutation-"));
/** Of the calculation, and of what comes in. */
const leastKilled = (name) => (/^(records|sharing|storage|compute)/.test(name) ? 0.85 : 0.9);

let failed = false;
console.log("folder                      mutants   killed  survived  no test   score");
for (const name of wanted) {
  const [, folder = name, file] = /^(.*?)(?:\/([^/]+\.ts))?$/.exec(name) ?? [];
  const env = {
    ...process.env,
    STOPFIT_MUTATED: folder === "whole" ? "." : folder,
    ...(file !== undefined && { STOPFIT_MUTATED_FILE: file }),
    STOPFIT_MUTATION_REPORTS: reports,
  };
  const stryker = "node_modules/@stryker-mutator/core/bin/stryker.js";
  const run = spawnSync(process.execPath, [stryker, "run", "tests/mutation/stryker.config.mjs"], {
    env,
    encoding: "utf8",
  });
  if (run.status !== 0) {
    console.log(`${name}: not run\n${run.stdout}${run.stderr}`);
    failed = true;
    continue;
  }
  const { files } = JSON.parse(
    readFileSync(join(reports, `${(file ?? folder).replaceAll("/", "-")}.json`), "utf8"),
  );
  const states = Object.values(files).flatMap(({ mutants }) => mutants.map(({ status }) => status));
  const count = (...ones) => states.filter((status) => ones.includes(status)).length;
  const killed = count("Killed", "Timeout");
  const score = killed / states.length;
  failed ||= score < leastKilled(name);
  const columns = [states.length, killed, count("Survived"), count("NoCoverage")];
  const row = columns.map((figure) => `${figure}`.padStart(9)).join("");
  console.log(`${name.padEnd(26)}${row}   ${(100 * score).toFixed(1)} %`);
}
console.log(`Each mutant by its place: ${reports}`);
process.exitCode = failed ? 1 : 0;
