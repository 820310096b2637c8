import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { ensureChromium } from "./chromium.mjs";
import { ensureDependencies } from "./dependencies.mjs";
import { ensureNatsServer, natsServerMissing } from "./natsServer.mjs";
import { ensureOtherEngines } from "./otherEngines.mjs";
import { runTool } from "./run.mjs";
import { addCounts, closingLine, countsOf, noCounts } from "./testCounts.mjs";

process.chdir(resolve(dirname(fileURLToPath(import.meta.url)), "../.."));

// Colours are for people at a terminal; in a log they are noise.
if (!process.stdout.isTTY) process.env.NO_COLOR = "1";

const troubles = [];
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

function vitest(projects, environment = process.env, { mayAllSkip = false } = {}) {
  const report = join(work, `${projects[0]}.json`);
  const chosen = projects.flatMap((project) => ["--project", project]);
  return async () => {
    const code = await runTool(
      "vitest/vitest.mjs",
      ["run", ...chosen, "--reporter=default", "--reporter=json", `--outputFile.json=${report}`],
      { env: environment },
    );
    if (!existsSync(report)) return code === 0 ? 1 : code;
    const counted = countsOf(JSON.parse(readFileSync(report, "utf8")));
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
  await step("Type check", () => runTool("typescript/bin/tsc", ["--noEmit"]));
  await step("Lint", () =>
    runTool("@biomejs/biome/bin/biome", ["check", "--error-on-warnings", "."]),
  );
  await step("Who imports whom", () =>
    runTool("dependency-cruiser/bin/dependency-cruise.mjs", [
      "src",
      "--config",
      "src/tooling/rooms/rules.mjs",
    ]),
  );
  await step("Unused files, exports and dependencies", () => runTool("knip/bin/knip.js", []));
  if ((await ensureNatsServer()) === null) {
    console.log(`\n${natsServerMissing} The tests that need it are skipped and counted.`);
  }
  await step("Unit and component tests", vitest(["unit", "component"]));

  const dist = join(work, "dist");
  const built = await step("Build", () =>
    runTool("vite/bin/vite.js", ["build", "--logLevel", "warn", "--outDir", dist], {
      env: { ...process.env, VITE_DEMO: "1" },
    }),
  );
  const chromium = await ensureChromium();
  await step("Browser tests", async () => {
    if (chromium.trouble) {
      console.error(chromium.trouble);
      return 1;
    }
    if (!built) {
      console.error("There is no build to test.");
      return 1;
    }
    const environment = { ...process.env, CHROMIUM_PATH: chromium.path, STOPFIT_DIST: dist };
    return vitest(["browser"], environment)();
  });
  for (const missing of await ensureOtherEngines()) console.log(`\n${missing}`);
  if (built) {
    const environment = { ...process.env, STOPFIT_DIST: dist };
    await step("Firefox and WebKit", vitest(["engines"], environment, { mayAllSkip: true }));
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
console.log(closingLine(counts));
process.exitCode = troubles.length === 0 && counts.failed === 0 ? 0 : 1;
