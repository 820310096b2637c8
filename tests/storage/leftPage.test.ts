import "fake-indexeddb/auto";
import { describe, expect, it, vi } from "vitest";
import { newStoredCheck, type StoredCheck } from "../../src/records/check/storedCheck.ts";
import { setEntry } from "../../src/records/filling/changes.ts";
import { DatabaseHandle } from "../../src/storage/database.ts";
import { pageGoesOn, timesPageLeft } from "../../src/storage/leftPage.ts";
import { closedLater, freshBrowsers, tab, value } from "./support/tabs.ts";

freshBrowsers();

function typed(stored: StoredCheck, text: string): StoredCheck {
  return setEntry(stored, "left.gap", { texts: [text], unit: "mm", tol: "" });
}

const gap = (stored: StoredCheck | null) => stored?.entries["left.gap"]?.texts[0];

const leave = () => window.dispatchEvent(new Event("pagehide"));

/** A browser that carries out nothing which is begun in its database as the page is left. */
function nothingBegun(): void {
  vi.spyOn(IDBDatabase.prototype, "transaction").mockImplementation(() => {
    throw new DOMException("left", "InvalidStateError");
  });
}

describe("a page that is left", () => {
  it("lets go of what it was about to read or write, and takes it up where it goes on", async () => {
    const handle = new DatabaseHandle();
    const aborted = vi.fn();
    let turns = 0;
    let left = false;
    const work = handle.run(async (database) => {
      turns += 1;
      const transaction = database.transaction(["checks"], "readwrite");
      transaction.addEventListener("abort", aborted);
      const checks = transaction.objectStore("checks");
      // As long as anything is asked of it, nobody else gets at the checks.
      while (turns === 1 && !left) await checks.count();
      await checks.put(newStoredCheck("Bay 1"));
      await transaction.done;
      return turns;
    });
    await vi.waitFor(() => expect(turns).toBe(1));
    leave();
    left = true;
    // Another page of the same browser is not kept waiting.
    expect(value(await (await tab()).list()).length).toBeLessThanOrEqual(1);
    expect(value(await work)).toBe(2);
    expect(aborted).toHaveBeenCalledTimes(1);
    expect(value(await (await tab()).list())).toHaveLength(1);
    handle.close();
  });

  it("begins nothing before it goes on", async () => {
    const handle = new DatabaseHandle();
    value(await handle.run((database) => database.count("checks")));
    const begun = vi.fn();
    leave();
    const work = handle.run((database) => {
      begun();
      return database.count("checks");
    });
    for (let turn = 0; turn < 20; turn++) await Promise.resolve();
    expect(begun).not.toHaveBeenCalled();
    expect(value(await work)).toBe(0);
    handle.close();
  });

  it("is known to have been left, once each time, and goes on once for all", async () => {
    expect(pageGoesOn()).toBeNull();
    const before = timesPageLeft();
    leave();
    const goesOn = pageGoesOn();
    leave();
    expect(timesPageLeft()).toBe(before + 2);
    expect(goesOn).not.toBeNull();
    expect(pageGoesOn()).toBe(goesOn);
    await goesOn;
    expect(pageGoesOn()).toBeNull();
  });

  it("lets go of each thing under way once, and not of what has ended", async () => {
    const handle = closedLater(new DatabaseHandle());
    const database = value(await handle.open());
    await database.put("checks", newStoredCheck("Bay 1"));
    const given = database.transaction(["checks"], "readwrite");
    given.abort();
    await given.done.catch(() => undefined);
    const aborts = vi.spyOn(IDBTransaction.prototype, "abort");
    leave();
    expect(aborts).not.toHaveBeenCalled();
    const underWay = database.transaction(["checks"], "readwrite");
    const written = underWay.objectStore("checks").put(newStoredCheck("Bay 2"));
    leave();
    leave();
    await expect(Promise.all([written, underWay.done])).rejects.toThrow();
    expect(aborts).toHaveBeenCalledTimes(1);
    vi.restoreAllMocks();
    expect(value(await (await tab()).list()).map(({ name }) => name)).toEqual(["Bay 1"]);
  });

  it("leaves a write alone that needs the page no more", async () => {
    const handle = closedLater(new DatabaseHandle());
    const database = value(await handle.open());
    const transaction = database.transaction(["checks"], "readwrite");
    void transaction.objectStore("checks").put(newStoredCheck("Bay 1"));
    transaction.commit();
    const other = database.transaction(["checks"]);
    expect(leave).not.toThrow();
    await transaction.done;
    await other.done.catch(() => undefined);
    expect(value(await (await tab()).list())).toHaveLength(1);
  });

  it("loses no keystroke where its database takes nothing more", async () => {
    const first = await tab();
    const stored = value(await first.put(newStoredCheck("Bay 1")));
    nothingBegun();
    first.putAway(typed(stored, "21"));
    vi.restoreAllMocks();
    expect(gap(value(await (await tab()).get(stored.id)))).toBe("21");
    expect(Object.keys(localStorage)).toEqual([]);
  });

  it("puts away no picture that is stored, and has all of them when it is opened", async () => {
    const first = await tab();
    const picture = { type: "image/png" as const, data: "A".repeat(5000) };
    const fresh = newStoredCheck("Bay 1");
    const before = { ...fresh, record: { ...fresh.record, photos: [picture] } };
    value(await first.put(before));
    const shown = value(await first.get(fresh.id));
    if (!shown) throw new Error("not stored");
    const added = { type: "image/png" as const, data: "B".repeat(500) };
    const photos = [...(shown.record.photos ?? []), added];
    nothingBegun();
    first.putAway(typed({ ...shown, record: { ...shown.record, photos } }, "21"));
    vi.restoreAllMocks();
    const [text = ""] = Object.keys(localStorage).map((key) => localStorage.getItem(key) ?? "");
    expect(text).not.toContain("A".repeat(5000));
    const again = value(await (await tab()).get(fresh.id));
    expect(gap(again)).toBe("21");
    expect(again?.record.photos).toEqual([picture, added]);
  });

  it("whose last write went through leaves nothing to be joined in later", async () => {
    const first = await tab();
    const edited = typed(newStoredCheck("Bay 1"), "21");
    first.putAway(edited);
    expect(Object.keys(localStorage)).toHaveLength(1);
    value(await first.put(edited));
    expect(Object.keys(localStorage)).toEqual([]);
  });

  it("keeps the newer text where an older write ends after it", async () => {
    const first = await tab();
    const stored = newStoredCheck("Bay 1");
    const older = typed(stored, "2");
    const newer = { ...typed(stored, "21"), updatedAt: "2099-01-01T00:00:00.000Z" };
    first.putAway(newer);
    value(await first.put(older));
    expect(Object.keys(localStorage)).toHaveLength(1);
  });

  it("opens with a text that is none, and is rid of it", async () => {
    localStorage.setItem("stopfit.away a b", "{");
    localStorage.setItem("stopfit.away c d", '{"stored":7}');
    expect(value(await (await tab()).list())).toEqual([]);
    expect(Object.keys(localStorage)).toEqual([]);
  });
});
