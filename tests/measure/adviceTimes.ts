import type { Browser, Page } from "playwright-core";
import { CheckList } from "../browser/support/checkList.ts";
import { demoRecord } from "../browser/support/everyStep.ts";
import type { Site } from "../browser/support/site.ts";
import { measuredPhone } from "./measuredPhone.ts";
import { arithmeticMs, whileSlowed } from "./slowChromium.ts";
import { type Asked, askedOfWorkers, forgetAsked, logWorkers } from "./workerLog.ts";

/** Times of one check, ms of the page's own clock. */
export interface AdviceTimes {
  readonly name: string;
  /** How much slower the same arithmetic ran in the page. */
  readonly measuredFactor: number;
  /** From the tap on the check to its verdict painted. */
  readonly verdict: number;
  /** To the one thing to do painted, or to what blocks it. */
  readonly prescription: number;
  /** To the last of what would free it; the same where nothing has to. */
  readonly whole: number;
  /** From the list of stops asked for to all of them in order. */
  readonly ranked: number;
  /** Stops in that list. */
  readonly stops: number;
}

/** Taps on a check in the list and waits, in the page itself, for verdict and prescription. */
async function tapForAdvice(
  page: Page,
  id: string,
): Promise<Pick<AdviceTimes, "verdict" | "prescription"> & { tapped: number }> {
  return page.evaluate(async (wanted) => {
    const link = document.querySelector<HTMLAnchorElement>(
      `a.check-link[href^="#/check/${wanted}"]`,
    );
    if (!link) throw new Error("The check is not in the list.");
    const painted = (stands: () => boolean) =>
      new Promise<number>((done) => {
        const look = () => {
          if (!stands()) return;
          observer.disconnect();
          requestAnimationFrame(() => {
            const { port1, port2 } = new MessageChannel();
            port1.onmessage = () => done(performance.now());
            port2.postMessage(null);
          });
        };
        const observer = new MutationObserver(look);
        observer.observe(document.body, { subtree: true, childList: true, characterData: true });
        look();
      });
    const words = /^(It fits|Fits, with a warning|It doesn't fit|Not sure yet)$/;
    const tapped = performance.now();
    link.click();
    const [verdict, prescription] = await Promise.all([
      painted(() => words.test(document.querySelector("h1")?.textContent?.trim() ?? "")),
      painted(() => document.querySelector(".prescription") !== null),
    ]);
    return { tapped, verdict: verdict - tapped, prescription: prescription - tapped };
  }, id);
}

/** Waits until a question of this kind has had its last answer. */
async function lastReply(
  page: Page,
  kind: string,
): Promise<Asked["replies"][number] & { sent: number }> {
  await page.waitForFunction(
    (wanted) => {
      const { askedOfWorkers: asked } = globalThis as unknown as {
        askedOfWorkers: Map<number, Asked>;
      };
      return [...asked.values()].some(
        (each) => each.kind === wanted && each.replies.some(({ last }) => last),
      );
    },
    kind,
    { timeout: 120_000 },
  );
  const all = (await askedOfWorkers(page)).filter((each) => each.kind === kind);
  const asked = all.find(({ replies }) => replies.some(({ last }) => last)) as Asked;
  const reply = asked.replies.find(({ last }) => last) as Asked["replies"][number];
  return { ...reply, sent: asked.sent };
}

/**
 * Opens a demo check from the list, then the list of stops that fit, each for the first time on its page,
 * with every thread of the page slowed.
 */
export async function measureAdviceTimes(
  browser: Browser,
  site: Site,
  factor: number,
  name: string,
): Promise<AdviceTimes> {
  const { id } = demoRecord(name);
  const phone = await measuredPhone(browser);
  await logWorkers(phone.context);
  try {
    const page = await phone.newPage();
    const list = await new CheckList(page).open(site.address);
    await list.checkOf(demoRecord(name)).waitFor();
    const plain = await arithmeticMs(page);
    const all = async (): Promise<AdviceTimes> => {
      const measuredFactor = (await arithmeticMs(page)) / plain;
      const { tapped, ...answer } = await tapForAdvice(page, id);
      const prescribed = await lastReply(page, "prescribe");
      await forgetAsked(page);
      await page.evaluate((wanted) => {
        location.hash = `#/check/${wanted}/stops`;
      }, id);
      const ranked = await lastReply(page, "rank");
      return {
        name,
        measuredFactor,
        ...answer,
        whole: Math.max(answer.prescription, prescribed.at - tapped),
        ranked: ranked.at - ranked.sent,
        stops: await page.locator("li.ranked").count(),
      };
    };
    return factor === 1 ? await all() : await whileSlowed(browser, factor, all);
  } finally {
    await phone.close();
  }
}
