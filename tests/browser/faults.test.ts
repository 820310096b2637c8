import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Browser, chromium, type Page } from "playwright-core";
import {
  afterAll,
  afterEach,
  beforeAll,
  beforeEach,
  describe,
  expect,
  inject,
  it,
  vi,
} from "vitest";
import { version } from "../../package.json";
import { findChromium } from "../../src/tooling/chromium.mjs";
import { laterRelease } from "./support/build.ts";
import { CheckList } from "./support/checkList.ts";
import { crash, FaultBench, type Filling, withLater } from "./support/faultBench.ts";
import { launchChromium, Phone, type PhoneOptions } from "./support/phone.ts";
import { Site } from "./support/site.ts";
import { refuseStorage, smallStorage, storedChecks } from "./support/storage.ts";
import { type Claim, Tally, Witness } from "./support/witness.ts";

vi.setConfig({ testTimeout: 240_000 });

// What can go wrong under a check that is being filled in. After each: every acknowledged reading is there,
// or the screen said that it was not kept. Acknowledged is what the screen showed together with “Kept”.

let browser: Browser;
let site: Site;
let phone: Phone;
let bench: FaultBench;
const tally = new Tally();
const lost: string[] = [];

beforeAll(async () => {
  browser = await launchChromium();
});

afterAll(async () => {
  console.log(`\n${tally.text}\n`);
  await browser.close();
});

beforeEach(async () => {
  site = new Site();
  await site.publish(inject("dist"));
  await takePhone();
});

afterEach(async () => {
  await phone.close();
  await site.close();
  expect(lost.splice(0)).toEqual([]);
});

async function takePhone(options: PhoneOptions = {}): Promise<void> {
  phone = await Phone.open(browser, options);
  bench = new FaultBench(site, phone, await Witness.of(phone.context), tally);
}

async function takePhoneWithOfflineCopy(): Promise<void> {
  await phone.close();
  await takePhone({ offlineCopy: true });
}

/** Types a gap, a key at a time, and waits until the screen calls it kept. */
async function typeGap({ steps }: Filling, text: string): Promise<void> {
  await steps.reading().fill("");
  await steps.reading().pressSequentially(text);
  await steps.kept.waitFor();
}

/** The fault has struck: closes the page, opens the check anew and counts. */
async function settleAnew(fault: string, filling: Filling, claims?: Claim[]): Promise<Filling> {
  const owed = claims ?? (await bench.owed(filling.id));
  await filling.page.close();
  const again = await bench.reopen(filling.id, "left.gap");
  await again.steps.reading().waitFor();
  lost.push(...(await bench.settle(fault, owed, again)));
  return again;
}

const notKept = (page: Page) => page.getByText("Not saved", { exact: true });

