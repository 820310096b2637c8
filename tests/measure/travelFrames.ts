import type { Browser, CDPSession, Page } from "playwright-core";
import { demoRecord } from "../browser/support/everyStep.ts";
import type { Site } from "../browser/support/site.ts";
import { measuredPhone } from "./measuredPhone.ts";

export interface FrameTimes {
  /** Times between painted frames, ms. */
  readonly between: readonly number[];
  /** Tasks of the page's main thread, ms of its processor time as slowed, longest first. */
  readonly tasks: readonly number[];
}

interface TraceEvent {
  readonly name: string;
  readonly tdur?: number;
  readonly tid: number;
  readonly pid: number;
  readonly args?: { readonly name?: string };
}

/** Tasks of the page's main thread while something is done, ms of its processor time, longest first. */
export async function tasksDuring(
  page: Page,
  act: () => Promise<void>,
): Promise<readonly number[]> {
  const session = await page.context().newCDPSession(page);
  try {
    return await traced(session, act);
  } finally {
    await session.detach();
  }
}

async function traced(session: CDPSession, act: () => Promise<void>): Promise<readonly number[]> {
  const events: TraceEvent[] = [];
  session.on("Tracing.dataCollected", ({ value }) =>
    events.push(...(value as unknown as TraceEvent[])),
  );
  await session.send("Tracing.start", {
    transferMode: "ReportEvents",
    traceConfig: {
      includedCategories: ["toplevel", "disabled-by-default-devtools.timeline", "__metadata"],
    },
  });
  await act();
  const done = new Promise<void>((resolve) =>
    session.once("Tracing.tracingComplete", () => resolve()),
  );
  await session.send("Tracing.end");
  await done;
  const main = new Set(
    events
      .filter(({ name, args }) => name === "thread_name" && args?.name === "CrRendererMain")
      .map(({ pid, tid }) => `${pid} ${tid}`),
  );
  return events
    .filter(
      ({ name, tdur, pid, tid }) =>
        name === "RunTask" && tdur !== undefined && main.has(`${pid} ${tid}`),
    )
    .map(({ tdur = 0 }) => tdur / 1000)
    .sort((a, b) => b - a);
}

async function framesDuring(page: Page, act: () => Promise<void>): Promise<FrameTimes> {
  await page.evaluate(() => {
    const times: number[] = [];
    Object.assign(window, { frameTimes: times, framesWatched: true });
    const next = (now: number) => {
      times.push(now);
      if ((window as unknown as { framesWatched: boolean }).framesWatched) {
        requestAnimationFrame(next);
      }
    };
    requestAnimationFrame(next);
  });
  const tasks = await tasksDuring(page, act);
  const times = await page.evaluate(() => {
    const watched = window as unknown as { frameTimes: number[]; framesWatched: boolean };
    watched.framesWatched = false;
    return watched.frameTimes;
  });
  return { between: times.slice(1).map((time, i) => time - (times[i] ?? time)), tasks };
}

/** The travel view played and moved by keys on a phone slowed `slowness` times. */
export async function measureTravelFrames(
  browser: Browser,
  site: Site,
  slowness: number,
): Promise<{ readonly played: FrameTimes; readonly moved: FrameTimes }> {
  const phone = await measuredPhone(browser);
  const page = await phone.newPage();
  await page.emulateMedia({ reducedMotion: "no-preference" });
  const { id } = demoRecord("two-arms-measured");
  await page.goto(site.address);
  await page.getByText("Marlow").first().waitFor({ timeout: 60_000 });
  await page.goto(`${site.address}#/check/${id}/answer`);
  const play = page.getByRole("button", { name: /^Play landing/ });
  await play.waitFor({ timeout: 60_000 });
  await page
    .getByText(/^Tried on this vehicle|^Leave it/)
    .first()
    .waitFor({ timeout: 60_000 })
    .catch(() => undefined);
  await page.waitForTimeout(6000);
  const session = await page.context().newCDPSession(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate: slowness });
  const played = await framesDuring(page, async () => {
    await play.tap();
    await page.waitForTimeout(5200);
  });
  const slider = page.getByRole("slider", { name: "Move the wheel up" });
  await slider.focus();
  const moved = await framesDuring(page, async () => {
    for (let press = 0; press < 60; press++) {
      await page.keyboard.press(press < 30 ? "ArrowRight" : "ArrowLeft");
    }
  });
  await phone.close();
  return { played, moved };
}
