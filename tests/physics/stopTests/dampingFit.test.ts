import { describe, expect, it } from "vitest";
import type { StaticPoint } from "../../../src/physics/stopTests/benchTest.ts";
import { dampingFit, pushWithSpeed } from "../../../src/physics/stopTests/dampingFit.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { faultCode, given } from "./outcomes.ts";

/** A stop of 100 N/mm, so that what a row at speed pushes beyond is its damping. */
const points: readonly StaticPoint[] = [10, 20, 30].map((depthMm) => ({
  depthMm,
  forceN: 100 * depthMm,
  standardErrorN: 0,
  rows: 1,
}));

type Row = readonly [depth: number, speed: number, beyond: number];

function moving(rows: readonly Row[]) {
  return {
    depthMm: Float64Array.from(rows, ([depth]) => depth),
    speedMmPerS: Float64Array.from(rows, ([, speed]) => speed),
    forceN: Float64Array.from(rows, ([depth, , beyond]) => 100 * depth + beyond),
  };
}

/** Rows of force c·v beyond the static one at each depth and speed, twice each. */
function rowsOf(
  depths: readonly number[],
  speeds: readonly number[],
  damping: (depth: number, speed: number) => number,
): Row[] {
  return depths.flatMap((depth) =>
    speeds.flatMap((speed): Row[] => {
      const row: Row = [depth, speed, damping(depth, speed) * speed];
      return [row, row];
    }),
  );
}

const told = (rows: readonly Row[]) => {
  const { table, remarks } = given(dampingFit(moving(rows), points));
  return { table, remarks: remarks.map(({ sentence }) => inModelUnits(sentence)) };
};

const notTested = (motion: string) =>
  `The stop was not tested at two speeds and two depths while ${motion}. Its damping in that direction is taken as none.`;

describe("a direction that was not tested", () => {
  it("coming back: 0, and told", () => {
    const found = told(rowsOf([10, 20], [100, 200], () => 0.5));
    expect(found.remarks).toEqual([notTested("let back")]);
    expect(found.table.map((row) => row[1])).toEqual([
      expect.closeTo(0.5, 9),
      expect.closeTo(0.5, 9),
    ]);
    expect(found.table.map((row) => row[2])).toEqual([0, 0]);
  });

  it("pressing: 0, and told", () => {
    const found = told(rowsOf([10, 20], [-100, -200], () => 0.5));
    expect(found.remarks).toEqual([notTested("pressed")]);
    expect(found.table.map((row) => row[1])).toEqual([0, 0]);
  });
});

describe("a depth tested one way only", () => {
  it("takes the other way from its neighbours, and from the nearest past the ends", () => {
    const both = rowsOf([20, 30], [100, 200, -100, -200], (depth) => depth / 50);
    const pressed = rowsOf([10, 25, 35], [100, 200], (depth) => depth / 50);
    const { table } = told([...both, ...pressed]);
    const rebound = table.map(([depth, , value]) => [Math.round(depth), Number(value.toFixed(9))]);
    expect(rebound).toEqual([
      [10, 0.4],
      [20, 0.4],
      [25, 0.5],
      [30, 0.6],
      [35, 0.6],
    ]);
  });
});

describe("a loss at rest", () => {
  const lossy = (share: number, c: number) =>
    rowsOf([10, 20, 30], [50, 200, 500, -50, -200, -500], (depth, speed) => {
      return c + (share * 100 * depth) / Math.abs(speed);
    });

  it("is told from damping, both exactly", () => {
    const found = given(dampingFit(moving(lossy(0.1, 0.4)), points));
    expect(found.restLoss?.value).toBeCloseTo(0.1, 6);
    for (const [, into, out] of found.table) {
      expect(into).toBeCloseTo(0.4, 5);
      expect(out).toBeCloseTo(0.4, 5);
    }
  });

  it("alone leaves no damping", () => {
    const found = given(dampingFit(moving(lossy(0.03, 0)), points));
    expect(found.restLoss?.value).toBeCloseTo(0.03, 6);
    for (const [, into, out] of found.table) expect(into + out).toBeLessThan(1e-6);
  });

  it("is absent where damping alone explains the rows", () => {
    expect(given(dampingFit(moving(lossy(0, 0.4)), points)).restLoss).toBeNull();
  });
});

