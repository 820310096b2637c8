import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { analyseRows } from "../../../src/physics/stopTests/analyseRows.ts";
import type { DepthSpeedForce, Remark } from "../../../src/physics/stopTests/benchTest.ts";
import { curveThrough } from "../../../src/physics/stopTests/staticCurve.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { worded } from "../../../src/saying/texts.ts";
import { fromRows, knownStop, Noise, rowsOf } from "./generatedTests.ts";
import { faultCode, given } from "./outcomes.ts";

const depths = [0, 5, 10, 15, 20, 25, 30, 35, 40];
const speeds = [1, 100, 300, 600, -100, -300, -600];

function codes(remarks: readonly Remark[]): string[] {
  return remarks.map(({ code }) => code);
}

describe("rows without noise", () => {
  const found = () => given(analyseRows(rowsOf({ depths, speeds: [0, ...speeds.slice(1)] })));

  test("static points are those of the stop", () => {
    const { points } = given(found().staticCurve);
    expect(points.map(({ depthMm }) => depthMm)).toEqual(depths.slice(1));
    for (const point of points) {
      expect(point.forceN).toBeCloseTo(knownStop.force(point.depthMm), 9);
    }
  });

  test("damping at each depth, compressing and rebounding apart", () => {
    const { rows } = given(found().damping);
    for (const row of rows.filter(({ depthMm }) => depthMm >= 20)) {
      const [compressing, rebounding] = knownStop.damping(row.depthMm);
      expect(row.compressing?.coefficient).toBeCloseTo(compressing, 9);
      expect(row.rebounding?.coefficient).toBeCloseTo(rebounding, 9);
      expect(row.compressing?.speedsMmPerS.map(Math.round)).toEqual([100, 300, 600]);
    }
  });

  test("rows in which the stop had lifted off are left out and told", () => {
    expect(codes(found().remarks)).toEqual(["liftedOff"]);
  });

  test("a series for each speed, the static one at 0", () => {
    expect(found().speeds.map(({ speedMmPerS }) => Math.round(speedMmPerS))).toEqual([
      0, 100, 300, 600, -100, -300, -600,
    ]);
  });
});

describe("rows with noise of 15 N, seeded", () => {
  const swept = Array.from({ length: 400 }, (_, index) => index / 10);
  const found = () => given(analyseRows(rowsOf({ depths: swept, speeds, noiseN: 15, seed: 7 })));

  test("the curve within 20 N of the stop from 2 mm on, residuals as the noise", () => {
    const { points, residuals } = given(found().staticCurve);
    const curve = curveThrough(points);
    for (let depth = 2; depth <= 39; depth += 0.5) {
      expect(Math.abs((curve?.force(depth) ?? 0) - knownStop.force(depth))).toBeLessThan(20);
    }
    expect(residuals.rmsN).toBeGreaterThan(12);
    expect(residuals.rmsN).toBeLessThan(17);
  });

  test("damping within four of its standard errors, which the noise explains", () => {
    const { rows } = given(found().damping);
    let checked = 0;
    for (const row of rows) {
      if (row.depthMm < 22) continue;
      const [compressing, rebounding] = knownStop.damping(row.depthMm);
      for (const [value, known] of [
        [row.compressing, compressing],
        [row.rebounding, rebounding],
      ] as const) {
        if (value === null) continue;
        checked++;
        expect(value.standardError).toBeLessThan(0.03);
        expect(Math.abs(value.coefficient - known)).toBeLessThan(4 * value.standardError);
      }
    }
    expect(checked).toBeGreaterThan(20);
  });
});

test("standard errors hold what they promise: 200 noisy tests, about 68 % within one", () => {
  let within = 0;
  let all = 0;
  for (let seed = 1; seed <= 200; seed++) {
    const rows = rowsOf({
      depths: [15, 20, 25, 30],
      speeds: [1, 200, 400],
      repeats: 6,
      noiseN: 20,
      seed,
    });
    const { rows: table } = given(given(analyseRows(rows)).damping);
    for (const row of table) {
      if (row.compressing === null) continue;
      all++;
      const off = row.compressing.coefficient - knownStop.damping(row.depthMm)[0];
      if (Math.abs(off) <= row.compressing.standardError) within++;
    }
  }
  expect(all).toBe(800);
  expect(within / all).toBeGreaterThan(0.58);
  expect(within / all).toBeLessThan(0.8);
});

