import type { CDPSession, Page } from "playwright-core";

/** What a mid-range phone on a slow mobile network has: the usual figures for such measurements. */
export const midRangePhone = {
  processorSlowdown: 4,
  latencyMs: 150,
  downBytesPerS: (1.6e6 / 8) * 0.9,
  upBytesPerS: (750e3 / 8) * 0.9,
} as const;

export interface PageMeasures {
  readonly firstPaintMs: number;
  readonly largestPaintMs: number;
  readonly blockingMs: number;
  readonly layoutShift: number;
}

interface Watched {
  largest: number;
  blocking: number;
  shift: number;
  lastLong: number;
}

/** Watches from the page's first moment on; to be given to the context before any page. */
export const watchPage = `
  globalThis.watched = { largest: 0, blocking: 0, shift: 0, lastLong: 0 };
  const watch = (type, take) =>
    new PerformanceObserver((list) => list.getEntries().forEach(take)).observe({ type, buffered: true });
  watch("largest-contentful-paint", (entry) => { watched.largest = entry.startTime; });
  watch("longtask", (entry) => {
    watched.blocking += Math.max(0, entry.duration - 50);
    watched.lastLong = entry.startTime + entry.duration;
  });
  watch("layout-shift", (entry) => { if (!entry.hadRecentInput) watched.shift += entry.value; });
`;

export async function slowPage(page: Page, network: boolean): Promise<CDPSession> {
  const session = await page.context().newCDPSession(page);
  await session.send("Emulation.setCPUThrottlingRate", {
    rate: midRangePhone.processorSlowdown,
  });
  if (network) {
    await session.send("Network.enable");
    await session.send("Network.emulateNetworkConditions", {
      offline: false,
      latency: midRangePhone.latencyMs,
      downloadThroughput: midRangePhone.downBytesPerS,
      uploadThroughput: midRangePhone.upBytesPerS,
    });
  }
  return session;
}

/** Time that the page's main thread has had the processor so far, ms: the same on a busy machine. */
export async function processorMs(session: CDPSession): Promise<number> {
  const { metrics } = await session.send("Performance.getMetrics");
  return 1000 * (metrics.find(({ name }) => name === "TaskDuration")?.value ?? Number.NaN);
}

/** Of the page that was loaded last, once nothing long has run for two seconds. */
export async function measuresOf(page: Page): Promise<PageMeasures> {
  await page.waitForFunction(() => {
    const { watched } = globalThis as unknown as { watched: Watched };
    return performance.now() - Math.max(watched.lastLong, watched.largest) > 2000;
  });
  return page.evaluate(() => {
    const { watched } = globalThis as unknown as { watched: Watched };
    const first = performance.getEntriesByName("first-contentful-paint")[0];
    return {
      firstPaintMs: first?.startTime ?? Number.NaN,
      largestPaintMs: watched.largest,
      blockingMs: watched.blocking,
      layoutShift: watched.shift,
    };
  });
}

/** What the browser itself finds amiss: deprecated interfaces, issues, an app that cannot be installed. */
export class Complaints {
  readonly found: string[] = [];
  readonly #session: CDPSession;

  private constructor(session: CDPSession) {
    this.#session = session;
    session.on("Audits.issueAdded", ({ issue }) => this.found.push(`issue: ${issue.code}`));
    session.on("Log.entryAdded", ({ entry }) => {
      if (entry.level === "error" || entry.source === "deprecation") {
        this.found.push(`${entry.source}: ${entry.text}`);
      }
    });
  }

  static async of(page: Page): Promise<Complaints> {
    const session = await page.context().newCDPSession(page);
    const complaints = new Complaints(session);
    await session.send("Audits.enable");
    await session.send("Log.enable");
    return complaints;
  }

  async ofManifest(): Promise<void> {
    const { errors, url } = await this.#session.send("Page.getAppManifest");
    if (url === "") this.found.push("no manifest");
    for (const { message } of errors) this.found.push(`manifest: ${message}`);
    const { installabilityErrors } = await this.#session.send("Page.getInstallabilityErrors");
    for (const { errorId } of installabilityErrors) {
      // A window without a profile of its own can install nothing.
      if (errorId !== "in-incognito") this.found.push(`not installable: ${errorId}`);
    }
  }
}

/** What good practice asks of the page itself; each line names what is not so. */
export async function practiceFaults(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const meta = (name: string) =>
      document.querySelector(`meta[name="${name}"]`)?.getAttribute("content") ?? "";
    const policy =
      document
        .querySelector('meta[http-equiv="Content-Security-Policy"]')
        ?.getAttribute("content") ?? "";
    const wanted: readonly (readonly [string, boolean])[] = [
      ["a secure context", isSecureContext],
      ["a doctype", document.compatMode === "CSS1Compat"],
      ["UTF-8", document.characterSet === "UTF-8"],
      ["a language", document.documentElement.lang !== ""],
      ["a title", document.title !== ""],
      ["a description", meta("description") !== ""],
      [
        "a viewport that may be enlarged",
        /width=device-width/.test(meta("viewport")) &&
          !/user-scalable=no|maximum-scale/.test(meta("viewport")),
      ],
      [
        "a policy that allows no foreign script",
        /default-src 'none'/.test(policy) &&
          /script-src 'self'(?: 'sha256-[^']+')*(?:;|$)/.test(policy),
      ],
      [
        "no inline script that the policy does not name",
        document.querySelectorAll("script:not([src])").length <=
          (policy.match(/'sha256-/g) ?? []).length,
      ],
      [
        "nothing from elsewhere",
        performance
          .getEntriesByType("resource")
          .every(({ name }) => name.startsWith(location.origin) || /^(data|blob):/.test(name)),
      ],
      ["pictures of their own size", [...document.images].every((image) => image.naturalWidth > 0)],
    ];
    return wanted.filter(([, holds]) => !holds).map(([what]) => `not so: ${what}`);
  });
}
