import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeEach, expect, it } from "vitest";
import { generateRecords } from "../support/generateRecords.ts";
import { kept } from "./support/deskKept.ts";
import { DeskPage } from "./support/deskPage.ts";
import { deskWithFolder } from "./support/deskWithFolder.ts";
import type { Phone } from "./support/phone.ts";
import type { Site } from "./support/site.ts";

const stage = deskWithFolder();
let site: Site;
let office: Phone;
let folder: string;

beforeEach(() => {
  ({ site, phone: office, folder } = stage);
});

/** A desk whose page stops at `after` calls of a method, as one does that is closed in the middle of it. */
async function deskThatStops(method: "text" | "postMessage", after: number): Promise<DeskPage> {
  const page = await office.newPage();
  await page.addInitScript(
    ([name, most]) => {
      const owner = (name === "text" ? Blob : Worker).prototype as unknown as {
        [method: string]: (...values: unknown[]) => unknown;
      };
      const real = owner[name];
      let calls = 0;
      owner[name] = function (...values) {
        calls += 1;
        return calls > most ? new Promise(() => undefined) : real?.apply(this, values);
      };
    },
    [method, after] as const,
  );
  return new DeskPage(page).open(site.address);
}

it("an import whose tab is closed half-way goes on by itself to its end", async () => {
  stage.writeRecords(300, 5);
  const desk = await deskThatStops("postMessage", 130);
  await desk.page.getByLabel("Folder to take in").setInputFiles(folder);
  await desk.page.getByText("Taking in: 100 checks added").waitFor();
  await desk.page.close();

  const again = await stage.open();
  await again.page.getByText(/its page was closed, and it went on here by itself/).waitFor();
  expect(await again.ended()).toBe("Taken in: 300 checks added.");
  const { submissions, texts } = await kept(again.page);
  expect(new Set(submissions.map(({ checkId }) => checkId)).size).toBe(300);
  expect(submissions.map(({ key }) => key).sort()).toEqual([...texts].sort());
  await again.page.reload();
  await again.rows.first().waitFor();
  expect(await again.page.locator("[data-import]").count()).toBe(0);
  office.expectNoTrouble();
});

it("an import whose tab is closed while its files are read leaves nothing, and says so", async () => {
  stage.writeRecords(300, 6);
  const desk = await deskThatStops("text", 200);
  await desk.page.getByLabel("Folder to take in").setInputFiles(folder);
  await desk.page.getByText(/^Reading: \d+ files so far/).waitFor();
  await desk.page.close();

  const again = await stage.open();
  await again.page.getByText(/Nothing of it was taken in. Choose the files again./).waitFor();
  expect((await kept(again.page)).submissions).toEqual([]);
  await again.page.getByRole("button", { name: "All right" }).click();
  await again.page.getByLabel("Folder to take in").setInputFiles(folder);
  expect(await again.ended()).toBe("Taken in: 300 checks added.");
  office.expectNoTrouble();
});

it("a folder that is dropped is taken in with the folders inside it", async () => {
  stage.writeRecords(120, 12);
  const inner = join(folder, "May", "week 2");
  mkdirSync(inner, { recursive: true });
  let number = 0;
  for (const record of generateRecords(7, 13)) {
    number += 1;
    writeFileSync(join(inner, `inner-${number}.json`), JSON.stringify(record));
  }
  writeFileSync(join(folder, "May", "note.txt"), "Sent by hand.");
  const desk = await stage.open();
  const session = await office.context.newCDPSession(desk.page);
  for (const type of ["dragEnter", "dragOver", "drop"] as const) {
    await session.send("Input.dispatchDragEvent", {
      type,
      x: 600,
      y: 400,
      data: { items: [], files: [folder], dragOperationsMask: 1 },
    });
    if (type === "dragOver") await desk.page.locator(".desk-over").waitFor();
  }
  expect(await desk.ended()).toBe("Taken in: 127 checks added, 1 not taken in.");
  expect(await desk.refused.textContent()).toMatch(/^note\.txt: .*holds no check/);
  office.expectNoTrouble();
});
