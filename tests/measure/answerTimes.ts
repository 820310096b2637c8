import type { Browser, Page } from "playwright-core";
import { AnswerPage } from "../browser/support/answerPage.ts";
import { CheckList } from "../browser/support/checkList.ts";
import { CheckSteps } from "../browser/support/checkSteps.ts";
import { demoRecord } from "../browser/support/everyStep.ts";
import type { Site } from "../browser/support/site.ts";
import { inMillimetres } from "../browser/support/typist.ts";
import { measuredPhone } from "./measuredPhone.ts";
import { arithmeticMs, whileSlowed } from "./slowChromium.ts";
import { type Asked, askedOfWorkers, forgetAsked, logWorkers } from "./workerLog.ts";

export interface AnswerTimes {
  /** How much slower the same arithmetic ran in the page. */
  readonly measuredFactor: number;
  readonly workerComplete: number[];
  /** From a changed digit to its verdict painted beside the step. */
  readonly verdictBesideStep: number[];
  /** From the tap on "Answer" to the verdict's words painted. */
  readonly answerOpened: number[];
  readonly map: number[];
}

const rounds = 7;

/** Changes the reading and waits, in the page itself, until its verdict stands beside the step. */
async function typeForVerdict(page: Page, text: string): Promise<number> {
  return page.evaluate(async (typed) => {
    const field = document.querySelector<HTMLInputElement>("main input[type=text]");
    if (!field) throw new Error("There is no reading here.");
    const begun = performance.now();
    field.value = typed;
    field.dispatchEvent(new InputEvent("input", { bubbles: true }));
    await new Promise<void>((done) => {
      let worked = false;
      const look = () => {
        const state = document.querySelector<HTMLElement>(".live-verdict")?.dataset.state;
        worked ||= state === "working";
        if (!worked || state !== "settled") return;
        observer.disconnect();
        // After the frame that shows it.
        requestAnimationFrame(() => {
          const { port1, port2 } = new MessageChannel();
          port1.onmessage = () => done();
          port2.postMessage(null);
        });
      };
      const observer = new MutationObserver(look);
      observer.observe(document.body, {
        subtree: true,
        childList: true,
        characterData: true,
        attributes: true,
      });
      look();
    });
    return performance.now() - begun;
  }, text);
}

