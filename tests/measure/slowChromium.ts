import { type ChildProcess, spawn } from "node:child_process";
import { fileURLToPath } from "node:url";
import type { Browser, Page } from "playwright-core";

const dutyCycle = fileURLToPath(new URL("./dutyCycle.mjs", import.meta.url));

async function rendererIds(browser: Browser): Promise<number[]> {
  const session = await browser.newBrowserCDPSession();
  try {
    const { processInfo } = await session.send("SystemInfo.getProcessInfo");
    return processInfo.filter(({ type }) => type === "renderer").map(({ id }) => id);
  } finally {
    await session.detach();
  }
}

/** Runs `work` while every page and worker of the browser has one part in `factor` of its time. */
export async function whileSlowed<Value>(
  browser: Browser,
  factor: number,
  work: () => Promise<Value>,
): Promise<Value> {
  const ids = await rendererIds(browser);
  const slower: ChildProcess = spawn(process.execPath, [
    dutyCycle,
    `${factor}`,
    ...ids.map(String),
  ]);
  try {
    await new Promise((done) => setTimeout(done, 200));
    return await work();
  } finally {
    const ended = new Promise((done) => slower.once("exit", done));
    slower.kill("SIGTERM");
    await ended;
  }
}

/** How long the same arithmetic takes in the page, ms: the measure of how much slower it runs. */
export async function arithmeticMs(page: Page): Promise<number> {
  return page.evaluate(() => {
    const started = performance.now();
    let sum = 0;
    for (let index = 0; index < 4e7; index++) sum += Math.sqrt(index);
    return sum > 0 ? performance.now() - started : 0;
  });
}
