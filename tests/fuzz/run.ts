import { parseArgs } from "node:util";
import { campaign } from "./campaign.ts";
import { doorFuzzers } from "./doorFuzzers.ts";
import { fuzzers } from "./fuzzers.ts";

/* npm run fuzz [-- --share 0.1] [-- --seed 2] [-- --only CSV]: every input, mutated; a table and status 1 on a failure. */

const { values } = parseArgs({
  options: {
    share: { type: "string", default: "1" },
    seed: { type: "string", default: "1" },
    only: { type: "string", default: "" },
  },
});

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
process.exitCode = failed > 0 ? 1 : 0;