describe("storage that fails", () => {
  it("full in the middle: told, held, and kept once there is room; a new check goes on as well", async () => {
    const page = await phone.newPage();
    const storage = await smallStorage(page, site.origin);
    const filling = await bench.halfFilled(page);
    const { steps } = filling;
    await typeGap(filling, "21");
    const makeRoom = await storage.fill();
    await steps.reading().fill("22.75");
    await notKept(page).waitFor();
    // Left, it is not forgotten: the list names it, and it comes back as it was typed.
    await page.getByRole("link", { name: "All checks" }).click();
    await page.getByText("Not saved: Osprey under test.").waitFor();
    await new CheckList(page).newCheck.click();
    await steps.field("Vehicle").fill("Brant, also new");
    await notKept(page).waitFor();
    await page.goto(`${site.address}#/check/${filling.id}/left.gap`);
    await expect.poll(() => steps.reading().inputValue()).toBe("22.75");
    await notKept(page).waitFor();
    // Killed now, what was called kept before is there.
    const owed = await bench.owed(filling.id);
    const other = await bench.reopen(filling.id, "left.gap");
    await other.steps.reading().waitFor();
    lost.push(...(await bench.settle("storage full", owed, other)));
    await other.page.close();
    await makeRoom();
    await page.getByRole("link", { name: "All checks" }).click();
    await page.getByText(/^Not saved: /).waitFor();
    await page.getByRole("button", { name: "Try again" }).click();
    await page.getByText(/^Not saved: /).waitFor({ state: "detached" });
    const names = (await storedChecks(page)).map(({ record }) => JSON.stringify(record.vehicle));
    expect(names.some((text) => text.includes("Brant, also new"))).toBe(true);
    await page.close();
    const again = await bench.reopen(filling.id, "left.gap");
    await again.steps.reading().waitFor();
    expect(await again.steps.reading().inputValue()).toBe("22.75");
  });

  it("refused, as in some private windows: never called kept, and all in the page until it is closed", async () => {
    await refuseStorage(phone.context);
    const { page, steps, id } = await bench.begin();
    await steps.field("Vehicle").fill("Tern, no storage");
    await notKept(page).waitFor();
    await page.getByRole("link", { name: "All checks" }).click();
    await new CheckList(page).check("Tern, no storage").click();
    await expect.poll(() => steps.field("Vehicle").inputValue()).toBe("Tern, no storage");
    const owed = await bench.owed(id);
    expect(owed).toEqual([]);
    tally.add("storage refused", 0, owed.length);
  });

  it("a private window keeps a check while it is open", async () => {
    // A context of its own is a private window of Chromium.
    const filling = await bench.halfFilled();
    await typeGap(filling, "19.5");
    await settleAnew("private window", filling);
  });

  it("its handle killed under the page: opened again, the write repeated", async () => {
    await phone.context.addInitScript(() => {
      const handles = new Set<IDBDatabase>();
      Object.assign(globalThis, {
        killHandles: () => {
          for (const handle of handles) handle.close();
        },
      });
      const open = IDBFactory.prototype.open;
      IDBFactory.prototype.open = function (...given) {
        const request = open.apply(this, given);
        request.addEventListener("success", () => handles.add(request.result));
        return request;
      };
    });
    let filling = await bench.halfFilled();
    for (const text of ["20", "21.25", "22 1/2", "23.75", "24"]) {
      await filling.page.evaluate("killHandles()");
      await filling.steps.reading().fill("");
      await filling.steps.reading().pressSequentially(text.slice(0, 1));
      await filling.page.evaluate("killHandles()");
      await filling.steps.reading().pressSequentially(text.slice(1));
      await filling.steps.kept.waitFor();
      filling = await settleAnew("database handle killed", filling);
      expect(await filling.steps.reading().inputValue()).toBe(text);
    }
    phone.expectNoTrouble();
  });

  it("cleared by the browser under an open check: the check is written anew, and the list says what is gone", async () => {
    const filling = await bench.halfFilled();
    await typeGap(filling, "21");
    await filling.page.getByRole("link", { name: "All checks" }).click();
    await new CheckList(filling.page).check("Osprey under test").click();
    await filling.steps.reading().waitFor();
    const session = await phone.context.newCDPSession(filling.page);
    await session.send("Storage.clearDataForOrigin", {
      origin: site.origin,
      storageTypes: "indexeddb",
    });
    await typeGap(filling, "21.5");
    const again = await settleAnew("storage cleared, check open", filling);
    // Cleared while nothing is open, it can't be there: then it is said.
    await again.page.goto("about:blank");
    await session.detach().catch(() => undefined);
    const clearing = await phone.context.newCDPSession(again.page);
    await clearing.send("Storage.clearDataForOrigin", {
      origin: site.origin,
      storageTypes: "indexeddb",
    });
    await again.page.goto(site.address);
    await again.page.getByText("the browser's storage has been cleared").waitFor();
    tally.add("storage cleared, said on the list", 0, 0);
  });
});