/** Taps on "Answer" and waits, in the page itself, until the verdict stands there. */
async function tapForVerdict(page: Page): Promise<number> {
  return page.evaluate(async () => {
    const links = [...document.querySelectorAll("a")];
    const link = links.find((candidate) => candidate.textContent?.trim() === "Answer");
    if (!link) throw new Error("There is no way to the answer here.");
    const tapped = performance.now();
    link.click();
    const words = /^(It fits|Fits, with a warning|It doesn't fit|Not sure yet)$/;
    const stands = () => words.test(document.querySelector("h1")?.textContent?.trim() ?? "");
    await new Promise<void>((done) => {
      const look = () => {
        if (!stands()) return;
        observer.disconnect();
        requestAnimationFrame(() => {
          const { port1, port2 } = new MessageChannel();
          port1.onmessage = () => done();
          port2.postMessage(null);
        });
      };
      const observer = new MutationObserver(look);
      observer.observe(document.body, { subtree: true, childList: true, characterData: true });
      look();
    });
    return performance.now() - tapped;
  });
}

function timeTo(asked: Asked | undefined, kind: string): number {
  const reply = asked?.replies.find((each) => each.kind === kind);
  return asked && reply ? reply.at - asked.sent : Number.NaN;
}

async function goToStep(page: Page, step: string, name = "arm-fits"): Promise<void> {
  await page.evaluate(
    (hash) => {
      location.hash = hash;
    },
    `#/check/${demoRecord(name).id}/${step}`,
  );
}

async function once(page: Page, steps: CheckSteps, gap: string, times: AnswerTimes) {
  await goToStep(page, "left.gap");
  await steps.reading().waitFor();
  await page.locator(".live-verdict[data-state=settled]").waitFor();
  await forgetAsked(page);
  times.verdictBesideStep.push(await typeForVerdict(page, gap));
  await steps.kept.waitFor();
  const answer = (await askedOfWorkers(page)).find(({ kind }) => kind === "assess");
  times.workerComplete.push(timeTo(answer, "complete"));
  times.answerOpened.push(await tapForVerdict(page));
  await new AnswerPage(page).complete();
  await page.waitForFunction(() => {
    const asked = (globalThis as unknown as { askedOfWorkers: Map<number, Asked> }).askedOfWorkers;
    return [...asked.values()].some(
      ({ kind, replies }) => kind === "map" && replies.some(({ last }) => last),
    );
  });
  const asked = await askedOfWorkers(page);
  const map = asked.find(({ kind, replies }) => kind === "map" && replies.some(({ last }) => last));
  times.map.push((map?.replies.find(({ last }) => last)?.at ?? Number.NaN) - (map?.sent ?? 0));
}

/** A demo check's answer, and back to its cautions, which are read. */
async function openChecked(page: Page, site: Site, name: string): Promise<CheckSteps> {
  const list = await new CheckList(page).open(site.address);
  await list.checkOf(demoRecord(name)).click();
  await new AnswerPage(page).complete();
  const steps = new CheckSteps(page, inMillimetres);
  await goToStep(page, "cautions", name);
  await steps.acknowledge();
  return steps;
}

/** From a changed digit of the left gap to its verdict painted beside the step, ms, the page throttled. */
export async function measureTyping(
  browser: Browser,
  site: Site,
  factor: number,
  name: string,
): Promise<readonly number[]> {
  const phone = await measuredPhone(browser);
  try {
    const page = await phone.newPage();
    const steps = await openChecked(page, site, name);
    const session = await phone.context.newCDPSession(page);
    await session.send("Emulation.setCPUThrottlingRate", { rate: factor });
    await goToStep(page, "left.gap", name);
    await steps.reading().waitFor();
    await page.locator(".live-verdict[data-state=settled]").waitFor();
    const times: number[] = [];
    for (let round = 0; round <= rounds; round++) {
      times.push(await typeForVerdict(page, `${20 + round / 4}`));
      await steps.kept.waitFor();
    }
    return times.slice(1);
  } finally {
    await phone.close();
  }
}

/**
 * Changes a reading of a demo check with two corners and goes to its answer, several times, with every
 * thread of the page slowed, or, as Chromium's own throttling does it, the page's without its workers.
 * Times are those of the page's own clock.
 */
export async function measureAnswerTimes(
  browser: Browser,
  site: Site,
  factor: number,
  how: "all threads" | "page" = "all threads",
): Promise<AnswerTimes> {
  const phone = await measuredPhone(browser);
  await logWorkers(phone.context);
  try {
    const page = await phone.newPage();
    const steps = await openChecked(page, site, "arm-fits");
    const times: AnswerTimes = {
      measuredFactor: 1,
      workerComplete: [],
      verdictBesideStep: [],
      answerOpened: [],
      map: [],
    };
    await once(page, steps, "19", {
      ...times,
      verdictBesideStep: [],
      answerOpened: [],
      workerComplete: [],
      map: [],
    });
    const plain = await arithmeticMs(page);
    const all = async () => {
      const slowed = await arithmeticMs(page);
      for (let round = 0; round < rounds; round++) {
        await once(page, steps, `${20 + round / 4}`, times);
      }
      return slowed / plain;
    };
    if (how === "page") {
      const session = await phone.context.newCDPSession(page);
      await session.send("Emulation.setCPUThrottlingRate", { rate: factor });
      return { ...times, measuredFactor: await all() };
    }
    const measuredFactor = factor === 1 ? await all() : await whileSlowed(browser, factor, all);
    return { ...times, measuredFactor };
  } finally {
    await phone.close();
  }
}
