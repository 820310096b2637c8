import { describe, expect, it } from "vitest";
import { newStoredCheck, type StoredCheck } from "../../src/records/check/storedCheck.ts";
import { addLimit, removeLimit, setEntry } from "../../src/records/filling/changes.ts";
import { mergeChecks } from "../../src/storage/mergeChecks.ts";

const empty = newStoredCheck("Bay");
const entry = (text: string) => ({ texts: [text], unit: "mm" as const, tol: "1" });
const typed = (stored: StoredCheck, id: Parameters<typeof setEntry>[1], text: string) =>
  setEntry(stored, id, entry(text));
const withRecord = (stored: StoredCheck, change: object): StoredCheck => ({
  ...stored,
  record: { ...stored.record, ...change },
});
const corner = (stored: StoredCheck, side: "left" | "right") =>
  stored.record.corners.find((each) => each.side === side);

describe("fields of two versions", () => {
  it("come from whichever changed them, also by taking them out", () => {
    const base = withRecord(empty, { notes: "as it was", axle: "front" });
    const { notes: _, ...rest } = base.record;
    const without = { ...base, record: rest };
    const rear = withRecord(base, { axle: "rear" });
    for (const joined of [mergeChecks(base, without, rear), mergeChecks(base, rear, without)]) {
      expect("notes" in joined.record).toBe(false);
      expect(joined.record.axle).toBe("rear");
    }
  });

  it("are the later one's where both changed them", () => {
    const base = withRecord(empty, { notes: "as it was" });
    const [mine, theirs] = [
      withRecord(base, { notes: "mine" }),
      withRecord(base, { notes: "theirs" }),
    ];
    expect(mergeChecks(base, mine, theirs).record.notes).toBe("mine");
    const group = withRecord(base, { notes: { no: "text" } });
    expect(mergeChecks(base, mine, group).record.notes).toBe("mine");
    expect(mergeChecks(base, group, mine).record.notes).toEqual({ no: "text" });
    const list = withRecord(base, { notes: ["no text"] });
    expect(mergeChecks(base, mine, list).record.notes).toBe("mine");
    expect(mergeChecks(base, list, mine).record.notes).toEqual(["no text"]);
  });

  it("of each side of the vehicle stay with their side, in one order", () => {
    const mine = typed(empty, "right.gap", "22");
    const theirs = typed(empty, "left.gap", "20");
    for (const joined of [mergeChecks(empty, mine, theirs), mergeChecks(empty, theirs, mine)]) {
      expect(joined.record.corners.map(({ side }) => side)).toEqual(["left", "right"]);
      expect(corner(joined, "left")?.gap?.values).toEqual([20]);
      expect(corner(joined, "right")?.gap?.values).toEqual([22]);
    }
    const both = mergeChecks(empty, mine, theirs);
    const fewer = withRecord(both, { corners: both.record.corners.slice(0, 1) });
    expect(mergeChecks(both, fewer, both).record.corners.map(({ side }) => side)).toEqual(["left"]);
  });

  const limited = addLimit(addLimit(empty, "left", { kind: "tyre", at: "wheel" }), "left", {
    kind: "damper",
    at: "wheel",
  });
  const limits = (stored: StoredCheck) =>
    corner(stored, "left")?.limits.map(({ kind, reading }) => [kind, reading?.values]);

  it("of limits go by their place where there are as many, and agree where there are not", () => {
    const base = typed(typed(limited, "left.limits.0", "160"), "left.limits.1", "104");
    const mine = typed(base, "left.limits.0", "161");
    const theirs = typed(base, "left.limits.1", "105");
    const joined = mergeChecks(base, mine, theirs);
    expect(limits(joined)).toEqual([
      ["tyre", [161]],
      ["damper", [105]],
    ]);
    const fewer = mergeChecks(base, removeLimit(base, "left", 1), mine);
    expect(limits(fewer)).toHaveLength(1);
    expect(fewer.entries["left.limits.1"]).toBeUndefined();
  });

  it("of other lists are one version's whole", () => {
    const base = withRecord(empty, { events: [1, 2] });
    const mine = withRecord(base, { events: [1, 3] });
    const theirs = withRecord(base, { events: [5, 2] });
    const events = (stored: StoredCheck) => (stored.record as { events?: unknown }).events;
    expect(events(mergeChecks(base, mine, theirs))).toEqual([1, 3]);
    expect(events(mergeChecks(base, base, theirs))).toEqual([5, 2]);
    const longer = withRecord(base, { events: [{ a: 1 }, { a: 2 }] });
    const other = withRecord(base, { events: [{ a: 1 }] });
    expect(events(mergeChecks(base, longer, other))).toEqual([{ a: 1 }, { a: 2 }]);
    expect(events(mergeChecks(empty, longer, other))).toEqual([{ a: 1 }, { a: 2 }]);
    // An item that each began is no common one, and one that is gone is none.
    const [begun, otherBegun] = [
      withRecord(base, { events: [{ a: 1, b: 1 }] }),
      withRecord(base, { events: [{ a: 2, c: 1 }] }),
    ];
    expect(events(mergeChecks(empty, begun, otherBegun))).toEqual([{ a: 1, b: 1 }]);
    const changed = withRecord(base, { events: [{ a: 9 }, { a: 2 }] });
    expect(events(mergeChecks(longer, changed, other))).toEqual([{ a: 9 }, { a: 2 }]);
    // As many objects on every side: each is joined with its own.
    const third = withRecord(base, { events: [{ a: 1, c: 3 }, { a: 2 }] });
    expect(events(mergeChecks(longer, changed, third))).toEqual([{ a: 9, c: 3 }, { a: 2 }]);
  });
});

