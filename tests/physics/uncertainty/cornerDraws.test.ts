import { describe, expect, it, vi } from "vitest";
import { travelBudget } from "../../../src/physics/budget/travelBudget.ts";
import type { Corner, Fitment, Interval, Reading } from "../../../src/physics/fitment.ts";
import type { QuantityId } from "../../../src/physics/readings/readingId.ts";
import { rulesOf } from "../../../src/physics/road/useRules.ts";
import {
  type CornerDraws,
  drawCorners,
  type WantedTravel,
} from "../../../src/physics/uncertainty/cornerDraws.ts";
import { drawnReading } from "../../../src/physics/uncertainty/drawnReading.ts";
import { SharedDraws } from "../../../src/physics/uncertainty/sharedDraws.ts";
import { demoFitment, unwrapped } from "../demoFitments.ts";
import { exact, tyreLimit, uprightStrut, within } from "../staticFitments.ts";

vi.mock("../../../src/physics/kinematics/modelDoubt.ts", () => import("../noModelDoubt.ts"));

const usable = 30;
const freeHeight = 60;
/** Not a whole number of the blocks that draws are laid out in, however long these are. */
const samples = 10_007;
const draws = new SharedDraws(samples, 3);
const everyDraw = Array.from({ length: samples }, (_, draw) => draw);

function drawn(
  fitment: Fitment,
  wantedTravels: readonly WantedTravel[] = [],
  reserveWanted = rulesOf("daily").reserveMm,
): readonly CornerDraws[] {
  const requests = fitment.corners.map((corner) => ({
    corner: unwrapped(travelBudget(fitment, corner, reserveWanted)),
    wantedTravels,
  }));
  return drawCorners(requests, draws, reserveWanted);
}

function onlyOf(list: readonly CornerDraws[]): CornerDraws {
  expect(list).toHaveLength(1);
  return list[0] as CornerDraws;
}

/** The numbers of every draw of a reading. */
function numbersOf(id: QuantityId, reading: Reading): readonly number[] {
  const numbers = draws.of(drawnReading(id, reading));
  return everyDraw.map((draw) => numbers.at(draw));
}

/** 95 % by its definition: all sorted, the place between two ranks in proportion. */
function covered(values: readonly number[]): readonly [number, number] {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (place: number) => {
    const low = sorted[Math.floor(place)] ?? Number.NaN;
    const high = sorted[Math.ceil(place)] ?? Number.NaN;
    return low + (place - Math.floor(place)) * (high - low);
  };
  const tail = 0.025 * (values.length - 1);
  return [at(tail), at(values.length - 1 - tail)];
}

function expectInterval(found: Interval | null, values: readonly number[]) {
  const [low, high] = covered(values);
  expect(found?.[0]).toBeCloseTo(low, 9);
  expect(found?.[1]).toBeCloseTo(high, 9);
}

const shareOf = <Value>(list: readonly Value[], holds: (value: Value, draw: number) => boolean) =>
  list.filter(holds).length / list.length;

