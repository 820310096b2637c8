import { describe, expect, it } from "vitest";
import type { QuantityId } from "../../../src/physics/readings/readingId.ts";
import { LinearDoubt, MarginDoubt } from "../../../src/physics/remeasure/linearDoubt.ts";
import type { Margin } from "../../../src/physics/remeasure/margin.ts";
import type { AfterReading } from "../../../src/physics/remeasure/readAgain.ts";
import { RandomSource } from "../../../src/physics/uncertainty/randomSource.ts";

/** Ten thousand draws scatter a share by at most 0.005: four times that. */
const scatter = 0.02;

type Part = readonly [id: QuantityId, slope: number, halfWidth: number, standardError: number];

function margin(middle: number, parts: readonly Part[], change: Partial<Margin> = {}): Margin {
  return {
    question: {
      side: "left",
      why: "doubt",
      check: { id: "clearance", state: "unsure", sentence: [] },
      readings: [],
    },
    about: "reserve",
    middle,
    parts: parts.map(([id, slope, halfWidth, standardError]) => ({
      reading: { id, mean: 50, halfWidth, standardError },
      count: 1,
      slope,
    })),
    interval: null,
    probability: null,
    inReach: true,
    ...change,
  };
}

const doubtOf = (...margins: readonly Margin[]) => new LinearDoubt(margins, false);
const near = (value: number | undefined, wanted: number, off = scatter) =>
  expect(Math.abs((value ?? Number.NaN) - wanted)).toBeLessThan(off);

describe("the doubt about a margin as it is", () => {
  it("of one rectangular part: 95 % of its width, and as much of it above 0 as there is", () => {
    const one = doubtOf(margin(1, [["gap", -2, 2, 0]]));
    // ±4 mm; from −1 on lies 5 of its 8 mm.
    near(one.margins[0]?.halfWidth(), 3.8, 0.04);
    near(one.margins[0]?.probability(), 5 / 8);
  });

  it("of one normal part: 1.96 standard deviations, and Φ(1/2) above −1", () => {
    const one = doubtOf(margin(1, [["gap", 0.5, 0, 4]]));
    near(one.margins[0]?.halfWidth(), 3.92, 0.12);
    near(one.margins[0]?.probability(), 0.6915);
  });

  it("of both in one reading: their variances add", () => {
    // Four rectangular variances of 3 and one normal of 4, all of one reading and of four others.
    const rectangles = (
      ["left.limits.0", "left.limits.1", "left.limits.2", "left.limits.3"] as const
    ).map((id): Part => [id, 1, 3, id === "left.limits.0" ? 2 : 0]);
    near(doubtOf(margin(0, rectangles)).margins[0]?.halfWidth(), 1.96 * Math.sqrt(4 * 3 + 4), 0.25);
  });

  it("of none: none, and kept for certain from 0 on", () => {
    const one = doubtOf(margin(0, []), margin(-0.01, [["gap", 1, 0, 0]]));
    expect([one.margins[0]?.halfWidth(), one.margins[0]?.probability()]).toEqual([0, 1]);
    expect([one.margins[1]?.halfWidth(), one.margins[1]?.probability()]).toEqual([0, 0]);
  });
});

describe("whether the lines agree with the draws", () => {
  const parts: readonly Part[] = [["gap", 1, 4, 0]];
  const describes = (middle: number, change: Partial<Margin>) =>
    doubtOf(margin(middle, parts, change)).margins[0]?.describes();

  it("within a tenth of the interval either way", () => {
    // The line's own half width is 3.8 mm.
    for (const [drawn, same] of [
      [3.8, true],
      [3.55, true],
      [4.15, true],
      [3.3, false],
      [4.4, false],
    ] as const) {
      expect(describes(0, { interval: [10 - drawn, 10 + drawn], probability: 0.5 })).toBe(same);
    }
  });

  it("within 0.03 of the probability either way", () => {
    for (const [probability, same] of [
      [0.5, true],
      [0.48, true],
      [0.52, true],
      [0.45, false],
      [0.55, false],
    ] as const) {
      expect(describes(0, { probability })).toBe(same);
    }
  });

  it("about whether the question is open at all, where the draws give no probability", () => {
    expect(describes(0, {})).toBe(true);
    expect(describes(4.2, {})).toBe(false);
    expect(describes(-4.2, {})).toBe(false);
  });

  it("never past what the suspension can do", () => {
    expect(describes(0, { inReach: false })).toBe(false);
  });
});

/** Taken anew with a tool of ±`better`: the mean moves by the old doubt and the new (readAgain.ts). */
const anew = (old: number, better: number): AfterReading => ({
  halfWidth: better,
  standardError: 0,
  shift: { halfWidths: [old, better], standardDeviation: 0 },
});