describe("what never gives damping", () => {
  test("static rows only: the sentence says that damping shows only at speed", () => {
    const found = given(analyseRows(rowsOf({ depths, speeds: [0.5, 2, -2] })));
    expect(faultCode(found.damping)).toBe("staticRowsOnly");
    if (!found.damping.ok) {
      expect(inModelUnits(found.damping.fault.sentence)).toContain("Damping shows only at speed");
    }
    expect(found.staticCurve.ok).toBe(true);
  });

  test("whatever the rows and the threshold, none above it means no damping", () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(
            fc.double({ min: 1, max: 40, noNaN: true }),
            fc.double({ min: -1, max: 1, noNaN: true }),
          ),
          {
            minLength: 10,
            maxLength: 60,
          },
        ),
        fc.double({ min: 0.5, max: 50, noNaN: true }),
        (rows, threshold) => {
          const test = fromRows(
            rows.map(([depth, share]) => [depth, share * threshold, knownStop.force(depth)]),
          );
          const found = analyseRows(test, { staticSpeedMmPerS: threshold });
          if (found.ok) expect(faultCode(found.value.damping)).toBe("staticRowsOnly");
        },
      ),
    );
  });

  test("one speed is not enough", () => {
    const found = given(analyseRows(rowsOf({ depths, speeds: [1, 300] })));
    expect(faultCode(found.damping)).toBe("tooFewSpeeds");
  });

  test("two speeds, but never at the same depth, are not enough", () => {
    const slow = rowsOf({ depths, speeds: [1] });
    const one = rowsOf({ depths: [10, 20], speeds: [200] });
    const other = rowsOf({ depths: [15, 30], speeds: [400] });
    const found = given(analyseRows(joined(slow, one, other)));
    expect(faultCode(found.damping)).toBe("tooFewSpeeds");
  });

  test("one depth is not enough", () => {
    const found = given(
      analyseRows(
        joined(rowsOf({ depths, speeds: [1] }), rowsOf({ depths: [20], speeds: [200, 400] })),
      ),
    );
    expect(faultCode(found.damping)).toBe("tooFewDepths");
  });

  test("rows at speed alone: no static curve to take from the force", () => {
    const found = given(analyseRows(rowsOf({ depths, speeds: [200, 400] })));
    expect(faultCode(found.staticCurve)).toBe("noStaticRows");
    expect(faultCode(found.damping)).toBe("noStaticRows");
  });
});

function joined(...tests: readonly DepthSpeedForce[]): DepthSpeedForce {
  return fromRows(
    tests.flatMap((test) =>
      Array.from(test.depthMm, (depth, row): [number, number, number] => [
        depth,
        test.speedMmPerS[row] as number,
        test.forceN[row] as number,
      ]),
    ),
  );
}

function changed(
  test: DepthSpeedForce,
  change: (row: [number, number, number]) => [number, number, number],
): DepthSpeedForce {
  return fromRows(
    Array.from(test.depthMm, (depth, row) =>
      change([depth, test.speedMmPerS[row] as number, test.forceN[row] as number]),
    ),
  );
}

