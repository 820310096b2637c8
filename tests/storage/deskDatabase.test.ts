import "fake-indexeddb/auto";
import { describe, expect, it } from "vitest";
import { SchemaHandle } from "../../src/storage/databaseHandle.ts";
import {
  type DeskSchema,
  deskDatabaseName,
  deskMigrations,
  type Writing,
  writeDesk,
} from "../../src/storage/deskDatabase.ts";
import { decision } from "./support/desk.ts";
import { storesOf } from "./support/oldDatabase.ts";
import { closedLater, freshBrowsers, value } from "./support/tabs.ts";

freshBrowsers();

const handle = () => closedLater(new SchemaHandle<DeskSchema>(deskDatabaseName, deskMigrations));
const decisionsIn = async (of: SchemaHandle<DeskSchema>) =>
  value(await of.run((database) => database.getAllKeys("decisions")));

const putOne = (transaction: Writing) => transaction.objectStore("decisions").put(decision("a"));

it("a desk has the stores of a shared one that desks have already: a shipped step never changes", async () => {
  value(await handle().open());
  const byCheck = [["checkId", "checkId", false]];
  expect(await storesOf(deskDatabaseName)).toMatchObject({
    sentBy: { keyPath: "key", indexes: byCheck },
    personal: { keyPath: "hash", indexes: byCheck },
    repliesAtDesk: { keyPath: "id", indexes: byCheck },
    toShare: { keyPath: "key", indexes: [] },
    shared: { keyPath: "key", indexes: [] },
  });
});

describe("work at the desk", () => {
  it("gives its value once all of it is written, what nobody waits for too", async () => {
    const desk = handle();
    const outcome = await writeDesk(desk, async (transaction) => {
      void putOne(transaction);
      return 5;
    });
    expect(value(outcome)).toBe(5);
    expect(await decisionsIn(desk)).toEqual(["a"]);
  });

  it("that fails leaves nothing of what it wrote before, and says why", async () => {
    const desk = handle();
    const outcome = await writeDesk(desk, async (transaction) => {
      await putOne(transaction);
      throw new DOMException("full", "QuotaExceededError");
    });
    expect(outcome).toMatchObject({ ok: false, fault: { code: "storeFull" } });
    expect(await decisionsIn(desk)).toEqual([]);
  });

  it("on a full storage, which shows in the transaction alone, says so", async () => {
    for (const asksOn of [true, false]) {
      const desk = handle();
      const outcome = await writeDesk(desk, async (transaction) => {
        const writing = putOne(transaction);
        Object.defineProperty(transaction, "error", {
          get: () => new DOMException("full", "QuotaExceededError"),
        });
        await writing;
        transaction.abort();
        if (asksOn) await transaction.objectStore("decisions").count();
      });
      expect(outcome).toMatchObject({ ok: false, fault: { code: "storeFull" } });
      expect(await decisionsIn(desk)).toEqual([]);
    }
  });

  it("whose transaction had ended already says what made it fail", async () => {
    const outcome = await writeDesk(handle(), async (transaction) => {
      transaction.commit();
      await transaction.done;
      throw new DOMException("refused", "SecurityError");
    });
    expect(outcome).toMatchObject({ ok: false, fault: { code: "storeRefused" } });
  });
});