describe("a damping that is not in proportion to speed", () => {
  const start = (grows: string, share: string) =>
    `The damping ${grows} with speed: the faster half of the speeds gives ${share} of the slower half's. The table is a mean of both; test near the speeds that matter.`;
  const speeds = [50, 100, 400, 800];
  const faster = (fast: number) => (_: number, speed: number) => (speed < 200 ? 0.4 : fast);

  it.each([
    [0.8, start("grows", "200 %")],
    [-0.1, start("falls", "0 %")],
  ])("fast %d, slow 0.4", (fast, sentence) => {
    expect(told(rowsOf([10, 20], speeds, faster(fast))).remarks).toContain(sentence);
  });

  it("is not told within a quarter, nor where the slow half shows none", () => {
    for (const damping of [faster(0.5), (_: number, speed: number) => (speed < 200 ? -0.2 : 0.4)]) {
      expect(told(rowsOf([10, 20], speeds, damping)).remarks).toEqual([notTested("let back")]);
    }
  });
});

describe("rows that give no damping", () => {
  const why: Record<string, string> = {
    staticRowsOnly:
      "Every row of this test was taken slowly. Damping shows only at speed: test at two speeds or more, at two depths or more.",
    noStaticRows:
      "Without a static curve from slow rows the damping cannot be told from the force at speed. Add rows of a slow test.",
    tooFewSpeeds:
      "The rows at speed hold only one speed at a depth, which is not enough for damping. Test the same depths at two speeds or more.",
    tooFewDepths:
      "The rows at speed hold only one depth, which is not enough for damping. Test at two depths or more, each at two speeds.",
  };

  it.each<[string, readonly Row[], readonly StaticPoint[], string]>([
    ["none", [], points, "staticRowsOnly"],
    ["no static curve", rowsOf([10, 20], [100, 200], () => 0.5), [], "noStaticRows"],
    ["one speed", rowsOf([10, 20], [100], () => 0.5), points, "tooFewSpeeds"],
    [
      "another speed at each depth",
      [...rowsOf([10], [100], () => 0.5), ...rowsOf([20], [200], () => 0.5)],
      points,
      "tooFewSpeeds",
    ],
    ["one depth", rowsOf([10], [100, 200], () => 0.5), points, "tooFewDepths"],
    [
      "one depth pressed and another let back",
      [...rowsOf([10], [100, 200], () => 0.5), ...rowsOf([20], [-100, -200], () => 0.5)],
      points,
      "tooFewDepths",
    ],
  ])("%s", (_, rows, curve, code) => {
    const outcome = dampingFit(moving(rows), curve);
    expect(faultCode(outcome)).toBe(code);
    expect(outcome.ok ? "" : inModelUnits(outcome.fault.sentence)).toBe(why[code]);
  });
});

describe("whether the stop pushes with its speed", () => {
  const rows = rowsOf([10, 20], [100, -100], () => 0.5);

  it("1 where it does, −1 where the speed is counted the other way", () => {
    expect(pushWithSpeed(moving(rows), points)).toBeCloseTo(1, 12);
    const turned = rows.map(([depth, speed, beyond]): Row => [depth, -speed, beyond]);
    expect(pushWithSpeed(moving(turned), points)).toBeCloseTo(-1, 12);
  });

  it("0 where nothing tells, by the approach or without a curve", () => {
    expect(pushWithSpeed(moving(rows), [])).toBe(0);
    expect(pushWithSpeed(moving([[-5, 100, 3]]), points)).toBe(0);
  });
});