describe("what stands beside the record", () => {
  const more = (stored: StoredCheck, change: object) => ({ ...stored, ...change }) as StoredCheck;

  it("keeps a verdict only where the joined record is the one it was given for", () => {
    const mine = more(typed(empty, "left.gap", "21"), { lastVerdict: "ok" });
    expect(mergeChecks(empty, mine, empty).lastVerdict).toBe("ok");
    const theirs = typed(empty, "right.gap", "30");
    expect("lastVerdict" in mergeChecks(empty, mine, theirs)).toBe(false);
    expect("lastVerdict" in mergeChecks(empty, typed(empty, "left.gap", "21"), empty)).toBe(false);
  });

  it("keeps earlier values and what waits, of whichever version has them", () => {
    const waits = more(empty, { aside: { handStop: { name: "Tall" } } });
    const earlier = more(empty, { earlier: { "left.gap": [{ texts: ["20"] }] } });
    for (const joined of [mergeChecks(empty, waits, earlier), mergeChecks(empty, earlier, waits)]) {
      expect(joined.aside).toEqual(waits.aside);
      expect(joined.earlier).toEqual(earlier.earlier);
    }
    const neither = mergeChecks(
      empty,
      typed(empty, "left.gap", "1"),
      typed(empty, "armAngle", "2"),
    );
    expect(["aside", "earlier", "lastVerdict"].filter((name) => name in neither)).toEqual([]);
    // What no longer waits, in one of them, does not come back.
    const { aside: _, ...over } = waits;
    expect("aside" in mergeChecks(waits, waits, over)).toBe(false);
  });

  it("is there again where one version was deleted and the other typed into", () => {
    const deleted = more(empty, { deletedAt: "2026-05-02T10:00:00.000Z" });
    const theirs = typed(empty, "left.gap", "21");
    for (const joined of [
      mergeChecks(empty, deleted, theirs),
      mergeChecks(empty, theirs, deleted),
    ]) {
      expect("deletedAt" in joined).toBe(false);
      expect(corner(joined, "left")?.gap?.values).toEqual([21]);
    }
  });
});
