import * as fc from "fast-check";
import { describe, expect, it, vi } from "vitest";
import {
  changeRecord,
  newStoredCheck,
  type StoredCheck,
} from "../../src/records/check/storedCheck.ts";
import {
  addLimit,
  chooseLayout,
  chooseStop,
  removeLimit,
  setEntry,
} from "../../src/records/filling/changes.ts";
import { joinedWithBackup, withMissing } from "../../src/storage/joinBackup.ts";

vi.setConfig({ testTimeout: 30_000 });

function at(stored: StoredCheck, updatedAt: string, revision: number): StoredCheck {
  return { ...stored, updatedAt, revision };
}

function typed(stored: StoredCheck, id: string, ...texts: string[]): StoredCheck {
  return setEntry(stored, id, { texts, unit: "mm", tol: "1" });
}

const fresh = newStoredCheck("Bay 1");
const monday = "2026-05-04T08:00:00.000Z";
const tuesday = "2026-05-05T08:00:00.000Z";
const gap = (stored: StoredCheck, side = "left") =>
  stored.record.corners.find((corner) => corner.side === side)?.gap?.values;

describe("a backup's version of a check", () => {
  it("made on this phone before the check was gone on with brings nothing, whatever the clock says", () => {
    const backup = at(typed(fresh, "left.gap", "21"), tuesday, 4);
    const here = at(typed(fresh, "left.gap", "25"), monday, 5);
    expect(joinedWithBackup(here, backup, true)).toBe(here);
  });

  it("that is newer takes the place of the older, and what only the older has stays", () => {
    const here = at(typed(typed(fresh, "left.gap", "21"), "right.gap", "40"), monday, 4);
    const backup = at(typed(fresh, "left.gap", "25"), tuesday, 9);
    const joined = joinedWithBackup(here, backup, false);
    expect([gap(joined, "left"), gap(joined, "right")]).toEqual([[25], [40]]);
    expect(joined.entries["right.gap"]?.texts).toEqual(["40"]);
  });

  it("that is older fills in what was never taken here, and replaces nothing", () => {
    const here = at(typed(fresh, "left.gap", "25"), tuesday, 2);
    const backup = at(typed(typed(fresh, "left.gap", "21"), "left.rideHeight", "512"), monday, 7);
    const joined = joinedWithBackup(here, backup, false);
    expect(gap(joined)).toEqual([25]);
    expect(joined.record.corners[0]?.rideHeight?.values).toEqual([512]);
  });

  it("of the very same content is nothing new", () => {
    const here = at(typed(fresh, "left.gap", "25"), tuesday, 2);
    expect(joinedWithBackup(here, { ...here, updatedAt: monday, revision: 9 }, false)).toBe(here);
  });

  it("that has nothing of the record that is not here takes nothing from it", () => {
    const here = addLimit(at(typed(fresh, "left.gap", "25"), tuesday, 2), "left", {
      kind: "tyre",
      at: "wheel",
    });
    expect(withMissing(here, at(fresh, monday, 1)).record).toEqual(here.record);
    expect(withMissing(here, at(here, monday, 1)).record).toEqual(here.record);
    // A damaged or hostile backup may hold a record of another name under this check.
    const another = { ...here, record: { ...here.record, id: "other", name: "other" } };
    const self = { ...here, record: { ...here.record, id: "self", name: "self" } };
    expect(withMissing(self, at(another, monday, 1)).record).toEqual(self.record);
    const copied = at(typed(fresh, "left.gap", "25"), monday, 7);
    const same = at(typed(fresh, "left.gap", "25"), tuesday, 2);
    expect(joinedWithBackup(same, copied, false).record).toEqual(same.record);
  });

  it("does not bring back a reading that was cleared since", () => {
    const here = at(typed(typed(fresh, "left.gap", "21"), "left.gap", ""), tuesday, 5);
    const backup = at(typed(fresh, "left.gap", "21"), monday, 4);
    const joined = joinedWithBackup(here, backup, false);
    expect(gap(joined)).toBeUndefined();
    expect(joined.entries["left.gap"]?.texts).toEqual([""]);
  });

  it("deletes nothing here, and leaves what was deleted here later among the deleted", () => {
    const here = at(typed(fresh, "left.gap", "21"), monday, 4);
    const deletedThere = { ...here, deletedAt: tuesday, revision: 8 };
    expect(joinedWithBackup(here, deletedThere, false).deletedAt).toBeUndefined();
    const deletedHere = { ...here, deletedAt: tuesday };
    const backup = at(typed(fresh, "left.gap", "22"), monday, 3);
    expect(joinedWithBackup(deletedHere, backup, false).deletedAt).toBe(tuesday);
    const later = at(typed(fresh, "left.gap", "22"), "2026-05-06T08:00:00.000Z", 9);
    expect(joinedWithBackup(deletedHere, later, false).deletedAt).toBeUndefined();
  });

  it("never mixes two stops, two layouts or two lists of limits", () => {
    const tall = { name: "Tall", duty: "impact" as const, usableCompressionMm: 40 };
    const short = { name: "Short", testedAtSpeed: true, damping: null };
    const here = at(chooseStop(chooseLayout(fresh, "strut"), tall, "mm"), tuesday, 4);
    const arm = typed(chooseLayout(fresh, "arm"), "pivotToStop", "152");
    const backup = at(chooseStop(arm, short, "mm"), monday, 9);
    const joined = joinedWithBackup(here, backup, false);
    expect(joined.record.stop).toEqual(tall);
    expect(joined.record.layout).toEqual(here.record.layout);

    const metal = { kind: "metal" as const, at: "wheel" as const };
    let two = addLimit(addLimit(fresh, "left", metal), "left", { kind: "tyre", at: "wheel" });
    two = typed(typed(two, "left.limits.0", "95"), "left.limits.1", "110");
    const one = removeLimit(two, "left", 0);
    const limits = joinedWithBackup(at(one, tuesday, 4), at(two, monday, 9), false);
    expect(limits.record.corners).toEqual(one.record.corners);
    expect(Object.keys(limits.entries)).toEqual(["left.limits.0"]);
    expect(limits.entries["left.limits.0"]?.texts).toEqual(["110"]);
  });

  it("leaves no verdict that belongs to other readings", () => {
    const here: StoredCheck = {
      ...at(typed(fresh, "left.gap", "25"), tuesday, 4),
      lastVerdict: "ok",
    };
    const backup = at(typed(fresh, "right.gap", "40"), monday, 9);
    expect(joinedWithBackup(here, backup, false).lastVerdict).toBeUndefined();
  });
});

