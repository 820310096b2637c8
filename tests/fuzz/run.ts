import "../../src/saying/everyText.ts";
import { spawnSync } from "node:child_process";
import { parseArgs } from "node:util";
import { campaign } from "./campaign.ts";
import { doorFuzzers } from "./doorFuzzers.ts";
import { fuzzers } from "./fuzzers.ts";

/* npm run fuzz [-- --share 0.1] [-- --seed 2] [-- --only CSV]: every input, mutated; a table and status 1 on a failure.
 * `--at-once 2000` stores so many before the screens that show one of them are shown: fewer of those. */

const { values } = parseArgs({
  options: {
    share: { type: "string", default: "1" },
    seed: { type: "string", default: "1" },
    only: { type: "string", default: "" },
    "at-once": { type: "string", default: "500" },
  },
});

/** Of those that go from the door on to the screens. */
const screenCases = 100_000;

let cases = 0;
let failed = 0;
process.stdout.write("input          cases     taken   assessed  failed   seconds\n");
for (const fuzzer of [...fuzzers, ...doorFuzzers].filter(({ name }) =>
  name.includes(values.only),
)) {
  const result = campaign(fuzzer, {
    seed: Number(values.seed),
    cases: Math.ceil(fuzzer.cases * Number(values.share)),
    assessEvery: 200,
  });
  cases += result.cases;
  failed += result.failures.length;
  const columns = [result.cases, result.accepted, result.assessed, result.failures.length];
  const row = columns.map((count) => `${count}`.padStart(9)).join(" ");
  process.stdout.write(
    `${result.name.padEnd(12)} ${row} ${result.seconds.toFixed(1).padStart(9)}\n`,
  );
  for (const { seed, what, input } of result.failures) {
    process.stdout.write(`  case ${seed}: ${what}\n  ${JSON.stringify(input.slice(0, 2000))}\n`);
  }
}
process.stdout.write(`${cases} cases, ${failed} failed\n`);

/** From the door into a storage and on to the screens, a process for so many, since a page of happy-dom grows. */
const casesAtOnce = 20_000;
const toScreensName = "door, on to the screens";
const toScreens = toScreensName.includes(values.only)
  ? Math.ceil(screenCases * Number(values.share))
  : 0;
for (let first = 0; first < toScreens; first += casesAtOnce) {
  const count = Math.min(casesAtOnce, toScreens - first);
  const run = spawnSync(
    "npx",
    ["vitest", "run", "--project", "component", "tests/screens/doorCampaign.test.tsx"],
    {
      encoding: "utf8",
      env: {
        ...process.env,
        STOPFIT_DOOR_CASES: `${count}`,
        STOPFIT_DOOR_FIRST: `${first}`,
        STOPFIT_DOOR_SEED: values.seed,
        STOPFIT_DOOR_AT_ONCE: values["at-once"],
      },
    },
  );
  const told = run.stdout.split("\n").filter((line) => line.startsWith(toScreensName));
  process.stdout.write(run.status === 0 ? `${told.join("\n")}\n` : `${run.stdout}${run.stderr}`);
  if (run.status !== 0) failed += 1;
}
process.exitCode = failed > 0 ? 1 : 0;
