import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { assessFitment } from "../../../src/physics/assess.ts";
import { meanOf } from "../../../src/physics/uncertainty/readingMean.ts";
import type { CheckRecord } from "../../../src/records/check/checkRecord.ts";
import { fitmentOf } from "../../../src/records/check/fitmentOf.ts";
import { answering } from "../../../src/records/findings/answering.ts";
import {
  type Build,
  buildsToMake,
  coverageByStop,
  type Served,
} from "../../../src/records/findings/coverage.ts";
import {
  measuredAgainstPack,
  packWith,
} from "../../../src/records/findings/measuredAgainstPack.ts";
import { quantile, spreadOf } from "../../../src/records/findings/quantiles.ts";
import type { FindingSubject } from "../../../src/records/findings/subject.ts";
import { decidingReadings, verdictsByPlatform } from "../../../src/records/findings/verdicts.ts";
import { demoPack } from "../../../src/records/pack/demoPack.ts";
import { readPackText } from "../../../src/records/pack/readPack.ts";
import type { Decision } from "../../../src/records/review/decision.ts";
import { said } from "../../../src/saying/texts.ts";
import { generateRecords } from "../../support/generateRecords.ts";

const records = [...generateRecords(30)];
function subject(record: CheckRecord, decisions: readonly Decision[] = []): FindingSubject {
  const assessed = assessFitment(fitmentOf(record), { samples: 200 });
  return {
    key: record.id,
    record,
    assessment: assessed.ok ? assessed.value : null,
    firstReceivedAt: "2026-05-01T00:00:00.000Z",
    decisions,
  };
}
const subjects = records.map((record) => subject(record));

describe("quantiles", () => {
  // Values from R 4's quantile(c(1, 2, 4, 7), type = 7), from memory: 1.75, 3, 4.75.
  it("as definition 7 has them", () => {
    expect([0.25, 0.5, 0.75].map((share) => quantile([1, 2, 4, 7], share))).toEqual([
      1.75, 3, 4.75,
    ]);
    expect(spreadOf([])).toBeNull();
    expect(spreadOf([Number.NaN, 2])).toEqual({ n: 1, median: 2, quarter: 2, threeQuarters: 2 });
  });

  it("lie in order and between the least and the greatest", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -1e6, max: 1e6 }), { minLength: 1 }), (values) => {
        const spread = spreadOf(values);
        if (!spread) throw new Error("nothing");
        const { quarter, median, threeQuarters } = spread;
        const order = [Math.min(...values), quarter, median, threeQuarters, Math.max(...values)];
        expect(order).toEqual([...order].sort((a, b) => a - b));
      }),
    );
  });
});

describe("verdicts and what decides", () => {
  it("every computed check counts once, under its platform", () => {
    const rows = verdictsByPlatform(subjects, demoPack);
    const computed = subjects.filter(({ assessment }) => assessment !== null).length;
    expect(rows.reduce((sum, { count }) => sum + count, 0)).toBe(computed);
    for (const { count, verdicts, missed } of rows) {
      expect(Object.values(verdicts).reduce((sum, each) => sum + each, 0)).toBe(count);
      for (const each of Object.values(missed)) expect(each).toBeLessThanOrEqual(count);
    }
  });

  it("a check that does not fit misses a limit; one that fits is decided by nothing", () => {
    const fitting = subjects.filter(({ assessment }) => assessment?.verdict === "ok");
    expect(decidingReadings(fitting)).toEqual([]);
    const failing = subjects.filter(({ assessment }) => assessment?.verdict === "no");
    expect(failing.length).toBeGreaterThan(0);
    const missed = verdictsByPlatform(failing, demoPack).map((row) =>
      Object.values(row.missed).reduce((sum, each) => sum + each, 0),
    );
    for (const each of missed) expect(each).toBeGreaterThan(0);
    for (const { reading, share } of decidingReadings(subjects)) {
      expect(reading).not.toMatch(/^(left|right)\./);
      expect(share).toBeGreaterThan(0);
      expect(share).toBeLessThanOrEqual(1);
    }
  });
});

