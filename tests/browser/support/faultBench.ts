import type { Browser, Page } from "playwright-core";
import type { CheckRecord, TypedReading } from "../../../src/records/check/checkRecord.ts";
import { demoRecord } from "../../support/demoRecords.ts";
import { CheckList } from "./checkList.ts";
import { CheckSteps } from "./checkSteps.ts";
import type { Phone } from "./phone.ts";
import type { Site } from "./site.ts";
import { openStarted } from "./startedCheck.ts";
import { storedChecks } from "./storage.ts";
import { inMillimetres } from "./typist.ts";
import type { Claim, Tally, Witness } from "./witness.ts";

/** One value a reading, so that a step taken up again after a fault is filled in as the first time. */
function once(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(once);
  if (typeof value !== "object" || value === null) return value;
  if ("values" in value && "tol" in value) {
    const { values, tol } = value as TypedReading;
    return { values: values.slice(0, 1), tol };
  }
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, once(item)]));
}

const demo = demoRecord("arm-fits");
export const faultRecord = once({
  ...demo,
  vehicle: { ...demo.vehicle, label: "Osprey under test" },
}) as CheckRecord;

export interface Filling {
  readonly page: Page;
  readonly steps: CheckSteps;
  readonly id: string;
}

/** The check that a page shows. */
function idIn(page: Page): string {
  return /check\/([^/]+)/.exec(page.url())?.[1] ?? "";
}

/** A phone in use, and what it owes after a fault. */
export class FaultBench {
  constructor(
    readonly site: Site,
    readonly phone: Phone,
    readonly witness: Witness,
    readonly tally: Tally,
  ) {}

  /** A new check, at its first step, or filled in as far as a step. */
  async begin(step = "vehicle"): Promise<Filling> {
    const page = await this.phone.newPage();
    const list = await new CheckList(page).open(this.site.address);
    await list.newCheck.click();
    const steps = new CheckSteps(page, inMillimetres);
    await steps.field("Vehicle").waitFor();
    await steps.fillUpTo(step, faultRecord, "pack");
    return { page, steps, id: idIn(page) };
  }

  /** A check half filled in, as the phone has it stored, open at the left gap. */
  async halfFilled(inPage?: Page): Promise<Filling> {
    const page = inPage ?? (await this.phone.newPage());
    const steps = await openStarted(page, this.site.address, faultRecord, "left.gap");
    return { page, steps, id: idIn(page) };
  }

  /** The check in a new page, where it was left or at a step. */
  async reopen(id: string, step = ""): Promise<Filling> {
    for (let attempt = 0; ; attempt += 1) {
      try {
        const page = await this.phone.newPage();
        await page.goto(`${this.site.address}#/check/${id}${step && `/${step}`}`);
        await page.getByRole("heading", { level: 1 }).waitFor();
        return { page, steps: new CheckSteps(page, inMillimetres), id };
      } catch (error) {
        // The browser may hand out a page whose process was killed with the others.
        if (attempt === 3) throw error;
      }
    }
  }

  /** What the screen had called kept up to now; to be taken before any page is opened again. */
  async owed(id: string): Promise<Claim[]> {
    // What a page said in its last moment is still on its way.
    await new Promise((resolve) => setTimeout(resolve, 60));
    return this.witness.claims(id);
  }

  /**
   * Compares what was owed with what there is: all of it in the database, and on the screen what the step
   * shown had. Counts the fault; gives what is lost, in words.
   */
  async settle(fault: string, claims: readonly Claim[], { page, id }: Filling): Promise<string[]> {
    const stored = (await storedChecks(page)).find((check) => check.id === id);
    const there = new Set(textsIn(stored));
    const shown = await page.evaluate(() => ({
      heading: document.querySelector(".step-content h1")?.textContent ?? "",
      texts: [...document.querySelectorAll<HTMLInputElement>(".step-content input[type=text]")].map(
        ({ value }) => value,
      ),
    }));
    let readings = 0;
    const lost: string[] = [];
    for (const { heading, allowed } of claims) {
      readings += (allowed[0] ?? []).filter((text) => text !== "").length;
      // An empty field is no reading, and what came into it since no loss.
      const kept = allowed.some((texts) => texts.every((text) => text === "" || there.has(text)));
      const onScreen =
        shown.heading !== heading ||
        allowed.some((texts) => texts.every((text, at) => text === "" || text === shown.texts[at]));
      if (kept && onScreen) continue;
      const now = shown.heading === heading ? JSON.stringify(shown.texts) : "elsewhere";
      lost.push(`${fault}: ${heading}: owed ${JSON.stringify(allowed)}, shown ${now}`);
    }
    this.tally.add(fault, readings, lost.length);
    return lost;
  }
}

/** The same claims where `text` was typed after them, which may be there instead. */
export function withLater(claims: readonly Claim[], heading: string, text: string): Claim[] {
  return claims.map((claim) => {
    const last = claim.allowed.at(-1) ?? [];
    if (claim.heading !== heading) return claim;
    return { ...claim, allowed: [...claim.allowed, [text, ...last.slice(1)]] };
  });
}

/** Every text within a value. */
function textsIn(value: unknown): string[] {
  if (typeof value === "string") return [value];
  if (typeof value !== "object" || value === null) return [];
  return Object.values(value).flatMap(textsIn);
}

/** Ends every page process of this browser at once, as a phone short of memory does. */
export async function killRenderers(browser: Browser): Promise<number> {
  const session = await browser.newBrowserCDPSession();
  const { processInfo } = (await session.send("SystemInfo.getProcessInfo")) as {
    processInfo: { type: string; id: number }[];
  };
  await session.detach();
  const renderers = processInfo.filter(({ type }) => type === "renderer");
  for (const { id } of renderers) {
    try {
      process.kill(id, "SIGKILL");
    } catch {
      // It had gone already.
    }
  }
  return renderers.length;
}

/** The page's own process crashes, as by a fault of the browser. */
export async function crash(page: Page): Promise<void> {
  const session = await page.context().newCDPSession(page);
  const crashed = new Promise<void>((resolve) => page.once("crash", () => resolve()));
  session.send("Page.crash").catch(() => undefined);
  await crashed;
}