describe("recognised and put right", () => {
  const fine = Array.from({ length: 81 }, (_, index) => index / 2);
  const noisy = rowsOf({ depths: fine, speeds, repeats: 2, noiseN: 8, seed: 3 });

  function expectKnownStop(test: DepthSpeedForce, ...told: string[]): void {
    const found = given(analyseRows(test));
    for (const code of told) expect(codes(found.remarks)).toContain(code);
    const { points } = given(found.staticCurve);
    const curve = curveThrough(points);
    for (const depth of [5, 10, 20, 30, 38]) {
      const known = knownStop.force(depth);
      expect(Math.abs((curve?.force(depth) ?? 0) - known)).toBeLessThan(10 + 0.02 * known);
    }
    const deep = given(found.damping).rows.filter(({ depthMm }) => depthMm > 25);
    expect(deep.length).toBeGreaterThan(3);
    for (const row of deep) {
      const [compressing, rebounding] = knownStop.damping(row.depthMm);
      expect(Math.abs((row.compressing?.coefficient ?? 0) - compressing)).toBeLessThan(0.05);
      expect(Math.abs((row.rebounding?.coefficient ?? 0) - rebounding)).toBeLessThan(0.08);
    }
  }

  test("nothing to put right", () => expectKnownStop(noisy));

  test("force reversed", () =>
    expectKnownStop(
      changed(noisy, ([x, v, f]) => [x, v, -f]),
      "forceReversed",
    ));

  test("depth and speed reversed", () =>
    expectKnownStop(
      changed(noisy, ([x, v, f]) => [-x, -v, f]),
      "depthReversed",
    ));

  test("speed alone reversed", () =>
    expectKnownStop(
      changed(noisy, ([x, v, f]) => [x, -v, f]),
      "speedReversed",
    ));

  test("all three reversed", () =>
    expectKnownStop(
      changed(noisy, ([x, v, f]) => [-x, -v, -f]),
      "forceReversed",
      "depthReversed",
    ));

  test("a load cell that shows 60 N free of load", () =>
    expectKnownStop(
      changed(noisy, ([x, v, f]) => [x, v, f + 60]),
      "forceZero",
    ));

  test("depth and force swapped", () =>
    expectKnownStop(
      changed(noisy, ([x, v, f]) => [f, v, x]),
      "columnsSwapped",
    ));

  test("speed and force swapped", () =>
    expectKnownStop(
      changed(noisy, ([x, v, f]) => [x, f, v]),
      "columnsSwapped",
    ));

  test("depth and speed swapped", () =>
    expectKnownStop(
      changed(noisy, ([x, v, f]) => [v, x, f]),
      "columnsSwapped",
    ));

  test("the approach before the touch, at a crosshead position of 112 mm", () => {
    const approach = Array.from({ length: 120 }, (_, index) => (index - 40) / 2);
    expectKnownStop(
      changed(rowsOf({ depths: approach, speeds, repeats: 3, noiseN: 8, seed: 5 }), ([x, v, f]) => [
        x + 112,
        v,
        f + 25,
      ]),
      "depthZero",
      "forceZero",
    );
  });

  test("speeds without a sign, in whole strokes", () => {
    const rows: [number, number, number][] = [];
    const noise = new Noise(9);
    const push = (depth: number, speed: number) => {
      const [compressing, rebounding] = knownStop.damping(depth);
      const damped = knownStop.force(depth) + (speed > 0 ? compressing : rebounding) * speed;
      rows.push([depth, Math.abs(speed), Math.max(0, damped) + noise.normal(8)]);
    };
    for (const speed of [1, 100, 300, 600]) {
      for (let depth = 0; depth <= 40; depth += 0.25) push(depth, speed);
      if (speed === 1) continue;
      for (let depth = 40; depth >= 0; depth -= 0.25) push(depth, -speed);
    }
    expectKnownStop(fromRows(rows), "speedUnsigned");
  });
});

describe("refused in a sentence", () => {
  test("a force that does not follow the depth", () => {
    const noise = new Noise(4);
    const rows = Array.from({ length: 200 }, (): [number, number, number] => [
      40 * noise.uniform(),
      1,
      1000 * noise.uniform(),
    ]);
    expect(faultCode(analyseRows(fromRows(rows)))).toBe("columnsNotUsable");
  });

  test("metres taken for millimetres", () => {
    const rows = changed(rowsOf({ depths, speeds }), ([x, v, f]) => [1000 * x, v, f]);
    expect(faultCode(analyseRows(rows))).toBe("columnsNotUsable");
  });

  test("depths below 0 that already push", () => {
    const rows = changed(rowsOf({ depths: depths.map((x) => x + 10), speeds }), ([x, v, f]) => [
      x - 30,
      v,
      f,
    ]);
    expect(faultCode(analyseRows(rows))).toBe("depthNotTold");
  });

  test("three rows", () => {
    expect(faultCode(analyseRows(rowsOf({ depths: [1, 2, 3], speeds: [1] })))).toBe("tooFewRows");
  });
});