describe("what is expected of readings taken again", () => {
  const gap: Part = ["gap", -1, 4, 0];

  it("a perfect tool decides it, for or against as the doubt lies", () => {
    const taken = new Map([["gap" as const, anew(4, 0)]]);
    const one = doubtOf(margin(1, [gap])).outcome(taken);
    expect(one.halfWidths[0]).toBeCloseTo(0, 9);
    near(one.settled[0], 1);
    near(one.verdict, 1);
    // Blocked by something else, only failing settles it: the shift must take off more than 1 of ±4 mm.
    near(new LinearDoubt([margin(1, [gap])], true).outcome(taken).verdict, 3 / 8);
  });

  it("half the ± leaves between the limits what lies within 0.9 of it", () => {
    const taken = new Map([["gap" as const, anew(4, 2)]]);
    const one = doubtOf(margin(0, [gap])).outcome(taken);
    near(one.halfWidths[0], 1.9, 0.04);
    // The shift is a trapezoid over ±6, flat at 1/8 within ±2: past 1.8 lie 0.2/8 + 4/8/2 each way.
    near(one.settled[0], 2 * (0.025 + 0.25));
    near(one.verdict, 2 * (0.025 + 0.25));
    near(new LinearDoubt([margin(0, [gap])], true).outcome(taken).verdict, 0.275);
  });

  it("what is not taken stays: the normal part of another reading", () => {
    const both = margin(0, [gap, ["stop.freeHeight", 1, 0, 1]]);
    const one = doubtOf(both).outcome(new Map([["gap" as const, anew(4, 0)]]));
    near(one.halfWidths[0], 1.96, 0.06);
    // Decided past 1.645 standard deviations, as Φ⁻¹(0.95) of a normal table.
    near(one.settled[0], 1 - 1.645 / 4);
    const none = doubtOf(both).outcome(new Map());
    expect(none).toMatchObject({ settled: [0], verdict: 0 });
    near(none.halfWidths[0], new MarginDoubt(both).halfWidth(), 1e-9);
  });

  it("a reading with scatter: what is left of it stays, what went moves the mean", () => {
    const read = margin(0, [["gap", -2, 0, 2]]);
    const after: AfterReading = {
      halfWidth: 0,
      standardError: 1,
      shift: { halfWidths: [], standardDeviation: Math.sqrt(3) },
    };
    const one = doubtOf(read).outcome(new Map([["gap" as const, after]]));
    near(one.halfWidths[0], 2 * 1.96, 0.12);
    // 2 × the shift must pass 2 × 1.645: 2·(1 − Φ(1.645/√3)) = 2·(1 − Φ(0.9497)) = 0.342.
    near(one.settled[0], 0.342);
  });

  it("settled at once where it is so already, and each margin by its own side", () => {
    const kept = margin(5, [gap]);
    const lacking = margin(-5, [gap]);
    expect(doubtOf(kept).outcome(new Map())).toMatchObject({ settled: [1], verdict: 1 });
    expect(doubtOf(lacking).outcome(new Map())).toMatchObject({ settled: [1], verdict: 1 });
    const open = margin(0, [gap]);
    // One that is kept leaves the verdict to the other; one that fails settles it.
    expect(doubtOf(kept, open).outcome(new Map())).toMatchObject({ settled: [1, 0], verdict: 0 });
    expect(doubtOf(open, lacking).outcome(new Map())).toMatchObject({
      settled: [0, 1],
      verdict: 1,
    });
    const blocked = new LinearDoubt([kept], true).outcome(new Map());
    expect(blocked).toMatchObject({ settled: [1], verdict: 0 });
  });

  it("one reading moves every margin it is behind together", () => {
    const taken = new Map([["gap" as const, anew(4, 0)]]);
    // Against each other, so that one of the two always fails; with each other, half the time.
    const against = [margin(0, [gap]), margin(0, [["gap", 1, 4, 0]])];
    near(new LinearDoubt(against, true).outcome(taken).verdict, 1);
    const along = [margin(0, [gap]), margin(0, [["gap", -2, 4, 0]])];
    near(new LinearDoubt(along, true).outcome(taken).verdict, 0.5);
    // Two readings fail together less often than one or the other: 1 − 1/4.
    const apart = [margin(0, [gap]), margin(0, [["stop.freeHeight", 1, 4, 0]])];
    const both = new Map([...taken, ["stop.freeHeight", anew(4, 0)] as const]);
    near(new LinearDoubt(apart, true).outcome(both).verdict, 0.75);
  });

  it("the two parts of a new mean, the scatter and the tool's, are drawn apart", () => {
    const read = margin(0, [["gap", 1, 3, 1]]);
    const after: AfterReading = {
      halfWidth: 0,
      standardError: 0,
      shift: { halfWidths: [3, 3, 3, 3], standardDeviation: 2 },
    };
    // Deviation √(4·3 + 4) = 4, near enough normal: of ±4 lie 68.3 % within.
    const wide = margin(4, [["gap", 1, 3, 1]]);
    const lost = (one: Margin) =>
      new LinearDoubt([one], true).outcome(new Map([["gap" as const, after]]));
    near(lost(read).verdict, 0.5);
    near(lost(wide).verdict, (1 - 0.683) / 2);
  });
});

