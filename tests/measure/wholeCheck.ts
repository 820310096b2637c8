import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { ensureChromium } from "../../src/tooling/chromium.mjs";
import { runTool } from "../../src/tooling/run.mjs";
import { AnswerPage } from "../browser/support/answerPage.ts";
import { CheckList } from "../browser/support/checkList.ts";
import { CheckSteps } from "../browser/support/checkSteps.ts";
import { demoRecord } from "../browser/support/everyStep.ts";
import { launchChromium } from "../browser/support/phone.ts";
import { Site } from "../browser/support/site.ts";
import { inMillimetres } from "../browser/support/typist.ts";
import { measuredPhone } from "./measuredPhone.ts";

/*
 * What a whole check asks of a person: taps, keys and words by screen, for a first check and for one by
 * somebody who has made three. Reading at 200 words a minute, a tap or key at a second each. What is left
 * of twenty minutes is for the tape.
 */

const wordsPerMinute = 200;
const secondsPerTap = 1;
const minutesBesideVehicle = 20;

/** Readings by tape, gauge or scale; what is typed from papers takes no more than its keys. */
const takenAtVehicle =
  /^(left|right)\.(gap|rideHeight|cornerMassKg|pressedHeight|seatToPad|limits\.\d)|Angle$|Lean$|^pivotTo|^track|^stopSpacing|^otherArm|^joint|^tyreOffset|^wheelCentre/;

interface Screen {
  readonly step: string;
  readonly taps: number;
  readonly keys: number;
  readonly words: number;
}

interface Counted {
  taps: number;
  keys: number;
}

const countInput = `
  globalThis.counted = { taps: 0, keys: 0 };
  addEventListener("pointerdown", (event) => { if (event.isTrusted) counted.taps += 1; }, true);
  addEventListener("input", (event) => {
    const { target } = event;
    if (target.type !== "text" && target.type !== "search") return;
    counted.keys += target.value.length;
    // A field that its screen enters by itself needs no tap; every other one is entered by hand.
    if (target.dataset.first === undefined && target.dataset.entered === undefined) counted.taps += 1;
    target.dataset.entered = "";
  }, true);
`;

/**
 * Words of the screen that stand there unfolded, its buttons among them. Not those for screen readers alone,
 * not what a closed list would offer, and not the number pad: its keys are counted as they are pressed.
 */
function wordsShown(page: Page): Promise<number> {
  return page.evaluate(() => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(".unseen, .keypad { display: none !important; }");
    document.adoptedStyleSheets = [sheet];
    const text = [...document.querySelectorAll<HTMLElement>("main, .action-bar")]
      // biome-ignore lint/performance/useDomNodeTextContent: what is folded or hidden is not read
      .map((part) => part.innerText)
      .join(" ");
    document.adoptedStyleSheets = [];
    const words = (said: string) =>
      said.split(/\s+/).filter((word) => /\p{L}|\d/u.test(word)).length;
    const offered = [...document.querySelectorAll("main option:not(:checked)")].filter(
      (option) => (option.closest("select")?.getClientRects().length ?? 0) > 0,
    );
    return offered.reduce((left, { textContent }) => left - words(textContent ?? ""), words(text));
  });
}

async function walk(
  page: Page,
  site: string,
  name: string,
  stopFrom: "hand" | "pack" | "tape",
): Promise<readonly Screen[]> {
  const record = demoRecord(name);
  const list = await new CheckList(page).open(site);
  await list.newCheck.click();
  const steps = new CheckSteps(page, inMillimetres);
  await steps.field("Vehicle").waitFor();
  const screens: Screen[] = [];
  const take = () =>
    page.evaluate(() => {
      const { counted } = globalThis as unknown as { counted: Counted };
      const now = { ...counted };
      Object.assign(counted, { taps: 0, keys: 0 });
      return now;
    });
  await take();
  let words = await wordsShown(page);
  // The tool is the one that was used last: nobody types its ± anew.
  steps.typesTolerances = false;
  while (steps.step !== "answer") {
    const { step } = steps;
    await steps.fill(record, stopFrom);
    const filled = await wordsShown(page);
    await steps.onward();
    screens.push({ step, ...(await take()), words: Math.max(words, filled) });
    words = steps.step === "answer" ? 0 : await wordsShown(page);
  }
  if (stopFrom === "tape") await page.locator(".verdict-reason").waitFor();
  else await new AnswerPage(page).complete();
  return screens;
}

