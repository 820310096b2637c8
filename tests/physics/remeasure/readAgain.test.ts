import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { ReadingId } from "../../../src/physics/readings/readingId.ts";
import { afterWay, waysFor } from "../../../src/physics/remeasure/readAgain.ts";
import {
  drawnReading,
  standardUncertainty,
} from "../../../src/physics/uncertainty/drawnReading.ts";

const read = (values: readonly number[], tol: number, id: ReadingId = "left.gap") =>
  drawnReading(id, { values, tol });

describe("a reading after more repeats", () => {
  it("keeps half of its normal part where it has four times the values", () => {
    // JCGM 100:2008, 4.2.3: s/√n falls with the root of n.
    const gap = read([40, 42], 1);
    const after = afterWay(gap, 2, { kind: "repeat", more: 6 });
    expect(after.standardError).toBeCloseTo(gap.standardError / 2, 12);
    expect(after.halfWidth).toBe(1);
  });

  it("moves by what the normal part has lost, and no more", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 10, max: 60, noNaN: true }), { minLength: 2, maxLength: 8 }),
        fc.integer({ min: 1, max: 20 }),
        (values, more) => {
          const gap = read(values, 1);
          const after = afterWay(gap, values.length, { kind: "repeat", more });
          const { standardDeviation, halfWidths } = after.shift;
          expect(halfWidths).toEqual([]);
          expect(standardDeviation ** 2 + after.standardError ** 2).toBeCloseTo(
            gap.standardError ** 2,
            9,
          );
        },
      ),
    );
  });

  it("is as it was where one value gives no scatter", () => {
    const after = afterWay(read([40], 2), 1, { kind: "repeat", more: 3 });
    expect(after).toEqual({
      halfWidth: 2,
      standardError: 0,
      shift: { halfWidths: [], standardDeviation: 0 },
    });
  });
});

describe("a reading after a better tool", () => {
  it("has that tool's ±, its old scatter, and a mean moved by both doubts", () => {
    const gap = read([40, 41, 42], 2);
    const tool = { id: "caliper", name: "a caliper", halfWidth: 0.2 };
    const after = afterWay(gap, 3, { kind: "tool", tool });
    expect(after.halfWidth).toBe(0.2);
    expect(after.standardError).toBe(gap.standardError);
    const [old = 0, fresh = 0] = after.shift.halfWidths;
    // Variances of independent parts add: JCGM 100:2008, 5.1.2; a rectangular one is a²/3, 4.3.7.
    const shiftVariance = (old ** 2 + fresh ** 2) / 3 + after.shift.standardDeviation ** 2;
    const afterVariance = 0.2 ** 2 / 3 + gap.standardError ** 2;
    expect(shiftVariance).toBeCloseTo(standardUncertainty(gap) ** 2 + afterVariance, 12);
  });

  it("is known twice as exactly where it is a ride value", () => {
    const rate = read([26], 4, "ride.wheelRateNPerMm");
    expect(waysFor(rate, 1, [])).toEqual([{ kind: "halve" }]);
    expect(afterWay(rate, 1, { kind: "halve" }).halfWidth).toBe(2);
  });
});

describe("the ways to take a reading again", () => {
  const tools = [
    { id: "caliper", name: "a caliper", halfWidth: 0.1 },
    { id: "rule", name: "a steel rule", halfWidth: 0.6 },
    { id: "tape", name: "a tape", halfWidth: 0.9 },
  ];

  it("are the least trouble first, and only tools that measure closer", () => {
    const ways = waysFor(read([40, 41], 1), 2, tools);
    expect(ways.map((way) => (way.kind === "tool" ? way.tool.id : way.kind))).toEqual([
      "repeat",
      "rule",
      "caliper",
    ]);
  });

  it("are none where the best tool was used once", () => {
    expect(waysFor(read([40], 0.1), 1, tools)).toEqual([]);
    expect(waysFor(read([40], 0), 1, tools)).toEqual([]);
  });

  const kinds = (...given: Parameters<typeof waysFor>) =>
    waysFor(...given).map((way) => (way.kind === "tool" ? way.tool.id : way.kind));

  it("hold tools in whatever order they lie, also one without any doubt, never one with less", () => {
    const [caliper, rule, tape] = tools;
    if (!caliper || !rule || !tape) throw new Error("tools");
    for (const given of [
      [tape, caliper, rule],
      [rule, tape, caliper],
      [caliper, rule, tape],
    ]) {
      expect(kinds(read([40], 2), 1, given)).toEqual(["tape", "rule", "caliper"]);
    }
    const sure = { ...caliper, id: "sure", halfWidth: 0 };
    expect(kinds(read([40], 1), 1, [sure, { ...sure, id: "odd", halfWidth: -1 }])).toEqual([
      "sure",
    ]);
  });

  it("need a fifth less doubt of a tool", () => {
    const tool = (halfWidth: number) => ({ id: `${halfWidth}`, name: "a tool", halfWidth });
    expect(kinds(read([40], 1), 1, [tool(0.8), tool(0.81)])).toEqual(["0.8"]);
  });

  it("are repeats only where several values scatter", () => {
    expect(kinds(read([40, 40], 1), 2, [])).toEqual([]);
    expect(kinds(read([40, 41], 1), 2, [])).toEqual(["repeat"]);
    // Of one value no scatter is known, whatever is carried along.
    expect(kinds({ ...read([40], 1), standardError: 1 }, 1, [])).toEqual([]);
  });

  it("are none for a ride value that is known, nor by a tool for one that is not", () => {
    expect(kinds(read([26], 0, "ride.wheelRateNPerMm"), 1, tools)).toEqual([]);
    expect(kinds(read([26], 4, "ride.wheelRateNPerMm"), 1, tools)).toEqual(["halve"]);
  });
});