describe("several tabs", () => {
  it("two on one check, both killed in turn, lose nothing of either", async () => {
    let one = await bench.halfFilled();
    for (let round = 0; round < 6; round += 1) {
      const two = await bench.reopen(one.id, "left.rideHeight");
      await two.steps.reading().waitFor();
      const texts = [`2${round}.5`, `51${round}`] as const;
      await Promise.all([one.steps.reading().fill(texts[0]), two.steps.reading().fill(texts[1])]);
      await new Promise((resolve) => setTimeout(resolve, 90 * round));
      const owed = await (async () => {
        if (round % 2 === 0) await crash(one.page);
        await two.page.close();
        const claims = withLater(await bench.owed(one.id), "Left: Gap", texts[0]);
        return withLater(claims, "Left: Ride height", texts[1]);
      })();
      one = await settleAnew("two tabs, both killed", one, owed);
    }
  });

  it("an older tab that holds the storage: told, and gone on with by itself once it lets go", async () => {
    const filling = await bench.halfFilled();
    await typeGap(filling, "21");
    const owed = await bench.owed(filling.id);
    await filling.page.close();
    // A page of an older version, which never hears that its handle is wanted.
    const old = await phone.newPage();
    await old.goto(`${site.address}icon.svg`);
    await old.evaluate(async () => {
      const version = (await indexedDB.databases()).find(({ name }) => name === "stopfit")?.version;
      await new Promise((resolve, reject) => {
        const request = indexedDB.open("stopfit", version);
        request.onsuccess = () => resolve(Object.assign(globalThis, { held: request.result }));
        request.onerror = () => reject(request.error);
      });
    });
    const newer = await phone.newPage();
    await newer.addInitScript(() => {
      const open = IDBFactory.prototype.open;
      IDBFactory.prototype.open = function (name, wanted) {
        return open.call(this, name, wanted === undefined ? undefined : wanted + 1);
      };
    });
    await newer.goto(site.address);
    await newer.getByText("Stopfit is open in another tab with an older version").waitFor();
    await old.close();
    await newer.locator("a.check-link").filter({ hasText: "Osprey under test" }).waitFor();
    tally.add("upgrade blocked by an older tab", 0, 0);
    await newer.locator("a.check-link").filter({ hasText: "Osprey under test" }).click();
    await newer.getByRole("heading", { level: 1 }).waitFor();
    const now = await newer.evaluate(
      () => document.querySelector<HTMLInputElement>(".step-content input[type=text]")?.value,
    );
    expect(owed.find(({ heading }) => heading === "Left: Gap")?.allowed.at(-1)?.[0]).toBe(now);
  });

  it("a newer version takes the storage while someone types: told, and put away for it", async () => {
    const filling = await bench.halfFilled();
    await typeGap(filling, "21");
    const newer = await phone.newPage();
    await newer.goto(`${site.address}icon.svg`);
    await filling.steps.reading().fill("22.5");
    const unjoined = await newer.evaluate(
      () =>
        new Promise<string>((resolve, reject) => {
          const request = indexedDB.open("stopfit", 99);
          request.onerror = () => reject(request.error);
          request.onblocked = () => resolve("blocked");
          request.onsuccess = () => {
            const reading = request.result.transaction(["checks", "unjoined"]);
            const checks = reading.objectStore("checks").getAll();
            const away = reading.objectStore("unjoined").getAll();
            reading.oncomplete = () => resolve(JSON.stringify([checks.result, away.result]));
          };
        }),
    );
    expect(unjoined).toContain('"22.5"');
    await filling.steps.reading().fill("23");
    await notKept(filling.page).waitFor();
    await filling.page.getByText(/a newer version of Stopfit has been used/).waitFor();
    tally.add("storage taken by a newer version", 1, 0);
  });
});