describe("a doubt between two draws", () => {
  it("is taken in proportion: 97.5 % of evenly spread draws", () => {
    // Where every draw counts, a half width times any slope is that times the slope, to the last digits.
    const one = new MarginDoubt(margin(0, [["gap", 1, 1, 0]])).halfWidth();
    const ten = new MarginDoubt(margin(0, [["gap", 10, 1, 0]])).halfWidth();
    const back = new MarginDoubt(margin(0, [["gap", -1, 1, 0]])).halfWidth();
    expect(ten / one).toBeCloseTo(10, 9);
    expect(back).toBeCloseTo(one, 9);
  });
});

describe("by the draws' own streams, one after the other", () => {
  const samples = 10_000;
  const stream = (name: string) => RandomSource.stream(20_080_101, name);
  const rectangular = (name: string, halfWidth: number) => {
    const out = new Float64Array(samples);
    stream(name).addRectangular(out, halfWidth);
    return out;
  };
  const normal = (name: string, deviation: number) => {
    const out = new Float64Array(samples);
    stream(`${name} scatter`).addNormal(out, deviation);
    return out;
  };
  const sum = (...parts: readonly (readonly [slope: number, draws: Float64Array])[]) =>
    Array.from({ length: samples }, (_, draw) =>
      parts.reduce((total, [slope, draws]) => total + slope * Number(draws[draw]), 0),
    );
  /** The place between two ranks in proportion. */
  const percentile = (values: readonly number[], share: number) => {
    const sorted = [...values].sort((a, b) => a - b);
    const place = share * (samples - 1);
    const [low = 0, high = 0] = sorted.slice(Math.floor(place));
    return low + (place - Math.floor(place)) * (high - low);
  };
  const halfOf = (values: readonly number[]) =>
    (percentile(values, 0.975) - percentile(values, 0.025)) / 2;
  const shareOf = (values: readonly number[], holds: (value: number) => boolean) =>
    values.filter(holds).length / samples;

  const parts: readonly Part[] = [
    ["gap", -1.5, 4, 0.6],
    ["stop.freeHeight", 0.5, 0, 2],
  ];
  const limit = [0.5, normal("stop.freeHeight", 2)] as const;
  const now = sum([-1.5, rectangular("gap", 4)], [-1.5, normal("gap", 0.6)], limit);

  it("the doubt is the sum of its parts, each by its slope", () => {
    const one = doubtOf(margin(1, parts));
    expect(one.margins[0]?.halfWidth()).toBeCloseTo(halfOf(now), 10);
    expect(one.margins[0]?.probability()).toBe(shareOf(now, (doubt) => 1 + doubt >= 0));
  });

  it("what is left after a reading is the rest and the narrower part, the shift what it moves by", () => {
    const after: AfterReading = {
      halfWidth: 1,
      standardError: 0.3,
      shift: { halfWidths: [4, 1], standardDeviation: 0.5 },
    };
    const left = sum([-1.5, rectangular("gap", 1)], [-1.5, normal("gap", 0.3)], limit);
    const shift = sum(
      [-1.5, rectangular("gap shift 0", 4)],
      [-1.5, rectangular("gap shift 1", 1)],
      [-1.5, normal("gap shift", 0.5)],
    );
    // Kept for sure where 5 % of what is left would take it below 0, or fewer; not kept likewise.
    const keptFrom = -percentile(left, 0.05);
    const lostTo = -percentile(left, 0.95);
    const kept = shareOf(shift, (by) => 1 + by >= keptFrom);
    const lost = shareOf(shift, (by) => 1 + by <= lostTo);
    const taken = new Map([["gap" as const, after]]);
    const open = doubtOf(margin(1, parts)).outcome(taken);
    expect(open.halfWidths[0]).toBeCloseTo(halfOf(left), 10);
    expect(open.settled[0]).toBeCloseTo(kept + lost, 12);
    expect(open.verdict).toBeCloseTo(kept + lost, 12);
    const blocked = new LinearDoubt([margin(1, parts)], true).outcome(taken);
    expect(blocked.settled[0]).toBeCloseTo(kept + lost, 12);
    expect(blocked.verdict).toBeCloseTo(lost, 12);
    expect(kept).toBeGreaterThan(lost);
    expect(lost).toBeGreaterThan(0.05);
  });
});
