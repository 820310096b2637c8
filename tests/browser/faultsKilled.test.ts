import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, inject, it } from "vitest";
import { randomFrom } from "../support/generateRecords.ts";
import {
  crash,
  FaultBench,
  type Filling,
  faultRecord,
  killRenderers,
} from "./support/faultBench.ts";
import { launchShell, Phone } from "./support/phone.ts";
import { Site } from "./support/site.ts";
import { Tally, Witness } from "./support/witness.ts";

// A page killed at random moments of a check, by three ways that leave it no time to say good-bye or only
// the little that closing a tab leaves. Acknowledged is what the screen showed together with “Kept”.

const kills = 51;
const seed = 20_260_502;
const ways = ["tab closed", "page crashed", "page processes killed"] as const;

let browser: Browser;
let site: Site;
let phone: Phone;
const tally = new Tally();

beforeAll(async () => {
  browser = await launchShell();
  site = new Site();
  await site.publish(inject("dist"));
  phone = await Phone.open(browser, { offlineCopy: true });
});

afterAll(async () => {
  console.log(`\n${tally.text}\n`);
  await phone.close();
  await site.close();
  await browser.close();
});

async function kill(way: (typeof ways)[number], { page }: Filling): Promise<void> {
  if (way === "tab closed") return page.close({ runBeforeUnload: false });
  if (way === "page crashed") await crash(page);
  else await Promise.all([page.waitForEvent("crash"), killRenderers(browser)]);
  await page.close();
}

it(`${kills} kills at random moments of a check lose no acknowledged reading`, async () => {
  const random = randomFrom(seed);
  const bench = new FaultBench(site, phone, await Witness.of(phone.context), tally);
  const lost: string[] = [];
  let reached = 0;
  let filling = await bench.begin("axle");
  for (let count = 0; count < kills; count += 1) {
    const way = ways[count % ways.length] ?? "tab closed";
    // A random number of screens on, and a random while into the next: before a key, within the quiet
    // time before a write, in the middle of the write, after it.
    const screens = Math.floor(random() * 4);
    const rest = random() * 400;
    let passed = 0;
    let arrive: () => void = () => undefined;
    const arrived = new Promise<void>((resolve) => {
      arrive = resolve;
    });
    const typing = filling.steps
      .fillUpTo("finish", faultRecord, "pack", () => {
        passed += 1;
        if (passed > screens) arrive();
      })
      .then(
        () => true,
        () => false,
      )
      .finally(() => arrive());
    await arrived;
    await new Promise((resolve) => setTimeout(resolve, rest));
    await kill(way, filling);
    const done = await typing;
    const claims = await bench.owed(filling.id);
    filling = await bench.reopen(filling.id);
    lost.push(...(await bench.settle(way, claims, filling)));
    if (done || filling.steps.step === "finish") {
      reached += 1;
      await filling.page.close();
      filling = await bench.begin();
    }
  }
  expect(lost).toEqual([]);
  expect(tally.total).toMatchObject({ faults: kills, lost: 0 });
  // The check was really got on with between the kills.
  expect(reached).toBeGreaterThan(0);
  expect(tally.total.readings).toBeGreaterThan(kills);
}, 600_000);