function secondsOf({ taps, keys, words }: Screen): number {
  return (60 * words) / wordsPerMinute + secondsPerTap * (taps + keys);
}

function sumOf(screens: readonly Screen[]): Screen {
  return screens.reduce(
    (sum, { taps, keys, words }) => ({
      step: sum.step,
      taps: sum.taps + taps,
      keys: sum.keys + keys,
      words: sum.words + words,
    }),
    { step: "all", taps: 0, keys: 0, words: 0 },
  );
}

function say(name: string, first: readonly Screen[], later: readonly Screen[]): void {
  console.log(`\n${name}: a first check, and one after three`);
  const row = (step: string, cells: readonly string[]) =>
    console.log(step.padEnd(28) + cells.map((cell) => cell.padStart(9)).join(""));
  row("screen", ["taps", "keys", "words", "s", "taps", "keys", "words", "s"]);
  const cells = (screen: Screen | undefined) =>
    screen
      ? [`${screen.taps}`, `${screen.keys}`, `${screen.words}`, secondsOf(screen).toFixed(0)]
      : ["–", "–", "–", "–"];
  for (const screen of first) {
    row(screen.step, [...cells(screen), ...cells(later.find(({ step }) => step === screen.step))]);
  }
  const sums = [sumOf(first), sumOf(later)] as const;
  row("all", [...cells(sums[0]), ...cells(sums[1])]);
  const measured = later.filter(({ step, keys }) => keys > 0 && takenAtVehicle.test(step));
  const before = first.slice(0, first.findIndex(({ step }) => step === "layout") + 1);
  console.log(
    `from New check: ${sumOf(before).taps} taps to the first reading, ${sumOf(first).taps} taps and ${first.length} screens to the answer`,
  );
  const left = 60 * minutesBesideVehicle - secondsOf(sums[1]);
  console.log(
    `after three: ${(secondsOf(sums[1]) / 60).toFixed(1)} min on the phone; of ${minutesBesideVehicle} min that leaves ${(left / measured.length).toFixed(0)} s for each of ${measured.length} readings at the vehicle`,
  );
}

const only = process.argv[2];
const trouble = (await ensureChromium()).trouble;
if (trouble) throw new Error(trouble);
const dist = process.env.STOPFIT_DIST ?? mkdtempSync(join(tmpdir(), "stopfit-taps-"));
const site = new Site();
const browser = await launchChromium();
try {
  if (process.env.STOPFIT_DIST === undefined) {
    const code = await runTool(
      "vite/bin/vite.js",
      ["build", "--logLevel", "error", "--outDir", dist],
      {
        env: { ...process.env, NODE_ENV: "production", VITE_DEMO: "1" },
      },
    );
    if (code !== 0) throw new Error("The build failed; its message is above.");
  }
  await site.publish(dist);
  for (const [name, stopFrom] of [
    ["arm-fits", "pack"],
    ["axle-towing-early", "pack"],
    ["two-arms-measured", "pack"],
    // With a tape alone, and no test sheet of the stop.
    ["arm-fits", "tape"],
  ] as const) {
    if (only !== undefined && only !== name) continue;
    const phone = await measuredPhone(browser);
    await phone.context.addInitScript(countInput);
    const page = await phone.newPage();
    const first = await walk(page, site.address, name, stopFrom);
    // As the app notes it once three checks were filled in on a phone (screens/guide/practice.ts).
    await page.evaluate(() => localStorage.setItem("stopfit.measured", '["a","b","c"]'));
    const later = await walk(page, site.address, name, stopFrom);
    say(stopFrom === "tape" ? `${name}, with a tape alone` : name, first, later);
    await phone.close();
  }
} finally {
  await browser.close();
  await site.close();
  if (process.env.STOPFIT_DIST === undefined) rmSync(dist, { recursive: true, force: true });
}
