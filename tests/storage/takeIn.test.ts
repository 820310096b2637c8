import "fake-indexeddb/auto";
import { describe, expect, it } from "vitest";
import { newStoredCheck, type StoredCheck } from "../../src/records/check/storedCheck.ts";
import { setEntry } from "../../src/records/filling/changes.ts";
import { inModelUnits } from "../../src/saying/modelUnits.ts";
import { DatabaseHandle, transact } from "../../src/storage/database.ts";
import { currentOf } from "../../src/storage/joinedRows.ts";
import { type Join, takeInto } from "../../src/storage/takeIn.ts";
import { closedLater, freshBrowsers, value } from "./support/tabs.ts";

freshBrowsers();

const typed = (stored: StoredCheck, gap: string) =>
  setEntry(stored, "left.gap", { texts: [gap], unit: "mm", tol: "1" });
const bay = newStoredCheck("Bay 1");
const gapOf = (stored: StoredCheck | null | undefined) => stored?.entries["left.gap"]?.texts[0];

const theBackups: Join = (_, backup) => backup;

/** A phone with these checks, a backup's check taken into it, and what is there afterwards. */
async function taken(here: readonly StoredCheck[], backup: StoredCheck, join: Join) {
  const handle = closedLater(new DatabaseHandle());
  const outcome = await handle.run(async (database) => {
    for (const stored of here) await database.put("checks", stored);
    return transact(database, (transaction) => takeInto(transaction, backup, join, inModelUnits));
  });
  const kept = await handle.run((database) =>
    transact(database, async (transaction) => {
      const keys = await transaction.objectStore("checks").getAllKeys();
      const all = [];
      for (const key of keys) all.push(await currentOf(transaction, key));
      return all.filter((each) => each !== null);
    }),
  );
  const all = value(kept);
  const stored = all.find(({ id }) => id === backup.id);
  const aside = all.find(({ id }) => id !== backup.id);
  return { outcome: value(outcome), stored, aside };
}

describe("a backup's check", () => {
  it("is added where none of its id is here, with its own count of versions", async () => {
    const added = await taken([], { ...typed(bay, "21"), revision: 7 }, theBackups);
    expect(added.outcome).toEqual({ kind: "added" });
    expect([gapOf(added.stored), added.stored?.revision]).toEqual(["21", 7]);
  });

  it("of an earlier version, which counted none, is its first", async () => {
    expect((await taken([], bay, theBackups)).stored?.revision).toBe(1);
  });

  it("that brings nothing new leaves what is here, to its count", async () => {
    const here = { ...typed(bay, "21"), revision: 4 };
    const { outcome, stored, aside } = await taken([here], bay, (current) => current);
    expect(outcome).toEqual({ kind: "present" });
    expect([stored?.revision, aside]).toEqual([4, undefined]);
  });

  it.each([
    [4, 9],
    [9, 4],
  ])(
    "that only adds to what is here is joined, a version later than %j and %j, and nothing set aside",
    async (mine, backups) => {
      const here = { ...bay, revision: mine };
      const backup = { ...typed(bay, "21"), revision: backups };
      const { outcome, stored, aside } = await taken([here], backup, theBackups);
      expect(outcome).toMatchObject({ kind: "joined", aside: null, before: { id: bay.id } });
      expect([gapOf(stored), stored?.revision, aside]).toEqual(["21", 10, undefined]);
    },
  );

  it("that replaces a reading leaves a copy of what was here among the deleted checks", async () => {
    const walk = { again: { under: "way" }, deletedAt: "2026-05-01T10:00:00.000Z" };
    const here = { ...typed(bay, "21"), revision: 4, ...walk } as unknown as StoredCheck;
    const before = new Date().toISOString();
    const { outcome, stored, aside } = await taken([here], typed(bay, "25"), theBackups);
    expect(gapOf(stored)).toBe("25");
    expect(stored?.revision).toBe(5);
    expect(gapOf(aside)).toBe("21");
    expect(aside).toMatchObject({ name: "Bay 1 (before a backup was restored)", revision: 1 });
    expect((aside?.deletedAt ?? "") >= before).toBe(true);
    expect("again" in (aside ?? {})).toBe(false);
    expect(outcome).toMatchObject({ kind: "joined", aside: aside?.id });
    expect(outcome.kind === "joined" && gapOf(outcome.before)).toBe("21");
  });
});
