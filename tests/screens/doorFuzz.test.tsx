import "fake-indexeddb/auto";
import { cleanup, render, screen, waitFor } from "@testing-library/preact";
import { openDB } from "idb";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { inModelUnits } from "../../src/saying/modelUnits.ts";
import SharePlace from "../../src/screens/exchange/SharePlace.tsx";
import { forgetPackInMemory } from "../../src/screens/referencePack.ts";
import { openCheckStore } from "../../src/storage/checkStore.ts";
import { databaseName, databaseVersion } from "../../src/storage/database.ts";
import { Chance } from "../fuzz/chance.ts";
import { doorLine, doorText } from "../fuzz/doorFuzzers.ts";
import { mutateValue } from "../fuzz/mutations.ts";
import { startDeskAssessor } from "./answer/dispatcherAssessor.ts";
import { openedWith } from "./exchange/support.ts";
import { freshPhone, startApp } from "./startApp.tsx";

/*
 * A fixed share of hostile input: rows that are stored badly, and what is received on the screen that asks
 * about it. What comes after a tap is doorCampaign.test.tsx's.
 */

const cases = Number(process.env.STOPFIT_RECEIVED_CASES ?? 12);
const rowsAtOnce = 12;
vi.setConfig({ testTimeout: 120_000 + 2000 * cases });

beforeEach(freshPhone);
afterEach(() => {
  cleanup();
  forgetPackInMemory();
  vi.unstubAllGlobals();
});

async function expectShown(what: string): Promise<void> {
  await waitFor(
    () => {
      const heading = document.querySelector("h1");
      if (!heading || document.querySelector(".later-waiting")) throw new Error(`waits: ${what}`);
    },
    { timeout: 60_000 },
  );
  expect(screen.queryByText("This screen can't be shown"), what).toBeNull();
}

/** Puts rows into the storage as they are, past the app. */
async function putRows(rows: readonly unknown[]): Promise<void> {
  const store = await openCheckStore(inModelUnits);
  if (store.ok) store.value.close();
  const database = await openDB(databaseName, databaseVersion);
  for (const row of rows) {
    try {
      await database.put("checks", row);
    } catch {
      // No key that a database takes.
    }
  }
  database.close();
}

describe("what is stored badly", () => {
  it("ends no screen: the list, a step, the answer", async () => {
    for (let first = 0; first < cases; first += rowsAtOnce) {
      freshPhone();
      const rows: unknown[] = [];
      for (let seed = first; seed < first + rowsAtOnce; seed += 1) {
        const chance = new Chance(90_000 + seed);
        const line = JSON.parse("{}") as { check?: unknown };
        try {
          Object.assign(line, JSON.parse(doorLine(chance)));
        } catch {
          continue;
        }
        if (line.check === undefined) continue;
        mutateValue(line.check, chance);
        rows.push(line.check);
      }
      await putRows(rows);
      startApp("#/");
      await expectShown(`list from ${first}`);
      await waitFor(() => expect(screen.queryByText("One moment …")).toBeNull());
      const hrefs = [...document.querySelectorAll<HTMLAnchorElement>("a.check-link")].map(
        (link) => link.getAttribute("href") ?? "",
      );
      for (const href of hrefs.slice(0, 3)) {
        for (const place of [href, `${href}/answer`]) {
          cleanup();
          startApp(place);
          await expectShown(`${place} from ${first}`);
        }
      }
      cleanup();
      startApp("#/saved");
      await expectShown(`kept from ${first}`);
      cleanup();
    }
  });
});

describe("what is received", () => {
  it("is shown or refused in words, and nothing of it is kept", async () => {
    const store = await openCheckStore(inModelUnits);
    if (!store.ok) throw new Error(store.fault.code);
    for (let seed = 0; seed < cases; seed += 1) {
      const text = doorText(new Chance(70_000 + seed));
      render(
        <SharePlace
          route={{ screen: "open", payload: null }}
          opened={openedWith(store.value)}
          unit="mm"
          launched={[new File([text], "sent.txt")]}
          startAssessor={startDeskAssessor}
        />,
      );
      await waitFor(() => {
        if (screen.queryByText("One moment …")) throw new Error("it is being read");
      });
      await expectShown(`received ${seed}`);
      const list = await store.value.list();
      expect(list.ok && list.value, `received ${seed}`).toEqual([]);
      cleanup();
    }
    store.value.close();
  });
});
