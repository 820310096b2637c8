import fc from "fast-check";
import { describe, expect, it, vi } from "vitest";
import type { ReadingId } from "../../../src/physics/readings/readingId.ts";
import type { RemeasureItem } from "../../../src/physics/remeasure/planRemeasure.ts";
import { openStored } from "../../../src/records/check/openStored.ts";
import { copyStored, type StoredCheck } from "../../../src/records/check/storedCheck.ts";
import type { Entry } from "../../../src/records/entry/entry.ts";
import { toolsAtHand } from "../../../src/records/entry/toolsAtHand.ts";
import { setEntry } from "../../../src/records/filling/changes.ts";
import { storedFromRecord } from "../../../src/records/filling/storedFromRecord.ts";
import { earlierOf, withEarlier } from "../../../src/records/remeasure/earlierValues.ts";
import {
  addRepeat,
  finishReading,
  isRetaken,
  leaveWalk,
  openReading,
  putBack,
  startWalk,
  takeAnew,
  walkOf,
} from "../../../src/records/remeasure/remeasureWalk.ts";
import { said, worded } from "../../../src/saying/texts.ts";
import { mergeChecks } from "../../../src/storage/mergeChecks.ts";
import { demoRecord } from "../../support/demoRecords.ts";

const record = demoRecord("arm-fits");
const demo = storedFromRecord(record);

function item(reading: ReadingId, tool: { id: string; name: string } | null = null): RemeasureItem {
  return {
    reading,
    why: "doubt",
    forecast: {
      way: tool ? { kind: "tool", tool: { ...tool, halfWidth: 0.1 } } : { kind: "repeat", more: 3 },
      about: "reserve",
      side: "left",
      halfWidthNowMm: 8,
      halfWidthThenMm: 3,
      removed: 0.625,
      settlesQuestion: 0.7,
      settlesVerdict: 0.7,
    },
    sentence: ["Left gap"],
  };
}

const caliper = { id: "caliper", name: "a caliper" };
const at = (reading: ReadingId, stored = demo) =>
  openReading(startWalk(stored, "unsure"), item(reading, caliper), 2, { said, worded });
const typed = (stored: StoredCheck, id: string, texts: readonly string[]) => {
  const entry = stored.entries[id];
  if (!entry) throw new Error(id);
  return setEntry(stored, id, { ...entry, texts });
};

describe("a reading taken again", () => {
  it("keeps what stood there as an earlier value, and the new one in the record", () => {
    const anew = typed(takeAnew(at("left.gap"), "caliper"), "left.gap", ["20.6"]);
    expect(isRetaken(anew)).toBe(true);
    const done = finishReading(anew, "taken");
    const [earlier] = earlierOf(done, "left.gap");
    expect(earlier?.entry).toEqual(demo.entries["left.gap"]);
    expect(done.record.corners[0]?.gap?.values).toEqual([20.6]);
    expect(done.entries["left.gap"]?.tool).toBe("caliper");
    expect(walkOf(done)).toMatchObject({
      now: null,
      done: [{ reading: "left.gap", how: "taken" }],
      just: { about: "reserve", side: "left", halfWidthMm: 8 },
    });
  });

  it("with a better tool has that tool's ±; with the same one the ± it had", () => {
    const withTool = typed(takeAnew(at("left.gap"), "caliper"), "left.gap", ["20.6"]);
    expect(withTool.record.corners[0]?.gap?.tol).toBeLessThan(0.2);
    const same = typed(takeAnew(at("left.gap"), null), "left.gap", ["20.6"]);
    expect(same.record.corners[0]?.gap?.tol).toBe(record.corners[0]?.gap?.tol);
  });

  it("has its repeats added to those it had", () => {
    const more = addRepeat(at("right.gap"));
    const before = demo.entries["right.gap"]?.texts ?? [];
    expect(more.entries["right.gap"]?.texts).toEqual([...before, ""]);
    expect(isRetaken(typed(more, "right.gap", [...before, "22.4"]))).toBe(true);
  });

  it("has its old value back where it was emptied and left", () => {
    const emptied = takeAnew(at("left.gap"), null);
    expect(emptied.record.corners[0]?.gap).toBeUndefined();
    for (const left of [finishReading(emptied, "passed"), leaveWalk(emptied), putBack(emptied)]) {
      expect(left.record.corners[0]?.gap?.values).toEqual(record.corners[0]?.gap?.values);
      expect(earlierOf(left, "left.gap")).toEqual([]);
    }
  });
});

