import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { generateRecords } from "./generateRecords.ts";

const { values } = parseArgs({
  options: {
    count: { type: "string", default: "10000" },
    seed: { type: "string", default: "1" },
    out: { type: "string", default: "generated-records" },
  },
});

mkdirSync(values.out, { recursive: true });
let written = 0;
for (const record of generateRecords(Number(values.count), Number(values.seed))) {
  written += 1;
  const name = `check-${String(written).padStart(6, "0")}.json`;
  writeFileSync(join(values.out, name), `${JSON.stringify(record)}\n`);
}
process.stdout.write(`${written} records in ${values.out}\n`);
