import { describe, expect, it } from "vitest";
import { figure, figureCount } from "../../../src/physics/budget/cornerModel.ts";
import { travelBudget } from "../../../src/physics/budget/travelBudget.ts";
import type { Corner, Fitment, HardLimit } from "../../../src/physics/fitment.ts";
import { unwrapped } from "../demoFitments.ts";
import { refusal } from "../refusal.ts";
import { exact, uprightStrut } from "../staticFitments.ts";
import { atMeansOf, budgetOf as preparedBudget } from "./preparedModel.ts";

/** A strut that leans by 60°: s = z·cos 60°, so that the wheel goes 2 mm for each mm of the stop. */
function leaningStrut(limits: readonly HardLimit[], gap = 10): Fitment {
  return uprightStrut({
    gap: exact(gap),
    limits,
    fitment: { layout: { kind: "strut", readings: { stopLean: exact(60) } } },
  });
}

const onlyCorner = (fitment: Fitment) => fitment.corners[0] as Corner;
const budgetOf = (fitment: Fitment, reserveWanted = 5) =>
  travelBudget(fitment, onlyCorner(fitment), reserveWanted);

const atWheel = (reading: number, perWheel?: number): HardLimit => ({
  kind: "spring",
  at: "wheel",
  ...(perWheel === undefined ? {} : { perWheel }),
  reading: exact(reading),
});
const atStop = (reading: number, perWheel?: number): HardLimit => ({
  kind: "metal",
  at: "stop",
  ...(perWheel === undefined ? {} : { perWheel }),
  reading: exact(reading),
});

describe("the hard limit that touches first", () => {
  // Wheel travel: 110/1; 60/0.5 = 120; at the stop z(s) = 2·65 = 130, whatever closes per wheel travel.
  it.each<[string, readonly HardLimit[], number, number]>([
    ["at the wheel", [atWheel(110), atWheel(60, 0.5), atStop(65)], 110, 0],
    ["at the wheel, closing half as fast", [atStop(65), atWheel(60, 0.5)], 120, 1],
    ["at the stop", [atWheel(140), atStop(65), atWheel(75, 0.5)], 130, 1],
    ["at the stop, with a closing per wheel travel beside it", [atStop(65, 0.1)], 130, 0],
    ["the last one", [atWheel(140), atStop(66), atStop(65)], 130, 2],
    ["the first of two that touch together", [atWheel(130), atStop(66), atWheel(65, 0.5)], 130, 0],
  ])("is %s", (_, limits, travelMm, index) => {
    const { budget } = unwrapped(budgetOf(leaningStrut(limits)));
    expect(budget.limit?.hardLimitMm).toBeCloseTo(travelMm, 9);
    expect(budget.limit).toMatchObject({ id: `left.limits.${index}`, kind: limits[index]?.kind });
    // Contact 2·10, full stop 2·(10 + 30) = 80; s(z_h) = z_h/2; 5 mm at the wheel are 2.5 at the stop.
    expect(budget.limit?.closingMm).toBeCloseTo(travelMm / 2, 9);
    expect(budget.limit?.reserveMm).toBeCloseTo(travelMm - 80, 9);
    expect(budget.limit?.spacerMm).toBeCloseTo(40 - (travelMm - 5) / 2, 9);
    expect(budget.limit?.tallerMm).toBeCloseTo((40 - (travelMm - 5) / 2) * 2, 9);
    expect(budget.freeShare).toBeCloseTo(20 / 80, 12);
  });

  it("may lie just as far as the suspension reaches, and no farther", () => {
    const of = (...limits: HardLimit[]) => atMeansOf(uprightStrut({ gap: exact(45), limits }));
    const [, most] = unwrapped(of()).kinematics.range;
    // The reach of a strut is a round number of mm, so that a tenth of it closes it at 0.1 per mm.
    expect(unwrapped(of(atWheel(most / 10, 0.1))).limit).toMatchObject({ travelMm: most });
    expect(refusal(of(atWheel(most / 10, 0.0999)))).toMatch(/^limitOutOfReach/);
  });

  // A level arm of 100 mm to the stop and 300 mm to the wheel: it cannot close the stop by 200 mm.
  const onArm = (limits: readonly HardLimit[]): Fitment => ({
    ...leaningStrut(limits),
    layout: {
      kind: "arm",
      wheelPerOuter: 1,
      readings: { pivotToStop: exact(100), pivotToOuter: exact(300) },
    },
  });

  it("is never one at the stop that the layout cannot close it to", () => {
    expect(refusal(budgetOf(onArm([atStop(200)])))).toMatch(
      /^limitOutOfReach \(left\.limits\.0\): The left metal to metal clearance is more than this suspension can move/,
    );
    const { budget } = unwrapped(budgetOf(onArm([atStop(200), atWheel(140)])));
    // R = 300/100 at every angle.
    expect(budget.limit).toMatchObject({ id: "left.limits.1", kind: "spring", hardLimitMm: 140 });
    expect(budget.limit?.reserveMm).toBeCloseTo(140 - 3 * 40, 9);
  });

  it("closes by more than nothing per wheel travel, or is named", () => {
    for (const perWheel of [0, -1, Number.POSITIVE_INFINITY, Number.NaN]) {
      const limits = [atWheel(110), atWheel(110, perWheel)];
      expect(refusal(budgetOf(leaningStrut(limits)))).toMatch(
        /^perWheelNotPositive \(left\.limits\.1\): The left spring travel left must close/,
      );
    }
  });

  it("is named by its place where the reserve wanted before it is out of reach", () => {
    const limits = [atWheel(140), atWheel(110)];
    expect(refusal(budgetOf(leaningStrut(limits), 1e7))).toMatch(
      /^limitOutOfReach \(left\.limits\.1\)/,
    );
  });
});