describe("two versions of any checks", () => {
  const ids = ["left.gap", "right.gap", "left.rideHeight", "armAngle", "vehicle.liftMm"] as const;
  const edits = fc.array(
    fc.tuple(fc.constantFrom(...ids), fc.constantFrom("", "7", "21", "2 5/", "a thumb")),
    { maxLength: 8 },
  );
  const versions = fc.record({ shared: edits, newer: edits, older: edits }).map((given) => {
    const apply = (from: StoredCheck, list: readonly (readonly [string, string])[]) =>
      list.reduce((stored, [id, text]) => typed(stored, id, text), from);
    const base = apply(fresh, given.shared);
    return {
      newer: at(apply(base, given.newer), tuesday, 3),
      older: at(apply(base, given.older), monday, 8),
    };
  });

  it("joined have every reading of both, the newer's where both have one, and are joined once for all", () => {
    fc.assert(
      fc.property(versions, fc.boolean(), ({ newer, older }, newerHere) => {
        const joined = newerHere
          ? joinedWithBackup(newer, older, false)
          : joinedWithBackup(older, newer, false);
        for (const id of ids) {
          const filled = older.entries[id]?.texts[0] ? older.entries[id] : undefined;
          expect(joined.entries[id]).toEqual(newer.entries[id] ?? filled);
        }
        // Record and entries agree: typed anew, the record is the same.
        const again = Object.entries(joined.entries).reduce(
          (stored, [id, entry]) => setEntry(stored, id, entry),
          joined,
        );
        expect(again.record).toEqual(joined.record);
        expect(joinedWithBackup(joined, older, false)).toBe(joined);
        expect(joinedWithBackup(joined, newer, false)).toBe(joined);
      }),
      { numRuns: 60 },
    );
  });

  it("leave out nothing that was chosen, not typed", () => {
    const axle = changeRecord(fresh, (record) => ({ ...record, axle: "rear", notes: "Worn bush" }));
    const joined = withMissing(typed(fresh, "left.gap", "21"), axle);
    expect([joined.record.axle, joined.record.notes, gap(joined)]).toEqual([
      "rear",
      "Worn bush",
      [21],
    ]);
  });
});