describe("the draws of an upright strut, whose budget is a sum", () => {
  const gap: Reading = { values: [44, 47, 45, 46], tol: 1 };
  const limit = within(80, 5);
  const fitment = uprightStrut({ gap, limits: [tyreLimit(limit)] });
  const gaps = numbersOf("left.gap", gap);
  const limits = numbersOf("left.limits.0", limit);
  const reserves = limits.map((travel, draw) => travel - ((gaps[draw] ?? 0) + usable));
  const found = () => onlyOf(drawn(fitment));

  it("give the 95 % of every figure, with scatter of repeats and ± of the tool", () => {
    const { intervals, outsideShare } = found();
    const spacers = reserves.map((reserve) => 5 - reserve);
    expect(outsideShare).toBe(0);
    expectInterval(intervals.contact, gaps);
    expectInterval(
      intervals.fullStop,
      gaps.map((value) => value + usable),
    );
    expectInterval(intervals.hardLimit, limits);
    expectInterval(intervals.reserve, reserves);
    expectInterval(intervals.spacer, spacers);
    // Half of the stop stays solid: a taller one must grow by twice the spacer.
    expectInterval(
      intervals.taller,
      spacers.map((spacer) => spacer / (1 - usable / freeHeight)),
    );
  });

  it("give the share of them with the reserve wanted, and with any", () => {
    const { reserveWanted, reserveAboveZero } = found();
    expect(reserveWanted).toBe(shareOf(reserves, (reserve) => reserve >= 5));
    expect(reserveAboveZero).toBe(shareOf(reserves, (reserve) => reserve >= 0));
    expect(reserveWanted).toBeLessThan(Number(reserveAboveZero));
    expect(reserveAboveZero).toBeLessThan(1);
  });

  it("give the share of them that have each travel wanted, one number or one a draw", () => {
    const { contactBeyond } = onlyOf(
      drawn(fitment, [45, (draw) => 44 + (draw % 4), 1000, (draw) => gaps[draw] ?? 0]),
    );
    expect(contactBeyond).toEqual([
      shareOf(gaps, (value) => value >= 45),
      shareOf(gaps, (value, draw) => value >= 44 + (draw % 4)),
      0,
      1,
    ]);
  });

  it("have no interval, and no reserve, of a limit that was not measured", () => {
    const { intervals, ...shares } = onlyOf(drawn(uprightStrut({ gap, limits: [] })));
    const none = { hardLimit: null, reserve: null, spacer: null, taller: null };
    expect(intervals).toEqual({
      contact: expect.anything(),
      fullStop: expect.anything(),
      ...none,
    });
    expectInterval(intervals.contact, gaps);
    expect(shares).toEqual({
      outsideShare: 0,
      reserveWanted: null,
      reserveAboveZero: null,
      contactBeyond: [],
    });
  });
});

describe("what is not in doubt", () => {
  it("is the same in every draw, and what just suffices does", () => {
    const fitment = uprightStrut({ gap: exact(45), limits: [tyreLimit(exact(80))] });
    expect(onlyOf(drawn(fitment, [45]))).toEqual({
      outsideShare: 0,
      intervals: {
        contact: [45, 45],
        fullStop: [75, 75],
        hardLimit: [80, 80],
        reserve: [5, 5],
        spacer: [0, 0],
        taller: [0, 0],
      },
      reserveWanted: 1,
      reserveAboveZero: 1,
      contactBeyond: [1],
    });
    const none = uprightStrut({ gap: exact(45), limits: [tyreLimit(exact(75))] });
    expect(onlyOf(drawn(none))).toMatchObject({ reserveWanted: 0, reserveAboveZero: 1 });
  });

  it("may be so by its tool and yet scatter from repeat to repeat", () => {
    const gap: Reading = { values: [44, 46], tol: 0 };
    const fitment = uprightStrut({ gap, limits: [tyreLimit(exact(80))] });
    expectInterval(onlyOf(drawn(fitment)).intervals.contact, numbersOf("left.gap", gap));
  });
});

describe("draws outside of what can be", () => {
  const gap = within(45, 1);
  const gaps = numbersOf("left.gap", gap);

  it("are those whose stop is no taller than its usable compression: counted, in no interval", () => {
    const height = within(60, 35);
    const fitment = uprightStrut({ gap, limits: [tyreLimit(exact(80))] });
    const { outsideShare, intervals, reserveAboveZero, contactBeyond } = onlyOf(
      drawn({ ...fitment, stop: { ...fitment.stop, freeHeight: height } }, [0]),
    );
    const inside = numbersOf("stop.freeHeight", height).map((value) => value > usable);
    const insideShare = shareOf(inside, (is) => is);
    expect(insideShare).toBeLessThan(0.95);
    expect(outsideShare).toBeCloseTo(1 - insideShare, 12);
    expectInterval(
      intervals.contact,
      gaps.filter((_, draw) => inside[draw]),
    );
    // A draw outside conforms to nothing.
    expect(reserveAboveZero).toBe(insideShare);
    expect(contactBeyond).toEqual([insideShare]);
  });

  it("are those that give no motion: a stop that lies flat", () => {
    const lean = within(88, 5);
    const fitment = uprightStrut({
      gap: exact(1),
      limits: [],
      fitment: { layout: { kind: "strut", readings: { stopLean: lean } } },
    });
    const leans = numbersOf("stopLean", lean);
    const { outsideShare, contactBeyond } = onlyOf(drawn(fitment, [0]));
    const insideShare = shareOf(leans, (value) => Math.abs(value) <= 89.95);
    expect(insideShare).toBeLessThan(0.9);
    expect(outsideShare).toBeCloseTo(1 - insideShare, 12);
    expect(contactBeyond).toEqual([insideShare]);
  });

  it("leave no interval where all are", () => {
    const layout = { kind: "strut" as const, readings: { stopLean: exact(0) } };
    const fitment = uprightStrut({ gap: exact(45), limits: [], fitment: { layout } });
    const corner = unwrapped(travelBudget(fitment, fitment.corners[0] as Corner, 5));
    const means = corner.means.with(0, 90);
    const all = corner.places.all.with(0, placeOf("stopLean", 90));
    const flat = { ...corner, means, places: { ...corner.places, all } };
    const [found] = drawCorners([{ corner: flat, wantedTravels: [0] }], draws, 5);
    expect(found).toMatchObject({
      outsideShare: 1,
      intervals: { contact: null, fullStop: null },
      contactBeyond: [0],
    });
  });
});

