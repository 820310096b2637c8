import "fake-indexeddb/auto";
import { cleanup, render, screen, waitFor } from "@testing-library/preact";
import { openDB } from "idb";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { poolWork } from "../../src/compute/poolWork.ts";
import { newId } from "../../src/records/check/storedCheck.ts";
import { demoPack } from "../../src/records/pack/demoPack.ts";
import { readPackText } from "../../src/records/pack/readPack.ts";
import { factsOf } from "../../src/records/review/submission.ts";
import SharePlace from "../../src/screens/exchange/SharePlace.tsx";
import { forgetPackInMemory } from "../../src/screens/referencePack.ts";
import { openCheckStore } from "../../src/storage/checkStore.ts";
import { databaseName, databaseVersion } from "../../src/storage/database.ts";
import { openPackStore } from "../../src/storage/packStore.ts";
import { Chance } from "../fuzz/chance.ts";
import { doorLine, doorText } from "../fuzz/doorFuzzers.ts";
import { mutateValue } from "../fuzz/mutations.ts";
import { startDeskAssessor } from "./answer/dispatcherAssessor.ts";
import { deskWith } from "./desk/support.tsx";
import { openedWith } from "./exchange/support.ts";
import { freshPhone, startApp } from "./startApp.tsx";

/* A fixed share of hostile input, on to every screen; STOPFIT_DOOR_CASES=2000 tries more of each. */

const cases = Number(process.env.STOPFIT_DOOR_CASES ?? 12);
const rowsAtOnce = 12;
vi.setConfig({ testTimeout: 30_000 + 2000 * cases });

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
    { timeout: 10_000 },
  );
  expect(screen.queryByText("This screen can't be shown"), what).toBeNull();
}

/** Puts rows into the storage as they are, past the app. */
async function putRows(rows: readonly unknown[]): Promise<void> {
  const store = await openCheckStore();
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
    const store = await openCheckStore();
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

  it("at a desk is listed, opened and reported", async () => {
    const taken = [];
    for (let seed = 0; seed < 4 * cases && taken.length < Math.ceil(cases / 4); seed += 1) {
      const text = doorText(new Chance(50_000 + seed));
      const done = poolWork({ kind: "read", text, what: "The file", way: "file" });
      if (done.kind !== "read") continue;
      for (const item of done.items) if (item.ok) taken.push(JSON.parse(item.value.text));
    }
    expect(taken.length).toBeGreaterThan(0);
    for (const record of taken) {
      const desk = await deskWith(record);
      const [key = ""] = desk.keys;
      for (const place of ["check", "report"] as const) {
        desk.show({ place, key });
        await expectShown(`${place} of ${factsOf(record).vehicle}`);
        cleanup();
      }
      desk.show({ place: "list" });
      await expectShown("the review desk's list");
      cleanup();
      desk.store.close();
    }
  });

  it("as a pack is listed, or refused", async () => {
    let shown = 0;
    for (let seed = 0; seed < cases; seed += 1) {
      const chance = new Chance(30_000 + seed);
      const pack: unknown = structuredClone(demoPack);
      mutateValue(pack, chance);
      const read = readPackText(JSON.stringify(pack) ?? "");
      if (!read.ok) continue;
      freshPhone();
      forgetPackInMemory();
      const store = openPackStore();
      await store.put(read.value, 0);
      store.close();
      startApp("#/pack");
      await expectShown(`pack ${seed} ${newId()}`);
      cleanup();
      shown += 1;
    }
    expect(shown).toBeGreaterThan(0);
  });
});
