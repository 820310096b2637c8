import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { build } from "vite";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest";
import type * as StoredChecks from "../../src/records/check/storedCheck.ts";
import type * as Changes from "../../src/records/filling/changes.ts";
import type * as ModelUnits from "../../src/saying/modelUnits.ts";
import type * as CheckStores from "../../src/storage/checkStore.ts";
import type * as Keepers from "../../src/storage/keeper.ts";
import { storeFault } from "../../src/storage/storeFault.ts";
import { launchShell } from "./support/phone.ts";

/**
 * The store in a real browser, without the screens: a page closed in the very moment of the last
 * keystroke, two tabs at once, a quota that is reached.
 */

type Rooms = typeof StoredChecks &
  typeof Changes &
  typeof ModelUnits &
  typeof CheckStores &
  typeof Keepers;

declare global {
  var rooms: Rooms;
  var held: {
    store: CheckStores.CheckStore;
    keeper: Keepers.Keeper;
    stored: StoredChecks.StoredCheck;
  };
}

const origin = "http://localhost:1";
const source = fileURLToPath(new URL("../../src/", import.meta.url));
let script = "";
let browser: Browser;
let context: BrowserContext;

async function bundle(): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), "stopfit-store-"));
  const entry = join(folder, "entry.ts");
  const modules = [
    "records/check/storedCheck.ts",
    "records/filling/changes.ts",
    "saying/modelUnits.ts",
    "storage/checkStore.ts",
    "storage/keeper.ts",
  ];
  const imports = modules.map(
    (path, index) => `import * as m${index} from "${join(source, path)}";`,
  );
  const texts = `import "${join(source, "saying/everyText.ts")}";`;
  writeFileSync(
    entry,
    `${texts}\n${imports.join("\n")}\nglobalThis.rooms = { ...m0, ...m1, ...m2, ...m3, ...m4 };`,
  );
  const output = await build({
    configFile: false,
    root: fileURLToPath(new URL("../../", import.meta.url)),
    logLevel: "error",
    build: {
      write: false,
      lib: { entry, formats: ["iife"], name: "storeUnderTest" },
    },
  });
  rmSync(folder, { recursive: true });
  const [first] = Array.isArray(output) ? output : [output];
  if (first === undefined || !("output" in first)) throw new Error("nothing was built");
  return first.output[0].code;
}

beforeAll(async () => {
  script = await bundle();
  browser = await launchShell();
});

afterAll(() => browser?.close());

beforeEach(async () => {
  context = await browser.newContext();
  await context.route(`${origin}/**`, (route) =>
    route.fulfill({
      contentType: "text/html",
      body: `<!doctype html><meta charset="utf-8"><title>Store</title><script>${script}</script>`,
    }),
  );
});

afterEach(() => context.close());

async function openPage(): Promise<Page> {
  const page = await context.newPage();
  await page.goto(`${origin}/`);
  return page;
}

/** Opens the check in this page, as its screen does, and returns what is stored of the left gap. */
function openCheck(page: Page, id: string): Promise<string | undefined> {
  return page.evaluate(async (wanted) => {
    const opened = await rooms.openCheckStore(rooms.inModelUnits);
    if (!opened.ok) throw new Error(opened.fault.code);
    const found = await opened.value.get(wanted);
    if (!found.ok || found.value === null) throw new Error("the check is gone");
    const keeper = rooms.createKeeper(opened.value, {
      onJoined: (stored) => {
        held.stored = stored;
      },
    });
    globalThis.held = { store: opened.value, keeper, stored: found.value };
    return found.value.entries["left.gap"]?.texts[0];
  }, id);
}

/** Types and returns at once: nothing is waited for. */
function type(page: Page, entryId: string, text: string): Promise<void> {
  return page.evaluate(
    ([id, typed]) => {
      const entry = { texts: [typed], unit: "mm" as const, tol: "1" };
      held.stored = rooms.setEntry(held.stored, id, entry);
      held.keeper.keep(held.stored);
    },
    [entryId, text] as const,
  );
}

async function newCheck(page: Page): Promise<string> {
  return page.evaluate(async () => {
    const opened = await rooms.openCheckStore(rooms.inModelUnits);
    if (!opened.ok) throw new Error(opened.fault.code);
    const kept = await opened.value.put(rooms.newStoredCheck("Bay 1"));
    if (!kept.ok) throw new Error(kept.fault.code);
    return kept.value.id;
  });
}

describe("a page that goes with the last keystroke", () => {
  it("loses nothing when it is loaded again at once", async () => {
    const page = await openPage();
    const id = await newCheck(page);
    for (let round = 0; round < 12; round += 1) {
      await openCheck(page, id);
      await type(page, "left.gap", `${20 + round}`);
      await page.reload();
      expect(await openCheck(page, id)).toBe(`${20 + round}`);
    }
  });

  it("loses nothing when the tab is closed at once", async () => {
    const watching = await openPage();
    const id = await newCheck(watching);
    for (let round = 0; round < 12; round += 1) {
      const page = await openPage();
      await openCheck(page, id);
      await type(page, "left.gap", `${20 + round}`);
      await page.close();
      expect(await openCheck(watching, id)).toBe(`${20 + round}`);
    }
  });
});

describe("two tabs on one check", () => {
  it("keep what is typed in both at the same time", async () => {
    const [one, two] = [await openPage(), await openPage()];
    const id = await newCheck(one);
    await openCheck(one, id);
    await openCheck(two, id);
    for (let round = 0; round < 6; round += 1) {
      await Promise.all([
        type(one, "left.gap", `${20 + round}`),
        type(two, "right.gap", `${40 + round}`),
      ]);
    }
    const states = await Promise.all(
      [one, two].map((page) => page.evaluate(() => held.keeper.flush())),
    );
    expect(states).toEqual(["kept", "kept"]);
    const stored = await one.evaluate(async (wanted) => {
      const found = await held.store.get(wanted);
      return found.ok ? found.value?.record.corners.map((corner) => corner.gap?.values) : null;
    }, id);
    expect(stored).toEqual([[25], [45]]);
  });
});

describe("a full phone", () => {
  it("is told as full, keeps what was there, and takes the same write once there is room", async () => {
    const page = await openPage();
    // Set before the first write, after which the browser reckons with the room it found for a while.
    const session = await context.newCDPSession(page);
    await session.send("Storage.overrideQuotaForOrigin", { origin, quotaSize: 300_000 });
    const id = await newCheck(page);
    await openCheck(page, id);
    await type(page, "left.gap", "21");
    expect(await page.evaluate(() => held.keeper.flush())).toBe("kept");
    const outcome = await page.evaluate(async () => {
      const bytes = crypto.getRandomValues(new Uint8Array(60_000));
      const noise = btoa(String.fromCharCode(...bytes)).repeat(30);
      held.stored = rooms.changeRecord(held.stored, (record) => ({ ...record, notes: noise }));
      held.keeper.keep(held.stored);
      return held.keeper.flush();
    });
    expect(outcome).toEqual({
      notKept: storeFault("storeFull").sentence,
    });
    const other = await openPage();
    expect(await openCheck(other, id)).toBe("21");
    await session.send("Storage.overrideQuotaForOrigin", { origin });
    expect(await page.evaluate(() => held.keeper.flush())).toBe("kept");
    const length = await other.evaluate(async (wanted) => {
      const found = await held.store.get(wanted);
      return found.ok ? found.value?.record.notes?.length : null;
    }, id);
    expect(length).toBe(2_400_000);
  });
});