describe("time and versions", () => {
  it("the clock set back by a month between readings", async () => {
    let filling = await bench.halfFilled();
    await typeGap(filling, "21");
    await phone.context.addInitScript(() => {
      const back = 30 * 86_400_000;
      const Real = Date;
      class Back extends Real {
        constructor(...given: [number] | []) {
          if (given.length === 0) super(Real.now() - back);
          else super(...given);
        }
        static override now(): number {
          return Real.now() - back;
        }
      }
      globalThis.Date = Back as DateConstructor;
    });
    for (const text of ["22.5", "23.5", "24.5"]) {
      filling = await settleAnew("clock set back", filling);
      await typeGap(filling, text);
    }
    filling = await settleAnew("clock set back", filling);
    expect(await filling.steps.reading().inputValue()).toBe("24.5");
  });

  it("a new version taken half-way, in another tab, and the page killed", async () => {
    await takePhoneWithOfflineCopy();
    const first = await phone.newPage();
    await (await new CheckList(first).open(site.address)).ready(version).waitFor();
    const filling = await bench.halfFilled();
    await typeGap(filling, "21");
    await site.publish(inject("laterDist"));
    await first.evaluate(async () => {
      await (await navigator.serviceWorker.getRegistration())?.update();
    });
    await first.getByRole("button", { name: "Update now" }).click();
    await typeGap(filling, "22.25");
    await crash(filling.page);
    await new CheckList(first).ready(laterRelease).waitFor();
    const again = await settleAnew("update half-way", filling);
    expect(await again.steps.reading().inputValue()).toBe("22.25");
    await first.close();
  });

  it("the service worker removed, then no signal, then one again", async () => {
    await takePhoneWithOfflineCopy();
    const filling = await bench.halfFilled();
    await filling.page.evaluate(async () => {
      await (await navigator.serviceWorker.ready).unregister();
    });
    await typeGap(filling, "21.25");
    await phone.goOffline();
    await typeGap(filling, "22.25");
    const owed = await bench.owed(filling.id);
    await filling.page.close();
    const offline = await phone.newPage();
    await expect(offline.goto(site.address)).rejects.toThrow();
    await offline.close();
    await phone.context.setOffline(false);
    const again = await bench.reopen(filling.id, "left.gap");
    await again.steps.reading().waitFor();
    lost.push(...(await bench.settle("service worker removed", owed, again)));
    // It comes back by itself.
    await new CheckList(again.page).open(site.address);
    await new CheckList(again.page).ready(version).waitFor();
  });

  it("the files of the app evicted, with and without a signal", async () => {
    await takePhoneWithOfflineCopy();
    let filling = await bench.halfFilled();
    const session = await phone.context.newCDPSession(filling.page);
    await session.send("Network.enable");
    const evict = async () => {
      await filling.page.evaluate(async () => {
        await navigator.serviceWorker.ready;
        for (const name of await caches.keys()) await caches.delete(name);
      });
      await session.send("Network.clearBrowserCache");
    };
    await evict();
    await typeGap(filling, "21.75");
    await phone.goOffline();
    // Once more: what went while there was a signal may have been fetched again.
    await evict();
    await typeGap(filling, "22.75");
    // A part that was never fetched is told of, and the check is still there.
    await filling.page.goto(`${site.address}#/saved`);
    await filling.page.getByText(/could not be loaded/).waitFor();
    await filling.page.goto(`${site.address}#/check/${filling.id}/left.gap`);
    await expect.poll(() => filling.steps.reading().inputValue()).toBe("22.75");
    await phone.context.setOffline(false);
    filling = await settleAnew("app's files evicted", filling);
    await filling.page.goto(`${site.address}#/saved`);
    await filling.page.getByRole("heading", { name: "Backup", exact: true }).waitFor();
    const list = await new CheckList(filling.page).open(site.address);
    await list.ready(version).waitFor();
    await phone.goOffline();
    await filling.page.reload();
    await list.check("Osprey under test").waitFor();
  });
});

/** A browser of its own with a profile on disk, that can be killed as a whole and started again. */
async function startOnDisk(profile: string): Promise<{ process: ChildProcess; browser: Browser }> {
  const path = findChromium();
  if (!path) throw new Error("No Chromium found: install it or set CHROMIUM_PATH.");
  const started = spawn(
    path,
    [
      "--headless",
      "--no-sandbox",
      "--disable-gpu",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--remote-debugging-port=0",
      `--user-data-dir=${profile}`,
      "about:blank",
    ],
    { stdio: ["ignore", "ignore", "pipe"] },
  );
  const address = await new Promise<string>((resolve, reject) => {
    let said = "";
    started.stderr?.on("data", (chunk: Buffer) => {
      said += chunk.toString();
      const found = /ws:\/\/\S+/.exec(said)?.[0];
      if (found) resolve(found);
    });
    started.once("exit", () => reject(new Error(said)));
  });
  return { process: started, browser: await chromium.connectOverCDP(address) };
}

describe("the whole browser", () => {
  it("killed five times in the middle of typing has on disk what it called kept", async () => {
    const profile = mkdtempSync(join(tmpdir(), "stopfit-profile-"));
    let id = "";
    const gaps = ["20.5", "21.5", "22.5", "23.5", "24.5"];
    let owed: Claim[] = [];
    for (const [round, text] of [...gaps, ""].entries()) {
      const own = await startOnDisk(profile);
      const [context] = own.browser.contexts();
      if (!context) throw new Error("no window");
      const disk = new FaultBench(site, Phone.of(context), await Witness.of(context), tally);
      const filling = id ? await disk.reopen(id, "left.gap") : await disk.halfFilled();
      id = filling.id;
      await filling.steps.reading().waitFor();
      if (round > 0) lost.push(...(await disk.settle("whole browser killed", owed, filling)));
      if (text) {
        await filling.steps.reading().fill(text);
        await filling.steps.kept.waitFor();
        await new Promise((resolve) => setTimeout(resolve, 30 * round));
        owed = await disk.owed(id);
        await filling.steps.reading().press("End");
        await filling.steps.reading().pressSequentially("7");
      }
      const gone = new Promise((resolve) => own.process.once("exit", resolve));
      own.process.kill("SIGKILL");
      await gone;
      await own.browser.close().catch(() => undefined);
      if (text) owed = withLater(owed, "Left: Gap", `${text}7`);
    }
    rmSync(profile, { recursive: true, force: true });
  });
});
