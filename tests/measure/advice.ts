import { mkdtempSync, readdirSync, rmSync } from "node:fs";
import { setPriority, tmpdir } from "node:os";
import { join } from "node:path";
import { ensureChromium } from "../../src/tooling/chromium.mjs";
import { launchChromium } from "../browser/support/phone.ts";
import { Site } from "../browser/support/site.ts";
import { type AdviceTimes, measureAdviceTimes } from "./adviceTimes.ts";
import { buildDemoInto } from "./buildDemo.ts";

/**
 * How long a prescription and the list of stops take on every demo check, page and workers slowed:
 * `npm run advice-times`, or `-- 4 3 arm-fits` for four times, three rounds, one check.
 */
const [factor = "4", rounds = "3", only] = process.argv.slice(2);

// Chromium takes this over, so that others on the machine hardly count; only root may.
try {
  setPriority(-20);
} catch {
  // Then it is as exact as the machine is idle.
}

const middle = (values: readonly number[]) =>
  [...values].sort((one, other) => one - other)[Math.floor(values.length / 2)] ?? Number.NaN;

const trouble = (await ensureChromium()).trouble;
if (trouble) throw new Error(trouble);
const given = process.env.STOPFIT_DIST;
const dist = given ?? mkdtempSync(join(tmpdir(), "stopfit-advice-"));
const site = new Site();
const browser = await launchChromium();
try {
  if (given === undefined) await buildDemoInto(dist);
  await site.publish(dist);
  const names = readdirSync("demo-data/checks")
    .map((file) => file.replace(/\.json$/, ""))
    .filter((name) => only === undefined || name === only);
  const line = (name: string, columns: readonly (string | number)[]) =>
    console.log(name.padEnd(26), ...columns.map((column) => `${column}`.padStart(9)));
  console.log(`Page and workers slowed ${factor} times; ms, the middle of ${rounds}:`);
  line("", ["slowed", "verdict", "to do", "all told", "list", "stops"]);
  for (const name of names) {
    const times: AdviceTimes[] = [];
    for (let round = 0; round < Number(rounds); round++) {
      times.push(await measureAdviceTimes(browser, site, Number(factor), name));
    }
    const of = (figure: (one: (typeof times)[number]) => number) =>
      Math.round(middle(times.map(figure)));
    line(name, [
      middle(times.map(({ measuredFactor }) => measuredFactor)).toFixed(1),
      of(({ verdict }) => verdict),
      of(({ prescription }) => prescription),
      of(({ whole }) => whole),
      of(({ ranked }) => ranked),
      times[0]?.stops ?? 0,
    ]);
  }
} finally {
  await browser.close();
  await site.close();
  if (given === undefined) rmSync(dist, { recursive: true, force: true });
}
