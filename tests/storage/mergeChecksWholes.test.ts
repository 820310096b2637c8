import { describe, expect, it } from "vitest";
import { newStoredCheck, type StoredCheck } from "../../src/records/check/storedCheck.ts";
import type { Entry } from "../../src/records/entry/entry.ts";
import {
  addLimit,
  chooseStop,
  removeCorner,
  removeLimit,
  setEntry,
} from "../../src/records/filling/changes.ts";
import { withChoice } from "../../src/records/filling/choice.ts";
import { mergeChecks } from "../../src/storage/mergeChecks.ts";

const empty = newStoredCheck("Bay");
const typed = (stored: StoredCheck, id: string, text: string, more: Partial<Entry> = {}) =>
  setEntry(stored, id, { texts: [text], unit: "mm", tol: "1", ...more });
const corner = (stored: StoredCheck, side: "left" | "right") =>
  stored.record.corners.find((each) => each.side === side);
const limits = (stored: StoredCheck, side: "left" | "right" = "left") =>
  corner(stored, side)?.limits.map(({ kind, reading }) => [kind, reading?.values]);
const texts = (stored: StoredCheck, begin: string) =>
  Object.fromEntries(
    Object.entries(stored.entries)
      .filter(([id]) => id.startsWith(begin))
      .map(([id, entry]) => [id, entry.texts[0]]),
  );

describe("a reading that two tabs changed", () => {
  it("is one tab's whole: no number under the other's unit, ± or name", () => {
    const base = typed(empty, "left.gap", "20", { tool: "rule", by: "M. Lind" });
    const mine = typed(base, "left.gap", "2.5", { tool: "rule", by: "M. Lind" });
    const theirs = typed(base, "left.gap", "20", { unit: "in", tol: "1/8", by: "I. Farrow" });
    const joined = mergeChecks(base, mine, theirs);
    expect(joined.entries["left.gap"]).toEqual(mine.entries["left.gap"]);
    expect(corner(joined, "left")?.gap).toEqual(corner(mine, "left")?.gap);
    const other = mergeChecks(base, theirs, mine);
    expect(other.entries["left.gap"]).toEqual(theirs.entries["left.gap"]);
    expect(corner(other, "left")?.gap).toEqual(corner(theirs, "left")?.gap);
  });

  it("and only one of them gave a source is not of that source", () => {
    const reading = (values: number[], more: object): StoredCheck => ({
      ...empty,
      record: {
        ...empty.record,
        corners: [{ side: "left", limits: [], gap: { values, tol: 1, ...more } }],
      },
    });
    const joined = mergeChecks(empty, reading([25], {}), reading([21], { source: "pack" }));
    expect(corner(joined, "left")?.gap).toEqual({ values: [25], tol: 1 });
  });
});

describe("what is made of two readings", () => {
  const settled = (stored: StoredCheck, side: "left" | "right") => corner(stored, side)?.settleMm;

  it("is made anew where each tab typed one of them", () => {
    const lifted = typed(empty, "left.liftedHeight", "520");
    const pushed = typed(empty, "left.pushedHeight", "510");
    for (const joined of [mergeChecks(empty, lifted, pushed), mergeChecks(empty, pushed, lifted)]) {
      expect(settled(joined, "left")).toBe(5);
      expect(texts(joined, "left.")).toEqual({
        "left.liftedHeight": "520",
        "left.pushedHeight": "510",
      });
    }
    const both = mergeChecks(empty, lifted, pushed);
    const higher = typed(both, "left.liftedHeight", "524");
    const lower = typed(both, "left.pushedHeight", "506");
    expect(settled(mergeChecks(both, higher, lower), "left")).toBe(9);
  });

  it("stays as it was where none of them was typed in either", () => {
    const given: StoredCheck = {
      ...empty,
      record: { ...empty.record, corners: [{ side: "left", limits: [], settleMm: 7 }] },
    };
    const joined = mergeChecks(
      given,
      typed(given, "left.gap", "21"),
      typed(given, "left.rideHeight", "512"),
    );
    expect(settled(joined, "left")).toBe(7);
  });
});

