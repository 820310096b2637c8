import { describe, expect, it } from "vitest";
import { analyseRows } from "../../../src/physics/stopTests/analyseRows.ts";
import { analyseTimed } from "../../../src/physics/stopTests/analyseTimed.ts";
import type { TestAnalysis } from "../../../src/physics/stopTests/benchTest.ts";
import { demoPack } from "../../../src/records/pack/demoPack.ts";
import { readPackValue } from "../../../src/records/pack/readPack.ts";
import type { TestImport } from "../../../src/records/testRows/testFile.ts";
import {
  dampingSeries,
  plotsOfPackTest,
  plotsOfRows,
  shownSpeeds,
} from "../../../src/screens/pack/testPlots.ts";
import { packTestOf, shortOfUsable, stopWithTest } from "../../../src/screens/pack/testTakeOver.ts";

function imported(analysis: TestAnalysis, rows: number): TestImport {
  return {
    file: {
      name: "bench.csv",
      columns: [],
      delimiter: ",",
      decimalMark: ".",
      rows,
      rowsLeftOut: 0,
      part: { index: 0, of: 1, title: "" },
      remarks: [],
    },
    analysis,
  };
}

/** F = 100·x + 0.4·ẋ pressed, 0.6·ẋ back: exact, so that every value is known. */
function dashpotRows(speeds: readonly number[]) {
  const depths = [10, 20, 30, 40];
  const rows = speeds.flatMap((speed) => depths.map((depth) => [depth, speed] as const));
  const outcome = analyseRows({
    kind: "rows",
    depthMm: Float64Array.from(rows, ([depth]) => depth),
    speedMmPerS: Float64Array.from(rows, ([, speed]) => speed),
    forceN: Float64Array.from(
      rows,
      ([depth, speed]) => 100 * depth + (speed > 0 ? 0.4 : 0.6) * speed,
    ),
  });
  if (!outcome.ok) throw new Error(outcome.fault.code);
  return imported(outcome.value, rows.length);
}

const stop = demoPack.stops.find(({ id }) => id === "tall-firm");
if (!stop) throw new Error("no stop");

describe("a test that is kept with its stop", () => {
  const read = dashpotRows([0, 100, 200, -100, -200]);
  const test = packTestOf(read);

  it("gives the stop its curve and damping, exactly, and the pack is still a pack", () => {
    const next = stopWithTest(stop, read, test, { curve: true, loss: true });
    expect(next.curve).toEqual([
      [10, 1000],
      [20, 2000],
      [30, 3000],
      [40, 4000],
    ]);
    for (const [, into, out] of next.damping ?? []) {
      expect(into).toBeCloseTo(0.4, 5);
      expect(out).toBeCloseTo(0.6, 5);
    }
    expect(next.testedAtSpeed).toBe(true);
    expect(readPackValue({ ...demoPack, stops: [next], platforms: [] }).ok).toBe(true);
    expect(shortOfUsable(stop, read)).toBeCloseTo(stop.usableCompressionMm - 40, 9);
  });

  it("leaves what is not chosen as it was", () => {
    const next = stopWithTest(stop, read, test, { curve: false, loss: false });
    expect(next).toEqual({ ...stop, tests: [...(stop.tests ?? []), test] });
  });

  it("takes the estimate's mark off with the curve it takes the place of", () => {
    const estimate = { ...stop, estimated: { how: "from Shore A 60", forceShare: 0.25 } };
    const take = { curve: true, loss: false };
    expect(stopWithTest(estimate, read, test, take)).not.toHaveProperty("estimated");
    expect(stopWithTest(estimate, read, test, { ...take, curve: false }).estimated).toEqual(
      estimate.estimated,
    );
  });

  it("is drawn again from the pack as it was from the file", () => {
    const [fresh, again] = [
      read.analysis.kind === "rows" && plotsOfRows(read.analysis),
      plotsOfPackTest(test),
    ];
    if (!fresh) throw new Error("not rows");
    expect(again.curve).toEqual(fresh.curve);
    expect(again.speeds.map(({ speedMmPerS }) => speedMmPerS)).toEqual([-200, -100, 0, 100, 200]);
    expect(dampingSeries(again.damping ?? []).map(({ name }) => name)).toEqual([
      "pressed deeper",
      "coming back",
    ]);
    for (const [, residual] of again.staticResiduals ?? []) expect(residual).toBeCloseTo(0, 9);
  });
});

describe("static rows only", () => {
  it("never yield damping, whatever is chosen", () => {
    const read = dashpotRows([0]);
    const test = packTestOf(read);
    const next = stopWithTest(stop, read, test, { curve: true, loss: true });
    expect(next.damping).toBe(stop.damping);
    expect(next.testedAtSpeed).toBe(stop.testedAtSpeed);
    expect(test).not.toHaveProperty("damping");
    expect(plotsOfPackTest(test).damping).toBeNull();
  });
});

describe("cycles", () => {
  it("are kept with their loop and loss, and change neither curve nor damping", () => {
    // A spring and dashpot in a sine: loss a cycle π·c·ω·X² (vibration texts).
    const [k, c, x, omega] = [200, 1.5, 10, 4 * Math.PI];
    const time = Float64Array.from({ length: 2001 }, (_, index) => index / 1000);
    const outcome = analyseTimed({
      kind: "cycles",
      timeS: time,
      displacementMm: time.map((t) => 30 + x * Math.sin(omega * t)),
      forceN: time.map(
        (t) => k * (30 + x * Math.sin(omega * t)) + c * x * omega * Math.cos(omega * t),
      ),
    });
    if (!outcome.ok) throw new Error(outcome.fault.code);
    const read = imported(outcome.value, time.length);
    const test = packTestOf(read);
    const loss = (Math.PI * c * omega * x ** 2) / 1000;
    expect((test.blocks?.[0]?.lossJ ?? 0) / loss).toBeCloseTo(1, 2);
    expect(plotsOfPackTest(test).loops[0]?.points.length).toBeGreaterThan(50);
    const next = stopWithTest(stop, read, test, { curve: true, loss: true });
    expect({ ...next, tests: stop.tests }).toEqual({ ...stop, tests: stop.tests });
    expect(readPackValue({ ...demoPack, stops: [next], platforms: [] }).ok).toBe(true);
  });
});

it("of many speeds the slowest and the fastest are among those drawn", () => {
  const speeds = Array.from({ length: 23 }, (_, index) => ({
    speedMmPerS: index * 10,
    points: [],
  }));
  const shown = shownSpeeds(speeds, 5).map(({ speedMmPerS }) => speedMmPerS);
  expect(shown).toHaveLength(5);
  expect(shown).toContain(0);
  expect(shown).toContain(220);
});