describe("the model of a corner, draw by draw", () => {
  const fitment = leaningStrut([atWheel(60, 0.5), atStop(65, 0.25)]);
  const { model, means, places } = preparedBudget(fitment);
  const [wheel, stop] = places.limits.map(({ clearance }) => clearance) as [number, number];

  /** The figures with the readings of some places changed; null where they are out of reach. */
  function figuresWith(change: { readonly [place: number]: number }) {
    const readings = Float64Array.from(means);
    for (const [place, value] of Object.entries(change)) readings[Number(place)] = value;
    const figures = new Float64Array(figureCount).fill(Number.NaN);
    return model.evaluate(readings, figures) ? figures : null;
  }
  const hardLimitWith = (change: { readonly [place: number]: number }) =>
    figuresWith(change)?.[figure.hardLimit];

  it("takes the least limit of this draw, by its own closing", () => {
    expect(hardLimitWith({})).toBeCloseTo(120, 9);
    expect(hardLimitWith({ [wheel]: 70 })).toBeCloseTo(130, 9);
    expect(hardLimitWith({ [stop]: 50 })).toBeCloseTo(100, 9);
    expect(hardLimitWith({ [stop]: 1e9 })).toBeCloseTo(120, 9);
  });

  it("gives nothing where a draw has no motion, or gap or full stop are out of reach", () => {
    expect(figuresWith({ 0: 89.99 })).toBeNull();
    // A strut reaches 1e6 mm of wheel travel, here 5e5 mm of closing; full stop is 30 mm beyond contact.
    expect(figuresWith({ [places.stands]: 500_010 })).toBeNull();
    expect(figuresWith({ [places.stands]: 499_980 })).toBeNull();
    expect(figuresWith({ [places.stands]: 499_960 })).not.toBeNull();
  });

  it("gives nothing where a draw's stop is no taller than its usable compression", () => {
    expect(figuresWith({ [places.freeHeight]: 29 })).toBeNull();
    expect(figuresWith({ [places.freeHeight]: 30 })).toBeNull();
    // Usable share 30/40: a taller stop of this build works by a quarter of what it is taller.
    const spacer = 40 - (120 - 5) / 2;
    expect(figuresWith({ [places.freeHeight]: 40 })?.[figure.taller]).toBeCloseTo(spacer / 0.25, 9);
  });

  it("leaves all from the hard limit on at 0 where none was measured", () => {
    const free = preparedBudget(leaningStrut([]));
    const figures = new Float64Array(figureCount).fill(7);
    expect(free.model.hasLimits).toBe(false);
    expect(free.model.evaluate(free.means, figures)).toBe(true);
    expect(figures[figure.contact]).toBeCloseTo(20, 9);
    expect(figures[figure.fullStop]).toBeCloseTo(80, 9);
    expect([...figures.subarray(figure.hardLimit)]).toEqual([0, 0, 0, 0]);
    const far = Float64Array.from(free.means);
    far[free.places.stands] = 1e9;
    expect(free.model.evaluate(far, figures)).toBe(false);
  });
});
