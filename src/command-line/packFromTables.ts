import { readFileSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { packOfTables } from "../records/packTables/packOfTables.ts";
import type { TableText } from "../records/packTables/tableRows.ts";
import "../saying/everyText.ts";
import { inModelUnits } from "../saying/modelUnits.ts";
import { makerFaults } from "../tooling/maker/makerBuild.ts";
import * as messages from "../words/compiled/command-line.ts";
import { startFolder } from "./startFolder.ts";

const usage = messages.makePackOfTables;

const names = ["maker", "stops", "curves", "platforms"] as const;

/** As spreadsheet programs save it: UTF-8, or else the western code page of Windows. */
function textOf(path: string): string {
  const bytes = readFileSync(path);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
}

function main(given: readonly string[]): number {
  const [folder, file] = given;
  if (folder === undefined || folder === "--help" || given.length > 2) {
    console.error(usage);
    return folder === "--help" ? 0 : 2;
  }
  const start = startFolder("tables-to-pack");
  const tables: { [Name in (typeof names)[number]]?: TableText } = {};
  for (const name of names) {
    const path = join(resolve(start, folder), `${name}.csv`);
    try {
      tables[name] = { file: `${name}.csv`, text: textOf(path) };
    } catch {
      console.error(messages.canNotBeRead({ path }));
      return 1;
    }
  }
  const { maker, stops, curves, platforms } = tables;
  if (!maker || !stops || !curves || !platforms) return 1;
  const made = packOfTables({ maker, stops, curves, platforms });
  const faults = made.ok
    ? makerFaults(made.pack, resolve(start, folder)).map((fault) => messages.makerCsv({ fault }))
    : made.faults.map(inModelUnits);
  if (!made.ok || faults.length > 0) {
    for (const fault of faults) console.error(fault);
    console.error(messages.faultsNoPackWritten({ faults: faults.length }));
    return 1;
  }
  const out = file === undefined ? join(resolve(start, folder), "pack.json") : resolve(start, file);
  writeFileSync(out, `${JSON.stringify(made.pack, null, 1)}\n`);
  const { pack } = made;
  console.log(
    messages.packWritten({
      file: out,
      stops: pack.stops.length,
      platforms: pack.platforms.length,
      edition: pack.edition ?? "",
    }),
  );
  return 0;
}

process.exitCode = main(process.argv.slice(2));
