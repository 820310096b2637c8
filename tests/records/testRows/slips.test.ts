import { describe, expect, it } from "vitest";
import { foundStop } from "../../../src/physics/stopTests/foundStop.ts";
import { importTestText } from "../../../src/records/testRows/analyseTest.ts";
import type { TestImport } from "../../../src/records/testRows/testFile.ts";
import { withPlainSpaces } from "../../../src/saying/quantityText.ts";
import { sentenceText } from "../../../src/saying/sentenceText.ts";
import { faultCode, given } from "../../physics/stopTests/outcomes.ts";
import { trueStops } from "../../support/testMachine/designs.ts";
import { ramp, sequence, triangle } from "../../support/testMachine/motions.ts";
import { measure } from "../../support/testMachine/testMachine.ts";

const truth = trueStops.dashpot;
if (truth === undefined) throw new Error("no such stop");
const { timeS, depthMm, forceN } = measure(
  truth,
  sequence([...ramp(0, 44, 8), triangle(0, 40, 100, 3), triangle(0, 40, 400, 4)], 0.2),
  { samplesPerS: 400, whiteN: 5 },
);
/** The stop as the pack has it. */
const stop = {
  freeHeightMm: 70,
  curve: [10, 20, 30, 40].map((mm) => [mm, truth.force(mm)] as const),
};

type Cells = (time: number, depth: number, force: number, row: number) => readonly number[];
const plain: Cells = (time, depth, force) => [time, depth, force];
const headings = "Time [s],Depth [mm],Force [N]";

function written(head: string, cells: Cells = plain): string {
  const lines = Array.from(timeS, (time, row) =>
    cells(time, depthMm[row] ?? 0, forceN[row] ?? 0, row)
      .map((value) => String(Number(value.toPrecision(8))))
      .join(","),
  );
  return `${head}\n${lines.join("\n")}\n`;
}

function read(text: string): readonly TestImport[] {
  return given(importTestText(text, "slip.csv", { stop }));
}

function codes(test: TestImport | undefined, asking: boolean): readonly string[] {
  return [...(test?.file.remarks ?? []), ...(test?.analysis.remarks ?? [])]
    .filter(({ asks }) => !asking || asks === true)
    .map(({ code }) => code);
}

describe("a slip of the file is asked about", () => {
  it.each<readonly [string, string, readonly string[]]>([
    ["N headed as kN", written("Time [s],Depth [mm],Force [kN]"), ["stiffnessOdd", "curveOdd"]],
    ["kN headed as N", written(headings, (t, x, f) => [t, x, f / 1000]), ["curveOdd"]],
    ["mm headed as in", written("Time [s],Depth [in],Force [N]"), ["depthOdd", "curveOdd"]],
    [
      "mm/s headed as in/s",
      written("Time [s],Depth [mm],Speed [in/s],Force [N]", (t, x, f, row) => [
        t,
        x,
        400 * (x - (depthMm[row - 1] ?? x)),
        f,
      ]),
      ["speedOdd"],
    ],
  ])("%s", (_, text, asked) => {
    const [test] = read(text);
    expect(codes(test, true)).toEqual(expect.arrayContaining([...asked]));
  });

  it("in the units of who reads it", () => {
    const [test] = read(written("Time [s],Depth [mm],Force [kN]"));
    const odd = test?.file.remarks.find(({ code }) => code === "stiffnessOdd");
    const text = withPlainSpaces(sentenceText(odd?.sentence ?? [], "in"));
    expect(text).toContain("stops are made from 50.0 lb/in to 6000 lb/in.");
    expect(text).not.toMatch(/N\/mm/);
  });

  it("two tests in one file, each with headings, are two, and which one is asked", () => {
    const text = `${written(headings)}Second stop\n${written(headings, (t, x, f) => [t, x, 1.6 * f])}`;
    const tests = read(text);
    expect(tests.map(({ file }) => file.part)).toEqual([
      { index: 0, of: 2, title: "" },
      { index: 1, of: 2, title: "Second stop" },
    ]);
    const [first, second] = tests.map(
      ({ analysis }) => foundStop(analysis)?.curve.at(-1)?.[1] ?? 0,
    );
    expect((second ?? 0) / (first ?? 1)).toBeCloseTo(1.6, 2);
    for (const test of tests) expect(codes(test, true)).toContain("partsOfFile");
  });

  it("nothing is asked where nothing is wrong", () => {
    expect(codes(read(written(headings))[0], true)).toEqual([]);
  });
});