describe("the line through the rows of a depth and direction", () => {
  // Beside 0.5·v: −2 2 at 100 mm/s, 1 −1 at 200 mm/s. Σv² = 100000, Σ|v| = 600, Σ(y − cv)² = 10.
  const scattered = (depth: number, sign: 1 | -1): Row[] => [
    [depth, sign * 100, sign * 48],
    [depth, sign * 100, sign * 52],
    [depth, sign * 200, sign * 101],
    [depth, sign * 200, sign * 99],
  ];
  const known = points.map((point) => ({ ...point, standardErrorN: point.depthMm / 10 }));
  const rows = [
    ...scattered(10, 1),
    ...scattered(20, 1),
    ...scattered(20, -1),
    ...scattered(30, -1),
  ];
  const found = () => given(dampingFit(moving(rows), known));

  it("has c = Σyv/Σv², its rows and its speeds", () => {
    for (const value of [found().rows[0]?.compressing, found().rows[2]?.rebounding]) {
      expect(value?.coefficient).toBeCloseTo(0.5, 12);
      expect(value?.rows).toBe(4);
      expect(value?.speedsMmPerS).toEqual([100, 200]);
    }
    expect(found().rows.map(({ depthMm }) => depthMm)).toEqual([10, 20, 30]);
    expect(found().rows[0]?.rebounding).toBeNull();
    expect(found().rows[2]?.compressing).toBeNull();
  });

  it("has the standard error of its scatter and of the static force there", () => {
    const scatter = Math.sqrt(10 / 3 / 100_000);
    for (const [row, error] of [1, 2].entries()) {
      const expected = Math.hypot(scatter, (error * 600) / 100_000);
      expect(found().rows[row]?.compressing?.standardError).toBeCloseTo(expected, 12);
    }
    expect(found().rows[2]?.rebounding?.standardError).toBeCloseTo(
      Math.hypot(scatter, (3 * 600) / 100_000),
      12,
    );
  });

  it("leaves residuals, of the rows that it is through", () => {
    const { depthMm, residualN, rmsN, greatestN } = found().residuals;
    expect([...depthMm]).toEqual([10, 10, 10, 10, 20, 20, 20, 20, 20, 20, 20, 20, 30, 30, 30, 30]);
    const pressed = [-2, 2, 1, -1];
    const back = [2, -2, -1, 1];
    const expected = [...pressed, ...pressed, ...back, ...back];
    for (const [row, residual] of expected.entries()) {
      expect(residualN[row]).toBeCloseTo(residual, 9);
    }
    expect(rmsN).toBeCloseTo(Math.sqrt(2.5), 9);
    expect(greatestN).toBeCloseTo(2, 9);
  });

  it("is at the mean depth of its rows", () => {
    const drifting = rowsOf([10, 20], [100, 200], () => 0.5).map(
      ([depth, speed, beyond], row): Row => {
        return [row === 0 ? 9.92 : depth, speed, beyond];
      },
    );
    const { rows: lines } = given(dampingFit(moving(drifting), points));
    expect(lines[0]?.depthMm).toBeCloseTo(9.98, 12);
  });
});

describe("rows at speed that say nothing of damping", () => {
  const both = rowsOf([10, 20], [100, 200, -100, -200], () => 0.5);

  it("before the touch, at 0 and above", () => {
    const early = rowsOf([-10, 0], [100, 200, -100, -200], () => 3);
    const found = given(dampingFit(moving([...early, ...both]), points));
    expect(found.rows.map(({ depthMm }) => depthMm)).toEqual([10, 20]);
    expect(found.residuals.depthMm).toHaveLength(both.length);
    expect(found.remarks).toEqual([]);
  });

  it("coming back with no more than 0.5 % of the greatest static force: lifted off", () => {
    // 0.5 % of 3000 N: 15 N in all, at 10 mm 985 N below the static force.
    const lifted = (...forces: readonly number[]) =>
      forces.map((force): Row => [10, -1000, force - 1000]);
    const one = told([...both, ...lifted(15)]);
    const { residuals } = given(dampingFit(moving([...both, ...lifted(15)]), points));
    expect(residuals.depthMm).toHaveLength(both.length);
    expect(one.remarks).toEqual([
      "1 row in which the stop had lifted off while coming back was left out of the damping.",
    ]);
    expect(one.table[0]?.[2]).toBeCloseTo(0.5, 9);
    expect(told([...both, ...lifted(15, -20, 0)]).remarks).toEqual([
      "3 rows in which the stop had lifted off while coming back were left out of the damping.",
    ]);
    expect(
      given(dampingFit(moving([...both, ...lifted(16)]), points)).rows[0]?.rebounding?.rows,
    ).toBe(5);
    // One that is pressed counts however little it pushes.
    const weak: Row = [10, 200, -990];
    const pressed = given(dampingFit(moving([...both, weak]), points));
    expect(pressed.rows[0]?.compressing?.rows).toBe(5);
    expect(pressed.remarks.map(({ code }) => code)).not.toContain("liftedOff");
  });

  it("at one speed of that depth and direction: no residuals of them", () => {
    const single = rowsOf([30], [100, -100], () => 0.5);
    const found = given(dampingFit(moving([...both, ...single]), points));
    expect(found.rows.map(({ depthMm }) => depthMm)).toEqual([10, 20]);
    expect(found.residuals.depthMm).toHaveLength(both.length);
    const oneWay = rowsOf([30], [100, 200, -200], () => 0.5);
    const more = given(dampingFit(moving([...both, ...oneWay]), points));
    expect(more.rows[2]).toMatchObject({ depthMm: 30, rebounding: null });
    expect(more.residuals.depthMm).toHaveLength(both.length + 4);
  });
});