describe("always", () => {
  const row = fc.tuple(
    fc.double({ min: -100, max: 100, noNaN: true }),
    fc.double({ min: -2000, max: 2000, noNaN: true }),
    fc.double({ min: -20_000, max: 20_000, noNaN: true }),
  );

  test("a curve rises in both columns and every figure is finite, whatever the rows", () => {
    fc.assert(
      fc.property(fc.array(row, { minLength: 4, maxLength: 80 }), (rows) => {
        const found = analyseRows(fromRows(rows));
        if (!found.ok) return;
        if (found.value.staticCurve.ok) {
          let last: readonly number[] = [0, 0];
          for (const point of found.value.staticCurve.value.points) {
            expect(point.depthMm).toBeGreaterThan(last[0] as number);
            expect(point.forceN).toBeGreaterThan(last[1] as number);
            expect(Number.isFinite(point.standardErrorN)).toBe(true);
            last = [point.depthMm, point.forceN];
          }
        }
        if (found.value.damping.ok) {
          for (const [depth, compressing, rebounding] of found.value.damping.value.table) {
            for (const value of [depth, compressing, rebounding]) {
              expect(Number.isFinite(value) && value >= 0).toBe(true);
            }
          }
        }
      }),
    );
  });

  test("the order of signed rows changes nothing", () => {
    const rows = rowsOf({ depths, speeds, repeats: 2, noiseN: 10 });
    const places = Array.from(rows.depthMm, (_, place) => place);
    const straight = given(analyseRows(rows));
    fc.assert(
      fc.property(fc.shuffledSubarray(places, { minLength: places.length }), (order) => {
        const shuffled = given(
          analyseRows(
            fromRows(
              order.map((at) => [
                rows.depthMm[at] as number,
                rows.speedMmPerS[at] as number,
                rows.forceN[at] as number,
              ]),
            ),
          ),
        );
        const table = given(shuffled.damping).table;
        for (const [place, line] of given(straight.damping).table.entries()) {
          for (const column of [0, 1, 2] as const) {
            expect(table[place]?.[column]).toBeCloseTo(line[column], 9);
          }
        }
      }),
      { numRuns: 20 },
    );
  });
});

describe("where the depth begins", () => {
  const depthsFine = Array.from({ length: 601 }, (_, place) => place * 0.06);

  test.each([3, 4, 5])(
    "a stop whose force grows as depth to the power of %i keeps its depths",
    (power) => {
      for (const noiseN of [0, 10, 50]) {
        const stop = {
          force: (x: number) => (x <= 0 ? 0 : 15_000 * (x / 36) ** power),
          damping: () => [0.3, 0.5] as const,
        };
        const rows = rowsOf({ depths: depthsFine, speeds: [0, 150, 450], noiseN, seed: 4, stop });
        const found = given(analyseRows(rows));
        expect(codes(found.remarks)).not.toContain("depthZero");
        const curve = curveThrough(given(found.staticCurve).points);
        for (const depth of [12, 18, 30]) {
          expect(Math.abs((curve?.force(depth) ?? 0) - stop.force(depth))).toBeLessThan(100);
        }
      }
    },
  );

  test("a stop touched 14 mm after the file's own 0 is taken from its touch", () => {
    const stop = {
      force: (x: number) => knownStop.force(x - 14),
      damping: () => [0, 0] as const,
    };
    const rows = rowsOf({ depths: depthsFine, speeds: [0], repeats: 2, noiseN: 2, seed: 8, stop });
    const found = given(analyseRows(rows));
    expect(codes(found.remarks)).toContain("depthZero");
    const curve = curveThrough(given(found.staticCurve).points);
    for (const depth of [5, 10, 20]) {
      expect(Math.abs((curve?.force(depth) ?? 0) - knownStop.force(depth))).toBeLessThan(12);
    }
  });

  test("what may be an offset, in a test that begins past the first touch, is left and told", () => {
    const late = Array.from({ length: 18 }, (_, place) => 3 + 2 * place);
    const offset = (by: number) => {
      const rows = rowsOf({ depths: late, speeds: [0], repeats: 3 });
      return given(analyseRows({ ...rows, forceN: rows.forceN.map((force) => force + by) }));
    };
    expect(codes(offset(0).remarks)).toEqual([]);
    const found = offset(90);
    expect(codes(found.remarks)).toEqual(["zeroNotTold"]);
    // The straight line through F(3) and F(5), by hand: it meets depth 0 at 90 less 0.35·3·5.
    const [told] = worded(found.remarks[0]?.sentence ?? []).filter(
      (part) => typeof part === "object",
    );
    expect(told).toMatchObject({ kind: "force" });
    expect(told?.value).toBeCloseTo(90 - 0.35 * 3 * 5, 6);
    expect(given(found.staticCurve).points[0]?.forceN).toBeCloseTo(knownStop.force(3) + 90, 6);
  });

  test("a short stretch without force, then a force that rises at once, is told", () => {
    const depths = [1, 2, 3, ...Array.from({ length: 20 }, (_, place) => 5 + 2 * place)];
    const stop = { force: (x: number) => knownStop.force(x - 3), damping: () => [0, 0] as const };
    const found = given(analyseRows(rowsOf({ depths, speeds: [0], repeats: 4, stop })));
    expect(codes(found.remarks)).toEqual(["softStart"]);
  });
});