describe("rows that no stop made are left out and told", () => {
  const cases: readonly (readonly [string, string, Cells])[] = [
    ["spikes", "spikes", (t, x, f, row) => [t, x, row % 900 === 400 ? f + 9000 : f]],
    [
      "zeros for missing numbers",
      "zerosForMissing",
      (t, x, f, row) => [t, x, row % 900 === 400 && x > 10 ? 0 : f],
    ],
    ["a load cell at its end", "saturated", (t, x, f) => [t, x, Math.min(f, 3000)]],
    [
      "a depth that stood still",
      "heldDepths",
      (t, x, f, row) => [t, row > 1200 && row < 1300 ? (depthMm[1200] ?? x) : x, f],
    ],
  ];
  it.each(cases)("%s", (_, code, cells) => {
    const [test] = read(written(headings, cells));
    expect(codes(test, false)).toContain(code);
    const found = test && foundStop(test.analysis);
    for (const [depth, force] of found?.curve.slice(5, -2) ?? []) {
      expect(Math.abs(force / truth.force(depth) - 1)).toBeLessThan(0.02);
    }
    for (const [depth, into] of found?.damping?.slice(1, -1) ?? []) {
      expect(Math.abs(into / (truth.damping?.(depth, 1) ?? 0) - 1)).toBeLessThan(0.06);
    }
    expect(found?.damping).toHaveLength(5);
  });

  it("a depth of −1.4e−17 is a 0", () => {
    const text = written(headings).replace(/\n0,0,/, "\n0,-1.4e-17,");
    expect(text).toContain("-1.4e-17");
    expect(foundStop((read(text)[0] as TestImport).analysis)?.testedAtSpeed).toBe(true);
  });
});

describe("rows of depth, speed and force", () => {
  const rows = (speeds: readonly number[], labelled: (speed: number) => number, c: number) =>
    `Depth [mm],Speed [mm/s],Force [N]\n${speeds
      .flatMap((speed) =>
        Array.from({ length: 60 }, (_, row) => {
          const depth = 0.7 * row;
          const noise = 5 * Math.sin(7.1 * row + speed);
          return `${depth.toFixed(2)},${labelled(speed)},${(truth.force(depth) + c * speed + noise).toFixed(1)}`;
        }),
      )
      .join("\n")}\n`;

  it.each([
    ["in/s", 1],
    ["mm/s", 1 / 25.4],
  ])("whose speeds in %s are those of the other unit are asked about", (unit, perMmPerS) => {
    const text = rows([1, 100, 200, 400, -100, -200, -400], (speed) => speed * perMmPerS, 0.6);
    const [test] = read(text.replace("[mm/s]", `[${unit}]`));
    expect(codes(test, true)).toContain("speedUnlikely");
  });

  it("of usual speeds are not asked about", () => {
    const [test] = read(rows([1, 100, 200, 400, -100, -200, -400], (speed) => speed, 0.6));
    expect(codes(test, true)).toEqual([]);
  });

  it("of a static test labelled as at speed give no damping, and the stop does not count as tested", () => {
    const [test] = read(rows([1, 2, 3, -1, -2], (speed) => (speed === 1 ? 1 : 100 * speed), 0));
    expect(codes(test, false)).toContain("lossNotTold");
    expect(test && foundStop(test.analysis)).toMatchObject({ testedAtSpeed: false, damping: null });
  });

  it("a sentence with the words of headings and numbers in it is none", () => {
    const body = rows([1, 200, 400], (speed) => speed, 0.6);
    const sentence =
      "Depth 16 m,Speed 5 mm/s,Force 3 kN\nSlow run to a depth of 16 m, force 3 kN\n";
    const found = foundStop((read(sentence + body)[0] as TestImport).analysis);
    expect(found?.curve.at(-1)?.[0]).toBeLessThan(45);
  });

  it("nor is one right above the rows: nothing is read as 16 m deep", () => {
    const body = rows([1, 200, 400], (speed) => speed, 0.6)
      .split("\n")
      .slice(1)
      .join("\n");
    for (const sentence of [
      "Slow run to a depth of 16 m,force up to 3 kN,at speed 5 mm/s",
      "Depth 16 m,Speed 5 mm/s,Force 3 kN",
    ]) {
      expect(faultCode(importTestText(`${sentence}\n${body}`, "slip.csv", { stop }))).toBe(
        "headingsNotKnown",
      );
    }
  });

  it("one spike among the slow rows is left out", () => {
    const text = rows([1, 200, 400], (speed) => speed, 0.6).replace(
      /\n14\.00,1,[^\n]*/,
      "\n14.00,1,9000",
    );
    const [test] = read(text);
    expect(codes(test, false)).toContain("spikes");
  });
});
