import "fake-indexeddb/auto";
import { beforeAll, describe, expect, it } from "vitest";
import { newStoredCheck, type StoredCheck } from "../../src/records/check/storedCheck.ts";
import { setEntry } from "../../src/records/filling/changes.ts";
import { inModelUnits } from "../../src/saying/modelUnits.ts";
import {
  afterClockOf,
  joinedWith,
  type Lineage,
  unsoundKeys,
} from "../../src/storage/joinedRows.ts";
import { fetchJoining, joining } from "../../src/storage/joining.ts";

const base: StoredCheck = {
  ...newStoredCheck("Bay 1"),
  revision: 3,
  updatedAt: "2026-05-02T10:00:00.000Z",
};
const at = (stored: StoredCheck, time: string): StoredCheck => ({
  ...stored,
  updatedAt: `2026-05-02T${time}.000Z`,
});
const typed = (stored: StoredCheck, id: "left.gap" | "right.gap", text: string) =>
  setEntry(stored, id, { texts: [text], unit: "mm", tol: "1" });
const text = (stored: StoredCheck, id: string) => stored.entries[id]?.texts[0];
const lineage = (more: Partial<Lineage> = {}): Lineage => ({
  id: base.id,
  content: base,
  revision: 3,
  joined: false,
  ...more,
});

describe("the time of a version", () => {
  const changed = typed(base, "left.gap", "21");

  it("is later than that of the one it takes the place of, also where the clock was set back", () => {
    expect(afterClockOf(at(base, "10:00:00"), at(changed, "11:00:00"))).toEqual(
      at(changed, "11:00:00"),
    );
    for (const time of ["10:00:00", "08:00:00"]) {
      expect(afterClockOf(at(base, "10:00:00"), at(changed, time)).updatedAt).toBe(
        "2026-05-02T10:00:00.001Z",
      );
    }
  });

  it("stays where nothing was changed, nothing was there, or it is another check's", () => {
    expect(afterClockOf(at(base, "10:00:00"), at(base, "08:00:00"))).toEqual(at(base, "08:00:00"));
    expect(afterClockOf(null, at(changed, "08:00:00"))).toEqual(at(changed, "08:00:00"));
    const other = at({ ...changed, id: "another" }, "08:00:00");
    expect(afterClockOf(at(base, "10:00:00"), other)).toEqual(other);
  });
});

describe("what is stored where another tab may have written", () => {
  beforeAll(fetchJoining);
  const mine = at(typed(base, "left.gap", "21"), "11:00:00");
  const theirs = { ...at(typed(base, "right.gap", "30"), "10:30:00"), revision: 4 };

  it("is mine, a revision on, where nothing was there or nobody wrote since", () => {
    expect(joining()).not.toBeNull();
    expect(joinedWith(mine, null, null, inModelUnits)).toEqual({ ...mine, revision: 1 });
    expect(joinedWith(mine, base, lineage(), inModelUnits)).toEqual({ ...mine, revision: 4 });
    expect(joinedWith(mine, base, null, inModelUnits)).toEqual({ ...mine, revision: 4 });
    const { revision: _, ...unkept } = base;
    expect(joinedWith(unkept, unkept, null, inModelUnits).revision).toBe(1);
  });

  it("is both joined, the later word first, where another tab wrote since", () => {
    const joined = joinedWith(mine, theirs, lineage(), inModelUnits);
    expect([text(joined, "left.gap"), text(joined, "right.gap")]).toEqual(["21", "30"]);
    expect([joined.id, joined.revision]).toEqual([base.id, 5]);
    const early = at(typed(base, "right.gap", "29"), "10:10:00");
    expect(text(joinedWith(early, theirs, lineage(), inModelUnits), "right.gap")).toBe("30");
    // Of the same moment, what is written now is the later.
    for (const time of ["10:30:00", "10:40:00"]) {
      const late = at(typed(base, "right.gap", "29"), time);
      expect(text(joinedWith(late, theirs, lineage(), inModelUnits), "right.gap")).toBe("29");
    }
  });

  it("is joined as well where what is stored holds more than what this tab was handed", () => {
    const joined = joinedWith(
      mine,
      { ...theirs, revision: 3 },
      lineage({ joined: true }),
      inModelUnits,
    );
    expect([text(joined, "left.gap"), text(joined, "right.gap")]).toEqual(["21", "30"]);
  });

  it("is mine beside theirs where it is not known what mine grew from, and nothing is lost", () => {
    const copy = joinedWith(mine, theirs, null, inModelUnits);
    expect(copy.id).not.toBe(base.id);
    expect([copy.name, copy.revision]).toEqual(["Bay 1 (saved from another tab)", 1]);
    expect(text(copy, "left.gap")).toBe("21");
    // The same content needs no copy.
    expect(joinedWith({ ...theirs, revision: 1 }, theirs, null, inModelUnits)).toEqual({
      ...theirs,
      revision: 5,
    });
  });
});

describe("rows that no check can be", () => {
  it("are those whose key is no id, and those dated far ahead, each told once", async () => {
    const ahead = new Date(Date.now() + 400 * 86_400_000).toISOString();
    const rows = [
      { id: base.id, updatedAt: base.updatedAt },
      { id: 5, updatedAt: base.updatedAt },
      { id: newStoredCheck().id, updatedAt: ahead },
      { id: "", updatedAt: ahead },
    ];
    const store = {
      getAllKeys: async () => rows.map(({ id }) => id),
      index: () => ({
        getAllKeys: async ({ lower }: IDBKeyRange) =>
          rows.filter(({ updatedAt }) => updatedAt >= lower).map(({ id }) => id),
      }),
    };
    const keys = await unsoundKeys(store as unknown as Parameters<typeof unsoundKeys>[0]);
    expect(keys).toEqual([5, "", rows[2]?.id]);
  });
});