describe("measured against the pack", () => {
  const [platform] = demoPack.platforms.filter(({ layout }) => layout.kind === "arm");
  const [arm] = records.filter(({ layout }) => layout.kind === "arm");
  if (!platform || !arm) throw new Error("no arm");
  const pack = demoPack;
  const off = (mm: number, source?: "pack"): CheckRecord => {
    const readings = Object.fromEntries(
      Object.entries(platform.layout.readings).map(([name, reading]) => [
        name,
        { ...reading, values: [meanOf(reading) + mm], ...(source && { source }) },
      ]),
    );
    return {
      ...arm,
      axle: platform.axle,
      vehicle: { ...arm.vehicle, platformId: platform.id },
      layout: { ...platform.layout, readings } as CheckRecord["layout"],
      corners: arm.corners.map(({ rideHeight: _r, gap: _g, ...corner }) => corner) as never,
    };
  };
  const asSubject = (record: CheckRecord): FindingSubject => ({
    key: "k",
    record,
    assessment: null,
    firstReceivedAt: "",
    decisions: [],
  });

  it("differences are those that were measured; what came from the pack is none", () => {
    const rows = measuredAgainstPack(
      [off(1), off(2), off(4), off(7), off(100, "pack")].map(asSubject),
      pack,
    );
    expect(rows.length).toBe(Object.keys(platform.layout.readings).length);
    for (const { differences } of rows) {
      expect(differences.n).toBe(4);
      expect(differences.median).toBeCloseTo(3, 9);
    }
  });

  it("taken over, the pack has the median, says so, and is a pack; then nothing differs", () => {
    const measured = [off(1), off(2), off(3), off(4), off(5)].map(asSubject);
    const [row] = measuredAgainstPack(measured, pack);
    if (!row) throw new Error("no difference");
    const next = packWith(pack, row, "2026-06-01", said);
    const read = readPackText(JSON.stringify(next));
    expect(read.ok).toBe(true);
    const again = measuredAgainstPack(measured, next).find((each) => each.reading === row.reading);
    expect(Math.abs(again?.differences.median ?? 9)).toBeLessThanOrEqual(0.05);
    expect(next.platforms.find(({ id }) => id === platform.id)?.notes).toContain(
      "median of 5 measurements",
    );
    expect(pack.platforms).toBe(demoPack.platforms);
  });
});

it("answering counts what stands, and days from when it came in", () => {
  const decision = (
    key: string,
    kind: Decision["kind"],
    day: number,
    undoes?: string,
  ): Decision => ({
    key,
    kind,
    checkId: "c",
    submission: "s",
    by: "ines",
    at: `2026-05-0${day}T00:00:00.000Z`,
    note: "",
    ...(undoes && { undoes }),
  });
  const [record] = records;
  if (!record) throw new Error("no record");
  const of = (...decisions: Decision[]): FindingSubject => ({
    key: "k",
    record,
    assessment: null,
    firstReceivedAt: "2026-05-01T00:00:00.000Z",
    decisions,
  });
  const found = answering([
    of(),
    of(decision("a", "accept", 2)),
    of(decision("b", "askAgain", 4), decision("c", "accept", 6)),
    of(decision("d", "askAgain", 3), decision("e", "undo", 3, "d")),
  ]);
  expect(found).toMatchObject({ checks: 4, answered: 2, askedAgain: 1, days: { n: 2, median: 2 } });
});

describe("coverage", () => {
  it("counts each vehicle once a stop, with any spacer", () => {
    const served: Served[] = [
      {
        key: "1",
        combinations: [
          { stop: "a", spacerMm: 0 },
          { stop: "a", spacerMm: 10 },
        ],
        builds: [],
      },
      { key: "2", combinations: [{ stop: "a", spacerMm: 10 }], builds: [] },
      { key: "3", combinations: [], builds: [] },
    ];
    expect(coverageByStop(served, ["a", "b"])).toEqual([
      { stop: "a", count: 2, plain: 1, share: 2 / 3 },
      { stop: "b", count: 0, plain: 0, share: 0 },
    ]);
  });

  const build = (n: number): Build => ({ heightMm: 40 + 10 * n, stiffnessClass: 100 });
  const covers = fc.array(fc.uniqueArray(fc.integer({ min: 0, max: 5 }), { maxLength: 4 }), {
    minLength: 1,
    maxLength: 8,
  });

  it("greedy serves at least 1 − 1/e of what the best choice of as many builds serves", () => {
    fc.assert(
      fc.property(covers, fc.integer({ min: 1, max: 3 }), (vehicles, most) => {
        const unserved = vehicles.map(
          (ns, at): Served => ({
            key: `${at}`,
            combinations: [],
            builds: ns.map(build),
          }),
        );
        const chosen = buildsToMake(unserved, most);
        const greedy = chosen.reduce((sum, { more }) => sum + more, 0);
        let best = 0;
        for (let mask = 0; mask < 64; mask += 1) {
          const set = [0, 1, 2, 3, 4, 5].filter((n) => mask & (1 << n));
          if (set.length > most) continue;
          best = Math.max(best, vehicles.filter((ns) => ns.some((n) => set.includes(n))).length);
        }
        expect(greedy).toBeLessThanOrEqual(best);
        expect(greedy).toBeGreaterThanOrEqual((1 - 1 / Math.E) * best - 1e-9);
        for (const [at, { more }] of chosen.entries()) {
          expect(more).toBeGreaterThan(0);
          expect(more).toBeLessThanOrEqual(chosen[at - 1]?.more ?? Number.POSITIVE_INFINITY);
        }
      }),
    );
  });
});