describe("a walk", () => {
  it("opens from a store or a backup as it was, and as none where it is none", () => {
    const walked = at("left.gap");
    const opened = openStored(JSON.parse(JSON.stringify(walked)));
    expect(opened && walkOf(opened)).toEqual(walkOf(walked));
    for (const again of [
      {},
      3,
      { level: "no", done: [], now: null },
      { level: "care", done: [3], now: null },
      null,
    ]) {
      const odd = openStored({
        ...JSON.parse(JSON.stringify(demo)),
        again,
        earlier: { a: 1, b: {} },
      });
      expect(odd && walkOf(odd)).toBeNull();
      expect(odd && earlierOf(odd, "left.gap")).toEqual([]);
    }
  });

  it("does not go with a copy, the earlier values do", () => {
    const done = finishReading(typed(takeAnew(at("left.gap"), null), "left.gap", ["20"]), "taken");
    const copy = copyStored(done, "Copy");
    expect(walkOf(copy)).toBeNull();
    expect(earlierOf(copy, "left.gap")).toHaveLength(1);
  });

  it("loses no earlier value where two tabs took readings again", () => {
    const take = (id: ReadingId) =>
      finishReading(typed(takeAnew(at(id), null), id, ["19"]), "taken");
    const merged = mergeChecks(demo, take("left.gap"), take("right.gap"));
    expect(earlierOf(merged, "left.gap")).toHaveLength(1);
    expect(earlierOf(merged, "right.gap")).toHaveLength(1);
  });

  it("keeps every earlier value where the clock stands or is set back, the latest first", () => {
    vi.useFakeTimers({ now: new Date("2026-03-01T08:00:00Z") });
    try {
      const entry = (text: string): Entry => ({ texts: [text], unit: "mm", tol: "1" });
      const twice = ["20", "21", "22"].reduce(
        (stored, text) => withEarlier(stored, "left.gap", entry(text)),
        demo,
      );
      vi.setSystemTime(new Date("2026-03-01T07:00:00Z"));
      const back = withEarlier(twice, "left.gap", entry("23"));
      expect(earlierOf(back, "left.gap").map((each) => each.entry.texts[0])).toEqual([
        "22",
        "21",
        "20",
        "23",
      ]);
    } finally {
      vi.useRealTimers();
    }
  });

  it("loses no value whatever is done in whatever order", () => {
    const ids = ["left.gap", "right.gap", "pivotToStop"] as const;
    const actions = {
      open: (stored: StoredCheck, id: ReadingId) =>
        openReading(stored, item(id), 2, { said, worded }),
      anew: (stored: StoredCheck) => takeAnew(stored, null),
      tool: (stored: StoredCheck) => takeAnew(stored, "caliper"),
      repeat: addRepeat,
      back: putBack,
      type: (stored: StoredCheck, _: string, text: string) => {
        const now = walkOf(stored)?.now;
        return now ? typed(stored, now.reading, [text]) : stored;
      },
      taken: (stored: StoredCheck) => finishReading(stored, "taken"),
      same: (stored: StoredCheck) => finishReading(stored, "same"),
      passed: (stored: StoredCheck) => finishReading(stored, "passed"),
      leave: (stored: StoredCheck) => startWalk(leaveWalk(stored), "unsure"),
    };
    type Action = keyof typeof actions;
    const steps = fc.array(
      fc.record({
        action: fc.constantFrom(...(Object.keys(actions) as Action[])),
        id: fc.constantFrom(...ids),
        text: fc.constantFrom("20", "21.5", "", "x"),
      }),
      { maxLength: 25 },
    );
    fc.assert(
      fc.property(steps, (all) => {
        let stored = startWalk(demo, "unsure");
        for (const { action, id, text } of all) {
          // The next reading is opened once the one before is done with.
          if (action === "open" && walkOf(stored)?.now) stored = finishReading(stored, "passed");
          stored = actions[action](stored, id, text);
          for (const reading of ids) {
            const now = walkOf(stored)?.now;
            const held = [
              stored.entries[reading],
              ...earlierOf(stored, reading).map(({ entry }) => entry),
              ...(now?.reading === reading ? [now.before] : []),
            ].map((entry) => entry?.texts.join());
            expect(held).toContain(demo.entries[reading]?.texts.join());
          }
        }
      }),
    );
  });
});

describe("tools at hand", () => {
  it("are those that reach: no caliper across the vehicle, a gauge for angles", () => {
    const tools = toolsAtHand(demo);
    const ids = (reading: ReadingId) => (tools[reading] ?? []).map(({ id }) => id);
    expect(ids("left.gap")).toContain("caliper");
    expect(ids("pivotToOuter")).not.toContain("caliper");
    expect(ids("armAngle")).toContain("angleGauge");
    expect(tools["stop.curve"]).toBeUndefined();
  });
});
