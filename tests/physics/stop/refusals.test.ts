import { describe, expect, it } from "vitest";
import type { CurvePoint, Stop } from "../../../src/physics/fitment.ts";
import { stopDamping, undamped } from "../../../src/physics/stop/damping.ts";
import { stopCurve } from "../../../src/physics/stop/stopCurve.ts";
import { unwrapped } from "../demoFitments.ts";
import { refusal } from "../refusal.ts";

function stopOf(curve: readonly CurvePoint[], usable = 30, height = 60): Stop {
  return {
    name: "Test stop",
    duty: "impact",
    freeHeight: { values: [height], tol: 1 },
    usableCompressionMm: usable,
    curve,
    damping: null,
    testedAtSpeed: true,
  };
}

const line: readonly CurvePoint[] = [[30, 3000]];

describe("a stop's curve that cannot be", () => {
  const usable =
    "usableNotPositive: The usable compression of the stop must be above zero. Look it up again.";
  const empty = "curveEmpty: The stop has no force curve. Give at least one tested point.";
  const noNumber = "curveNotFinite: A point of the stop's force curve is not a usable number.";
  const notRising = (at: string) =>
    `curveNotRising: The stop's force curve must rise: at ${at} compression or force is no greater than at the point before it.`;
  it.each<[Stop, string]>([
    [stopOf(line), "none"],
    [stopOf(line, 0), usable],
    [stopOf(line, Number.POSITIVE_INFINITY), usable],
    [
      stopOf(line, 60, 60),
      "usableAboveFreeHeight (stop.freeHeight): The stop cannot be pressed by 60.0 mm when it is no taller than that. Re-measure its free height.",
    ],
    [stopOf([]), empty],
    [stopOf([[0, 0]]), empty],
    [stopOf([[10, Number.NaN]]), noNumber],
    [stopOf([[Number.POSITIVE_INFINITY, 10]]), noNumber],
    [stopOf([[0, 5]]), notRising("0.0 mm")],
    [stopOf([[5, 0]]), notRising("5.0 mm")],
    [
      stopOf([
        [10, 500],
        [20, 500],
      ]),
      notRising("20.0 mm"),
    ],
    [
      stopOf([
        [10, 500],
        [10, 600],
      ]),
      notRising("10.0 mm"),
    ],
  ])("%#", (stop, words) => {
    expect(refusal(stopCurve(stop))).toBe(words);
  });
});

describe("a stop's damping that cannot be", () => {
  const negative = "dampingNegative: The stop's damping cannot be below zero.";
  it.each<[Stop["damping"], string]>([
    [[[0, 0, 0]], "none"],
    [[], "none"],
    [[[0, Number.NaN, 0]], "dampingNotFinite: A row of the stop's damping is not a usable number."],
    [[[0, -0.01, 0.1]], negative],
    [[[0, 0.1, -0.01]], negative],
    [
      [
        [5, 0.1, 0.1],
        [5, 0.1, 0.1],
      ],
      "dampingNotRising: The compression in the stop's damping table must rise from row to row.",
    ],
  ])("%#", (damping, words) => {
    expect(refusal(stopDamping({ ...stopOf(line), damping }))).toBe(words);
  });

  it("is none at all without a row, and that of rebounding while nothing moves", () => {
    expect(unwrapped(stopDamping({ ...stopOf(line), damping: [] }))).toBe(undamped);
    const tested = unwrapped(stopDamping({ ...stopOf(line), damping: [[0, 0.2, 0.4]] }));
    expect(tested.coefficient(5, 0)).toBe(0.4);
  });
});

describe("by hand", () => {
  it("one point is a straight line from nothing: 100 N/mm stores 50·x²", () => {
    const straight = unwrapped(stopCurve(stopOf(line, 30, 60)));
    expect(straight.energy(12)).toBeCloseTo(7200, 9);
    expect(straight.energy(0)).toBe(0);
    expect(straight.slope(0)).toBeCloseTo(100, 12);
    expect(straight.slope(-1e-9)).toBe(0);
  });

  it("at its full stop the rate is still the curve's, and ten times more just past it", () => {
    const straight = unwrapped(stopCurve(stopOf(line, 20, 60)));
    expect(straight.slope(20)).toBeCloseTo(100, 9);
    expect(straight.slope(20 + 1e-9)).toBeCloseTo(1100, 6);
    expect(straight.energy(22)).toBeCloseTo((100 * 22 ** 2) / 2 + (1000 * 2 ** 2) / 2, 6);
  });
});
