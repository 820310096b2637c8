import { describe, expect, it } from "vitest";
import { DormandPrince, type OdeSystem } from "../../../src/physics/impact/dormandPrince.ts";
import { ImpactPeaks } from "../../../src/physics/impact/impactPeaks.ts";

const column = {
  sprungAcceleration: 2,
  stopLossPower: 4,
  roadPower: 5,
  damperPower: 6,
  stopForce: 7,
};

type Curve = (t: number) => number;

/** A car whose acceleration and stop force are curves in time, and the times they were asked for. */
class CarOfCurves implements OdeSystem {
  readonly stateCount = 4;
  readonly rowLength = 8;
  asked: number[] = [];

  constructor(
    readonly acceleration: Curve,
    readonly stopForce: Curve,
    readonly isLossy: boolean,
  ) {}

  derivative(t: number, y: Float64Array, rows: Float64Array, offset: number): void {
    this.asked.push(t);
    rows.fill(0, offset, offset + this.rowLength);
    rows[offset] = y[2] as number;
    rows[offset + column.sprungAcceleration] = this.acceleration(t);
    rows[offset + column.stopForce] = this.stopForce(t);
  }
}

interface Step {
  readonly acceleration?: Curve;
  readonly stopForce?: Curve;
  readonly damped?: boolean;
  readonly from?: number;
  readonly size?: number;
}

const newPeaks = () => new ImpactPeaks({ stateCount: 4, rowLength: 8, column });

const none: Curve = () => 0;

/** Takes one step into the peaks; the times that were looked at for it. */
function take(peaks: ImpactPeaks, { from = 0.3, size = 0.1, ...step }: Step): readonly number[] {
  const car = new CarOfCurves(
    step.acceleration ?? none,
    step.stopForce ?? none,
    step.damped ?? false,
  );
  const solver = new DormandPrince(car);
  solver.time = from;
  solver.restart();
  solver.attempt(size);
  car.asked = [];
  peaks.takeStep(solver, car);
  return car.asked;
}

const parabola =
  (top: number, at: number, bend: number): Curve =>
  (t) =>
    top - bend * (t - at) ** 2;

const reached = (peaks: ImpactPeaks) => ({
  stopForce: peaks.stopForce,
  acceleration: peaks.acceleration,
});