describe("the table of damping", () => {
  it("has nothing below 0", () => {
    const found = told(rowsOf([10, 20], [100, 200], (depth) => (depth < 15 ? -0.2 : 0.4)));
    expect(found.table.map((row) => row[1])).toEqual([0, expect.closeTo(0.4, 9)]);
  });

  it("names a direction that was not tested by its code", () => {
    const codes = (speeds: readonly number[]) =>
      given(dampingFit(moving(rowsOf([10, 20], speeds, () => 0.5)), points)).remarks.map(
        ({ code }) => code,
      );
    expect(codes([100, 200])).toEqual(["reboundNotTested"]);
    expect(codes([-100, -200])).toEqual(["compressionNotTested"]);
    expect(codes([100, 200, -100, -200])).toEqual([]);
  });
});

describe("whether damping is in proportion to speed", () => {
  const speeds = [50, 100, 400, 800];
  const isTold = (rows: readonly Row[]) =>
    given(dampingFit(moving(rows), points)).remarks.some(({ code }) => code === "notProportional");
  const halves = (slow: number, fast: number) =>
    rowsOf([10, 20], speeds, (_, speed) => (Math.abs(speed) < 200 ? slow : fast));

  it("is told from a quarter of the greater half on", () => {
    expect(isTold(halves(0.4, 0.53))).toBe(false);
    expect(isTold(halves(0.4, 0.54))).toBe(true);
    expect(isTold(halves(0, 0.4))).toBe(false);
  });

  it("is told of either direction", () => {
    const back = rowsOf([10, 20], [-50, -100, -400, -800], (_, speed) =>
      speed > -200 ? 0.4 : 0.8,
    );
    expect(isTold(back)).toBe(true);
  });

  it("is told of the sum over all depths of both directions", () => {
    // Fast 0.85 and three times 0.4 against slow four times 0.4: 0.45 more, less than a quarter of 2.05.
    const one = (fast: number) => [
      ...halves(0.4, 0.4),
      ...rowsOf([10], [-50, -100], () => 0.4),
      ...rowsOf([10], [-400, -800], () => fast),
      ...rowsOf([20], [-50, -100, -400, -800], () => 0.4),
    ];
    expect(isTold(one(0.85))).toBe(false);
    // 0.55 more, against a quarter of 2.15.
    expect(isTold(one(0.95))).toBe(true);
  });

  it("is told only beyond three standard errors", () => {
    // ±δ beside 0.4·v and 0.6·v at two depths: the halves differ by 0.4 in sum. Variances: 4δ²/3 over
    // Σv² = 25000 and 1600000, twice: three standard errors are 0.031225·δ, which is 0.4 at 12.81 N.
    const noisy = (delta: number) =>
      halves(0.4, 0.6).map(([depth, speed, beyond], row): Row => {
        return [depth, speed, beyond + (row % 2 === 0 ? delta : -delta)];
      });
    expect(isTold(noisy(12.7))).toBe(true);
    expect(isTold(noisy(12.9))).toBe(false);
  });

  it("holds the slower half against the rest, where their number is odd", () => {
    const odd = rowsOf([10, 20], [100, 200, 400], (_, speed) => (speed < 150 ? 0.4 : 0.8));
    expect(told(odd).remarks[1]).toContain("the faster half of the speeds gives 200 % of");
  });

  it("is not told by a half of one row, or of none", () => {
    const rows: Row[] = [10, 20].flatMap((depth): Row[] => [
      [depth, 100, 10],
      [depth, 400, 320],
      [depth, 400, 320],
    ]);
    expect(isTold(rows)).toBe(false);
    expect(isTold(rows.map(([depth, speed, beyond]) => [depth, 500 - speed, beyond]))).toBe(false);
    const other = rowsOf([30], [400, 800], () => 5);
    expect(isTold([...halves(0.4, 0.4), ...other])).toBe(false);
  });
});

describe("pushing with the speed", () => {
  it("is the correlation of speed and force beyond the static one, of depths above 0", () => {
    // Σvy = 100·30 + 200·40, Σv² = 50000, Σy² = 2500.
    const rows: Row[] = [
      [10, 100, 30],
      [20, 200, 40],
      [0, 900, -50],
      [-5, 900, -50],
    ];
    expect(pushWithSpeed(moving(rows), points)).toBeCloseTo(11_000 / Math.sqrt(50_000 * 2500), 12);
  });
});
