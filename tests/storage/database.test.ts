import "fake-indexeddb/auto";
import { describe, expect, it, vi } from "vitest";
import { newStoredCheck } from "../../src/records/check/storedCheck.ts";
import { DatabaseHandle, transact, type WriteTransaction } from "../../src/storage/database.ts";
import { closedLater, freshBrowsers, value } from "./support/tabs.ts";

freshBrowsers();

const handle = () => closedLater(new DatabaseHandle());
const bay = newStoredCheck("Bay 1");
const named = async (of: DatabaseHandle) =>
  value(await of.run((database) => database.getAll("checks"))).map(({ name }) => name);

/** What a piece of work in one transaction came to. */
async function outcomeOf(of: DatabaseHandle, work: (transaction: WriteTransaction) => unknown) {
  const database = value(await of.open());
  return transact(database, async (transaction) => work(transaction)).then(
    (done) => ({ done }),
    (error: unknown) => ({ failed: (error as Error).name }),
  );
}

describe("work in one transaction", () => {
  it("gives its value once all of it is on disk", async () => {
    const checks = handle();
    const ended = vi.fn();
    const outcome = await outcomeOf(checks, async (transaction) => {
      transaction.addEventListener("complete", ended);
      // Nobody waits for this one: it is written all the same.
      void transaction.objectStore("checks").put(bay);
      return transaction.durability;
    });
    expect(outcome).toEqual({ done: "strict" });
    expect(ended).toHaveBeenCalledTimes(1);
    expect(await named(checks)).toEqual(["Bay 1"]);
  });

  it("reaches rows, pictures and what waits, and nothing else", async () => {
    const outcome = await outcomeOf(handle(), (transaction) => [...transaction.objectStoreNames]);
    expect(outcome).toEqual({ done: ["checks", "pictures", "unjoined"] });
  });

  it("that throws leaves nothing of what it wrote before, and throws what it threw", async () => {
    const checks = handle();
    const outcome = await outcomeOf(checks, async (transaction) => {
      await transaction.objectStore("checks").put(bay);
      throw new DOMException("none", "NotFoundError");
    });
    expect(outcome).toEqual({ failed: "NotFoundError" });
    expect(await named(checks)).toEqual([]);
  });

  it("tells of a full storage, which shows in the transaction alone, not of what was asked afterwards", async () => {
    for (const asksOn of [true, false]) {
      const checks = handle();
      const outcome = await outcomeOf(checks, async (transaction) => {
        const request = transaction.objectStore("checks").put(bay);
        Object.defineProperty(transaction, "error", {
          get: () => new DOMException("full", "QuotaExceededError"),
        });
        await request;
        transaction.abort();
        if (asksOn) await transaction.objectStore("checks").count();
      });
      expect(outcome).toEqual({ failed: "QuotaExceededError" });
      expect(await named(checks)).toEqual([]);
    }
  });

  it("whose transaction ended by itself throws what made the work fail", async () => {
    const checks = handle();
    const outcome = await outcomeOf(checks, async (transaction) => {
      transaction.commit();
      await transaction.done;
      throw new DOMException("late", "DataError");
    });
    expect(outcome).toEqual({ failed: "DataError" });
  });
});