describe("limits, which go by their place", () => {
  const tyre = { kind: "tyre", at: "wheel" } as const;
  const damper = { kind: "damper", at: "wheel" } as const;
  const two = typed(
    typed(addLimit(addLimit(empty, "left", tyre), "left", damper), "left.limits.0", "160"),
    "left.limits.1",
    "104",
  );

  it("never get another limit's reading where one tab takes a limit out and the other types", () => {
    const fewer = removeLimit(two, "left", 0);
    const edited = typed(two, "left.limits.1", "105");
    const kept = mergeChecks(two, edited, fewer);
    expect(limits(kept)).toEqual([
      ["tyre", [160]],
      ["damper", [105]],
    ]);
    expect(texts(kept, "left.")).toEqual({ "left.limits.0": "160", "left.limits.1": "105" });
    const gone = mergeChecks(two, fewer, edited);
    expect(limits(gone)).toEqual([["damper", [104]]]);
    expect(texts(gone, "left.")).toEqual({ "left.limits.0": "104" });
  });

  it("are the other tab's where only that one changed them, also while a text here can't be read", () => {
    const base = addLimit(addLimit(empty, "left", tyre), "left", damper);
    const full = typed(base, "left.limits.1", "104");
    const unread = typed(full, "left.limits.0", "about 16");
    const fewer = removeLimit(full, "left", 0);
    const joined = mergeChecks(full, unread, fewer);
    expect(limits(joined)).toEqual([["damper", [104]]]);
    expect(texts(joined, "left.")).toEqual({ "left.limits.0": "104" });
  });

  it("that each tab began are the later one's, its readings with them", () => {
    const mine = addLimit(empty, "left", tyre);
    const theirs = typed(addLimit(empty, "left", damper), "left.limits.0", "104");
    const joined = mergeChecks(empty, mine, theirs);
    expect(limits(joined)).toEqual([["tyre", undefined]]);
    expect(texts(joined, "left.")).toEqual({});
    expect(limits(mergeChecks(empty, theirs, mine))).toEqual([["damper", [104]]]);
  });

  it("never do so on the right either", () => {
    const base = typed(
      typed(addLimit(addLimit(empty, "right", tyre), "right", damper), "right.limits.0", "160"),
      "right.limits.1",
      "104",
    );
    const edited = typed(base, "right.limits.1", "105");
    const joined = mergeChecks(base, edited, removeLimit(base, "right", 0));
    expect(limits(joined, "right")).toEqual([
      ["tyre", [160]],
      ["damper", [105]],
    ]);
    expect(texts(joined, "")).toEqual({ "right.limits.0": "160", "right.limits.1": "105" });
  });

  it("of one side leave those of the other side, and all else, as they are", () => {
    const right = typed(addLimit(two, "right", tyre), "right.limits.0", "150");
    const fewer = removeLimit(right, "left", 1);
    const edited = typed(typed(right, "right.limits.0", "151"), "left.gap", "21");
    for (const joined of [mergeChecks(right, fewer, edited), mergeChecks(right, edited, fewer)]) {
      expect(limits(joined)).toEqual([["tyre", [160]]]);
      expect(limits(joined, "right")).toEqual([["tyre", [151]]]);
      expect(corner(joined, "left")?.gap?.values).toEqual([21]);
      expect(texts(joined, "")).toEqual({
        "left.gap": "21",
        "left.limits.0": "160",
        "right.limits.0": "151",
      });
    }
  });
});

describe("a side that one tab took out", () => {
  const base = typed(typed(empty, "left.gap", "20"), "right.gap", "22");
  const height = typed(base, "left.rideHeight", "512");

  it("is there with all of its readings where the other tab went on with it and is the later", () => {
    const joined = mergeChecks(base, height, removeCorner(base, "left"));
    expect(corner(joined, "left")?.gap?.values).toEqual([20]);
    expect(corner(joined, "left")?.rideHeight?.values).toEqual([512]);
    expect(texts(joined, "")).toEqual({
      "left.gap": "20",
      "left.rideHeight": "512",
      "right.gap": "22",
    });
  });

  it("is gone with all of its readings where taking it out was the later", () => {
    const joined = mergeChecks(base, removeCorner(base, "left"), height);
    expect(joined.record.corners.map(({ side }) => side)).toEqual(["right"]);
    expect(texts(joined, "")).toEqual({ "right.gap": "22" });
    const other = mergeChecks(base, typed(base, "right.gap", "23"), removeCorner(base, "left"));
    expect(other.record.corners.map(({ side, gap }) => [side, gap?.values])).toEqual([
      ["right", [23]],
    ]);
    expect(texts(other, "")).toEqual({ "right.gap": "23" });
  });
});