describe("the peaks of one step", () => {
  it("are exact where the acceleration is a parabola in time, wherever in the step its top is", () => {
    for (const at of [0.304, 0.32, 0.35, 0.377, 0.396]) {
      const peaks = newPeaks();
      take(peaks, { acceleration: parabola(12, at, 900) });
      expect(peaks.acceleration).toBeCloseTo(12, 9);
    }
  });

  it("are exact where the force of a damped stop is a parabola in time", () => {
    for (const at of [0.32, 0.35, 0.377]) {
      const peaks = newPeaks();
      take(peaks, { stopForce: parabola(4000, at, 3e5), damped: true });
      expect(peaks.stopForce).toBeCloseTo(4000, 6);
    }
  });

  it("are looked for inside of the step only, round the top of the acceleration", () => {
    for (const [at, first, last] of [
      [0.304, 0.3, 0.31],
      [0.35, 0.345, 0.355],
      [0.396, 0.39, 0.4],
    ] as const) {
      const asked = take(newPeaks(), { acceleration: parabola(12, at, 900) });
      expect(asked).toHaveLength(3);
      expect(Math.min(...asked)).toBeCloseTo(first, 12);
      expect(Math.max(...asked)).toBeCloseTo(last, 12);
    }
  });

  it("of a damped stop's force are looked for at equal distances over the whole step", () => {
    const asked = take(newPeaks(), { stopForce: parabola(4000, 0.33, 3e5), damped: true });
    const wanted = [0, 1, 2, 3, 4, 5, 6, 7, 8].map((eighth) => 0.3 + (0.1 * eighth) / 8);
    expect(asked).toEqual(wanted.map((t) => expect.closeTo(t, 12)));
  });

  it("are those of the end where a curve rises or falls all along, with no looks", () => {
    const rising = newPeaks();
    expect(take(rising, { acceleration: (t) => 100 * t })).toEqual([]);
    expect(rising.acceleration).toBeCloseTo(40, 12);
    const falling = newPeaks();
    expect(take(falling, { acceleration: (t) => 100 - 100 * t })).toEqual([]);
    expect(falling.acceleration).toBeCloseTo(60, 12);
  });

  it("are not looked for where the acceleration turns but stands highest at an end", () => {
    // Cubics with a top inside that is less than one end.
    const lowTop: Curve = (t) => 10 + 9000 * (t - 0.31) ** 2 * (t - 0.2);
    expect(take(newPeaks(), { acceleration: lowTop })).toEqual([]);
    const mirrored: Curve = (t) => lowTop(0.7 - t);
    expect(take(newPeaks(), { acceleration: mirrored })).toEqual([]);
  });

  it("of an undamped stop are not looked for: its force is greatest where a step ends", () => {
    const peaks = newPeaks();
    expect(take(peaks, { stopForce: parabola(4000, 0.35, 3e5) })).toEqual([]);
    expect(peaks.stopForce).toBeCloseTo(4000 - 3e5 * 0.05 ** 2, 6);
  });

  it("are not looked for in a step well below the greatest so far", () => {
    const peaks = newPeaks();
    peaks.acceleration = 12.5;
    peaks.stopForce = 4200;
    const low: Step = {
      acceleration: parabola(12, 0.35, 900),
      stopForce: parabola(4000, 0.35, 3e5),
      damped: true,
    };
    expect(take(peaks, low)).toEqual([]);
    expect(reached(peaks)).toEqual({ stopForce: 4200, acceleration: 12.5 });
  });

  it("are looked for in a step a little below the greatest so far, whose top may be above it", () => {
    // Stages stand at 0.2, 0.3, 0.8, 8/9 and 1: none within 0.02 s of a top in the middle.
    const peaks = newPeaks();
    peaks.acceleration = 11.9;
    peaks.stopForce = 3950;
    const step: Step = {
      acceleration: parabola(12, 0.35, 400),
      stopForce: parabola(4000, 0.35, 1.5e5),
      damped: true,
    };
    expect(take(peaks, step)).toHaveLength(12);
    expect(peaks.acceleration).toBeCloseTo(12, 9);
    expect(peaks.stopForce).toBeCloseTo(4000, 6);
  });

  it("are 0 where a stop only pulls and the body only falls, with no looks", () => {
    const peaks = newPeaks();
    const falling: Step = {
      acceleration: parabola(-1, 0.35, 900),
      stopForce: parabola(-1, 0.35, 3e5),
      damped: true,
    };
    expect(take(peaks, falling)).toEqual([]);
    expect(reached(peaks)).toEqual({ stopForce: 0, acceleration: 0 });
  });

  it("are not looked for where nothing acts", () => {
    expect(take(newPeaks(), { damped: true })).toEqual([]);
  });
});

describe("peaks", () => {
  it("take the forces at the start of a step", () => {
    const peaks = newPeaks();
    const row = new Float64Array(8);
    row[column.stopForce] = 700;
    row[column.sprungAcceleration] = 8;
    peaks.takeRow(row);
    expect(reached(peaks)).toEqual({ stopForce: 700, acceleration: 8 });
    row[column.stopForce] = 600;
    row[column.sprungAcceleration] = 9;
    peaks.takeRow(row);
    expect(reached(peaks)).toEqual({ stopForce: 700, acceleration: 9 });
  });

  it("keep the greatest travel, which may be below the ride height", () => {
    const peaks = newPeaks();
    peaks.takePlace(-12);
    expect(peaks.wheelTravel).toBe(-12);
    peaks.takePlace(30);
    peaks.takePlace(4);
    expect(peaks.wheelTravel).toBe(30);
  });
});
