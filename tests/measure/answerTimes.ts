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
  readonly workerStatic: number[];
  readonly workerComplete: number[];
  /** From the tap on "Answer" to the verdict's words painted. */
  readonly verdictOnScreen: number[];
  readonly map: number[];
}

const rounds = 7;

/** Taps on "Answer" and waits, in the page itself, until the verdict stands there. */
async function tapForVerdict(page: Page): Promise<number> {
  return page.evaluate(async () => {
    const links = [...document.querySelectorAll("a")];
    const link = links.find((candidate) => candidate.textContent?.trim() === "Answer");
    if (!link) throw new Error("There is no way to the answer here.");
    const tapped = performance.now();
    link.click();
    const words = /^(It fits|It fits, take care|It does not fit|Not sure yet)$/;
    const stands = () => words.test(document.querySelector("h1")?.textContent?.trim() ?? "");
    await new Promise<void>((done) => {
      const look = () => {
        if (!stands()) return;
        observer.disconnect();
        requestAnimationFrame(() => requestAnimationFrame(() => done()));
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

async function goToStep(page: Page, step: string): Promise<void> {
  await page.evaluate(
    (hash) => {
      location.hash = hash;
    },
    `#/check/${demoRecord("arm-fits").id}/${step}`,
  );
}

async function once(page: Page, steps: CheckSteps, gap: string, times: AnswerTimes) {
  await goToStep(page, "left.gap");
  await steps.reading().waitFor();
  await steps.reading().fill(gap);
  await steps.kept.waitFor();
  await forgetAsked(page);
  times.verdictOnScreen.push(await tapForVerdict(page));
  await new AnswerPage(page).complete();
  await page.waitForFunction(() => {
    const asked = (globalThis as unknown as { askedOfWorkers: Map<number, Asked> }).askedOfWorkers;
    return [...asked.values()].some(
      ({ kind, replies }) => kind === "map" && replies.some(({ last }) => last),
    );
  });
  const asked = await askedOfWorkers(page);
  const answer = asked.find(({ kind, lane }) => kind === "assess" && lane.endsWith("answer"));
  times.workerStatic.push(timeTo(answer, "static"));
  times.workerComplete.push(timeTo(answer, "complete"));
  const map = asked.find(({ kind, replies }) => kind === "map" && replies.some(({ last }) => last));
  times.map.push((map?.replies.find(({ last }) => last)?.at ?? Number.NaN) - (map?.sent ?? 0));
}

/**
 * Changes a reading of a demo check with two corners and goes to its answer, several times, with every
 * thread of the page slowed. Times are those of the page's own clock.
 */
export async function measureAnswerTimes(
  browser: Browser,
  site: Site,
  factor: number,
): Promise<AnswerTimes> {
  const phone = await measuredPhone(browser);
  await logWorkers(phone.context);
  try {
    const page = await phone.newPage();
    const list = await new CheckList(page).open(site.address);
    await list.checkOf(demoRecord("arm-fits")).click();
    await new AnswerPage(page).complete();
    const steps = new CheckSteps(page, inMillimetres);
    await goToStep(page, "cautions");
    await steps.main.getByRole("checkbox").first().waitFor();
    await steps.tickAll();
    const times: AnswerTimes = {
      measuredFactor: 1,
      workerStatic: [],
      workerComplete: [],
      verdictOnScreen: [],
      map: [],
    };
    await once(page, steps, "20", {
      ...times,
      verdictOnScreen: [],
      workerStatic: [],
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
    const measuredFactor = factor === 1 ? await all() : await whileSlowed(browser, factor, all);
    return { ...times, measuredFactor };
  } finally {
    await phone.close();
  }
}