describe("a side that one tab began", () => {
  it("has what either tab said of it", () => {
    const choice = withChoice(empty, "left.stand", "missing");
    const reading = typed(empty, "left.gap", "21");
    for (const joined of [
      mergeChecks(empty, choice, reading),
      mergeChecks(empty, reading, choice),
    ]) {
      expect(texts(joined, "")).toEqual({ "left.gap": "21" });
      expect(joined.choices).toEqual({ "left.stand": "missing" });
      expect(corner(joined, "left")?.gap?.values).toEqual([21]);
    }
  });
});

describe("a stop that was chosen", () => {
  const tall = { name: "Tall", duty: "impact" as const, usableCompressionMm: 40, batch: "7" };
  const short = { name: "Short", partNumber: "S-2", restLoss: 0.2, usableCompressionMm: 25 };
  const chosen = (stored: StoredCheck, stop: typeof tall | typeof short, id: string) =>
    withChoice(
      withChoice(chooseStop(stored, stop, "mm"), "stop.source", "pack"),
      "stop.packId",
      id,
    );

  it("is one stop where each tab chose another", () => {
    const [mine, theirs] = [chosen(empty, tall, "tall"), chosen(empty, short, "short")];
    for (const [one, two] of [
      [mine, theirs],
      [theirs, mine],
    ] as const) {
      const joined = mergeChecks(empty, one, two);
      expect(joined.record.stop).toEqual(one.record.stop);
      expect(texts(joined, "stop.")).toEqual(texts(one, "stop."));
      expect(joined.choices).toEqual(one.choices);
    }
  });

  it("gets nothing that the other tab typed of the stop before", () => {
    const base = typed(typed(empty, "stop.freeHeight", "60"), "stop.usableCompressionMm", "30");
    const edited = typed(typed(base, "stop.freeHeight", "61"), "left.gap", "21");
    for (const [one, two] of [
      [edited, chosen(base, short, "short")],
      [chosen(base, short, "short"), edited],
    ] as const) {
      const joined = mergeChecks(base, one, two);
      expect(joined.record.stop).toEqual(short);
      expect(texts(joined, "stop.")).toEqual(texts(chosen(base, short, "short"), "stop."));
      expect(joined.choices).toEqual({ "stop.source": "pack", "stop.packId": "short" });
      expect(texts(joined, "left.")).toEqual({ "left.gap": "21" });
      expect(corner(joined, "left")?.gap?.values).toEqual([21]);
    }
  });

  it("gets nothing either where only the part, or only the way of choosing, is another", () => {
    const base = chosen(empty, tall, "tall");
    const edited = typed(base, "stop.usableCompressionMm", "31");
    const part = chosen(base, short, "short");
    expect(mergeChecks(base, edited, part).record.stop).toEqual(short);
    const named = withChoice(chooseStop(base, short, "mm"), "stop.packId", "tall");
    const hand = withChoice(named, "stop.source", "hand");
    expect(mergeChecks(base, edited, hand).record.stop).toEqual(short);
  });

  it("is put together field by field where neither tab chose one", () => {
    const base = chosen(empty, tall, "tall");
    const joined = mergeChecks(
      base,
      typed(base, "stop.freeHeight", "61"),
      typed(base, "stop.usableCompressionMm", "31"),
    );
    expect(joined.record.stop).toMatchObject({
      name: "Tall",
      freeHeight: { values: [61] },
      usableCompressionMm: 31,
    });
    // Only the way was chosen, and no stop by it yet.
    const way = withChoice(base, "stop.source", "hand");
    const { stop: _, ...record } = way.record;
    const none = mergeChecks(base, { ...way, record }, typed(base, "left.gap", "21"));
    expect(none.record.stop).toBeUndefined();
    expect(corner(none, "left")?.gap?.values).toEqual([21]);
    const waiting = mergeChecks({ ...base, record }, { ...way, record }, base);
    expect(waiting.record.stop).toEqual(base.record.stop);
  });
});
