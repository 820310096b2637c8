import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach } from "vitest";
import { generateRecords } from "../../support/generateRecords.ts";
import { DeskPage } from "./deskPage.ts";
import { type PhoneOnSite, phoneOnSite } from "./phoneOnSite.ts";

/** A desk, and a folder for what is sent to it; set before each test. */
export interface DeskWithFolder extends PhoneOnSite {
  folder: string;
  /** The desk on a page of its own. */
  open(): Promise<DeskPage>;
  /** Writes generated records into the folder, a file each. */
  writeRecords(count: number, seed: number): void;
}

export function deskWithFolder(): DeskWithFolder {
  const stage = phoneOnSite({ width: 1280, height: 800 });
  const desk: DeskWithFolder = Object.assign(stage, {
    folder: "",
    open: async () => new DeskPage(await stage.phone.newPage()).open(stage.site.address),
    writeRecords: (count: number, seed: number) => {
      let number = 0;
      for (const record of generateRecords(count, seed)) {
        number += 1;
        writeFileSync(join(desk.folder, `check-${number}.json`), JSON.stringify(record));
      }
    },
  });
  beforeEach(() => {
    desk.folder = mkdtempSync(join(tmpdir(), "stopfit-desk-"));
  });
  afterEach(() => rmSync(desk.folder, { recursive: true, force: true }));
  return desk;
}