function placeOf(name: "stopLean", value: number) {
  return { id: name, reading: exact(value), drawn: drawnReading(name, exact(value)) };
}

describe("two corners", () => {
  const lean = within(88, 5);
  const rightGap = within(50, 2);
  const pair = (right?: Reading): Fitment => {
    const fitment = uprightStrut({
      gap: within(45, 1),
      fitment: { layout: { kind: "strut", readings: { stopLean: lean } } },
      limits: [tyreLimit(within(1e5, 1))],
    });
    const [left] = fitment.corners;
    if (left === undefined) throw new Error("no corner");
    const geometry = right === undefined ? {} : { geometry: { stopLean: right } };
    return {
      ...fitment,
      corners: [left, { ...left, side: "right", gap: rightGap, ...geometry }],
    };
  };

  it.each([
    ["the same geometry", undefined],
    ["its own geometry", within(10, 5)],
    ["its own geometry, which may lie flat", within(-88, 6)],
  ])("have what each alone has, the second with %s", (_, right) => {
    const fitment = pair(right);
    const wanted = [80, (draw: number) => 40 + draw / 100];
    const alone = fitment.corners.map((corner) =>
      onlyOf(drawn({ ...fitment, corners: [corner] }, wanted)),
    );
    expect(drawn(fitment, wanted)).toEqual(alone);
  });

  it.each([
    "upper-arm-stop",
    "two-arms-measured",
    "stop-on-the-arm-missing",
    "axle-tire-clearance",
  ])("have what each alone has where they share all but gaps and limits: %s", (name) => {
    const fitment = demoFitment(name);
    const together = drawn(fitment, [30]);
    for (const [index, corner] of fitment.corners.entries()) {
      const alone = onlyOf(drawn({ ...fitment, corners: [corner] }, [30]));
      const own = together[index] as CornerDraws;
      expect(own).toEqual({ ...alone, intervals: expect.anything() });
      for (const figure of Object.keys(alone.intervals) as (keyof CornerDraws["intervals"])[]) {
        const wanted = alone.intervals[figure];
        if (wanted === null) expect(own.intervals[figure]).toBeNull();
        for (const [end, value] of (wanted ?? []).entries()) {
          expect(own.intervals[figure]?.[end]).toBeCloseTo(value, 8);
        }
      }
    }
  });

  it("draw a reading that they share once: both are outside together", () => {
    const [left, right] = drawn(pair());
    const outside = shareOf(numbersOf("stopLean", lean), (value) => Math.abs(value) > 89.95);
    expect(outside).toBeGreaterThan(0.1);
    expect(left?.outsideShare).toBeCloseTo(outside, 12);
    expect(right?.outsideShare).toBe(left?.outsideShare);
  });

  it("are none where none is asked for", () => {
    expect(drawCorners([], draws, 5)).toEqual([]);
  });
});

describe("the draws of a reading", () => {
  it("are others under another seed", () => {
    const reading = drawnReading("left.gap", within(45, 1));
    expect(new SharedDraws(samples, 4).of(reading).at(0)).not.toBe(draws.of(reading).at(0));
    expect(new SharedDraws(samples, 3).of(reading).at(0)).toBe(draws.of(reading).at(0));
  });
});
