import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { ensureChromium, ensureHeadlessShell } from "./chromium.mjs";
import { ensureDependencies } from "./dependencies.mjs";
import { ensureNatsServer, natsServerMissing } from "./natsServer.mjs";
import { ensureOtherEngines } from "./otherEngines.mjs";
import { runTool, runToolHeld } from "./run.mjs";
import { addCounts, closingLine, countsOf, failuresOf, noCounts } from "./testCounts.mjs";

process.chdir(resolve(dirname(fileURLToPath(import.meta.url)), "../.."));

// Colours are for people at a terminal; in a log they are noise.
if (!process.stdout.isTTY) process.env.NO_COLOR = "1";

const troubles = [];
const failures = [];
let counts = noCounts;
const work = mkdtempSync(join(tmpdir(), "stopfit-test-"));

function heading(words) {
  console.log(`\n== ${words}`);
}

async function step(words, action) {
  heading(words);
  const started = Date.now();
  const code = await action();
  console.log(
    `${words}: ${code === 0 ? "good" : "FAILED"} (${Math.round((Date.now() - started) / 1000)} s)`,
  );
  if (code !== 0) troubles.push(words);
  return code === 0;
}

const toolsAtOnce = 3;

/** Tools that do not need each other, a few at a time; each is told as it ends. */
async function beside(tools) {
  heading("Checks and builds, beside each other");
  const waiting = [...tools];
  const one = async () => {
    for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) {
      const [words, path, args, options = {}] = next;
      const started = Date.now();
      const { code, output } = await runToolHeld(path, args, options);
      const seconds = Math.round((Date.now() - started) / 1000);
      process.stdout.write(output);
      console.log(`${words}: ${code === 0 ? "good" : "FAILED"} (${seconds} s)`);
      if (code !== 0) troubles.push(words);
    }
  };
  await Promise.all(Array.from({ length: toolsAtOnce }, one));
}

/** A production build with the demo checks; `release` in place of the package's own version. */
function buildInto(folder, release, more = {}) {
  const own = { NODE_ENV: "production", VITE_DEMO: "1", VITE_RELEASE: release };
  const env = { ...process.env, ...own, ...more };
  return ["vite/bin/vite.js", ["build", "--logLevel", "warn", "--outDir", folder], { env }];
}

function vitest(project, environment = process.env, { mayAllSkip = false } = {}) {
  const report = join(work, `${project}.json`);
  return async () => {
    const code = await runTool(
      "vitest/vitest.mjs",
      [
        "run",
        "--project",
        project,
        "--reporter=default",
        "--reporter=json",
        `--outputFile.json=${report}`,
      ],
      { env: environment },
    );
    if (!existsSync(report)) return code === 0 ? 1 : code;
    const told = JSON.parse(readFileSync(report, "utf8"));
    failures.push(...failuresOf(told, process.cwd()));
    const counted = countsOf(told);
    counts = addCounts(counts, counted);
    return code === 0 && (counted.failed > 0 || (counted.passed === 0 && !mayAllSkip)) ? 1 : code;
  };
}

async function all() {
  const trouble = await ensureDependencies();
  if (trouble) {
    console.error(trouble);
    troubles.push("install");
    return;
  }
  const dist = join(work, "dist");
  const laterDist = join(work, "later");
  const pseudoDist = join(work, "pseudo");
  const { version } = JSON.parse(readFileSync("package.json", "utf8"));
  await beside([
    ["Build", ...buildInto(dist, version)],
    ["Build of a later release", ...buildInto(laterDist, `${version}-later`)],
    [
      "Build in the language for tests",
      ...buildInto(pseudoDist, version, { STOPFIT_WORDS: "pseudo" }),
    ],
    [
      "Who imports whom",
      "dependency-cruiser/bin/dependency-cruise.mjs",
      ["src", "--config", "src/tooling/rooms/rules.mjs"],
    ],
    ["Unused files, exports and dependencies", "knip/bin/knip.js", []],
    ["Lint", "@biomejs/biome/bin/biome", ["check", "--error-on-warnings", "."]],
    ["Type check", "src/tooling/typecheck.mjs", []],
  ]);
  const built = [dist, laterDist, pseudoDist].every((folder) =>
    existsSync(join(folder, "index.html")),
  );
  if ((await ensureNatsServer()) === null) {
    console.log(`\n${natsServerMissing} The tests that need it are skipped and counted.`);
  }
  // One after the other: mixed, neither keeps its processes from file to file.
  await step("Unit tests", vitest("unit"));
  await step("Component tests", vitest("component"));

  const chromium = await ensureChromium();
  const shell = chromium.trouble ? null : await ensureHeadlessShell();
  await step("Browser tests", async () => {
    if (chromium.trouble) {
      console.error(chromium.trouble);
      return 1;
    }
    if (!built) {
      console.error("There is no build to test.");
      return 1;
    }
    const environment = {
      ...process.env,
      CHROMIUM_PATH: chromium.path,
      ...(shell && { CHROMIUM_SHELL_PATH: shell }),
      STOPFIT_DIST: dist,
      STOPFIT_LATER_DIST: laterDist,
      STOPFIT_PSEUDO_DIST: pseudoDist,
    };
    return vitest("browser", environment)();
  });
  for (const missing of await ensureOtherEngines()) console.log(`\n${missing}`);
  if (built) {
    const environment = { ...process.env, STOPFIT_DIST: dist };
    await step("Firefox and WebKit", vitest("engines", environment, { mayAllSkip: true }));
  }
}

try {
  await all();
} catch (error) {
  console.error(error);
  troubles.push("the test run itself");
} finally {
  rmSync(work, { recursive: true, force: true });
}

console.log(troubles.length === 0 ? "\nAll good." : `\nFAILED: ${troubles.join(", ")}.`);
for (const failure of failures) console.log(failure);
console.log(closingLine(counts));
process.exitCode = troubles.length === 0 && counts.failed === 0 ? 0 : 1;
