import { readdirSync, readFileSync } from "node:fs";
import type { CheckRecord } from "../../src/records/check/checkRecord.ts";
import { readCheckText } from "../../src/records/check/readCheck.ts";
import { inModelUnits } from "../../src/saying/modelUnits.ts";

const folder = "demo-data/checks";

export const demoNames: readonly string[] = readdirSync(folder)
  .filter((file) => file.endsWith(".json"))
  .map((file) => file.replace(".json", ""));

/** A demo check as the app has it: of today's version, whichever its file is of. */
export function demoRecord(name: string): CheckRecord {
  const read = readCheckText(readFileSync(`${folder}/${name}.json`, "utf8"), name);
  if (!read.ok) throw new Error(inModelUnits(read.fault.sentence));
  return read.value;
}
