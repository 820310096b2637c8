import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Fault, Outcome } from "../../../src/physics/outcome.ts";
import type { RowsAnalysis } from "../../../src/physics/stopTests/benchTest.ts";
import { curveThrough } from "../../../src/physics/stopTests/staticCurve.ts";
import { importTestText } from "../../../src/records/testRows/analyseTest.ts";
import { importFile } from "../../../src/records/testRows/importFile.ts";
import type { TestImport } from "../../../src/records/testRows/testFile.ts";
import { TestReader } from "../../../src/records/testRows/testReader.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { cyclesOfPlan, knownStop, rowsOf } from "../../physics/stopTests/generatedTests.ts";
import { faultCode, given } from "../../physics/stopTests/outcomes.ts";

const depths = Array.from({ length: 81 }, (_, index) => index / 2);
const rows = rowsOf({
  depths,
  speeds: [1, 150, 400, -150, -400],
  repeats: 2,
  noiseN: 8,
  seed: 21,
});

interface Writing {
  readonly headings?: readonly string[];
  readonly factors?: readonly [depth: number, speed: number, force: number];
  readonly delimiter?: string;
  readonly decimalComma?: boolean;
  readonly before?: string;
  readonly newline?: string;
}

function csvOf(writing: Writing = {}): string {
  const {
    headings = ["Depth [mm]", "Speed [mm/s]", "Force [N]"],
    factors = [1, 1, 1],
    delimiter = ",",
    decimalComma = false,
    before = "",
    newline = "\n",
  } = writing;
  const number = (value: number) => {
    const text = value.toPrecision(7);
    return decimalComma ? text.replace(".", ",") : text;
  };
  const lines = Array.from(rows.depthMm, (depth, row) =>
    [
      depth * factors[0],
      (rows.speedMmPerS[row] as number) * factors[1],
      (rows.forceN[row] as number) * factors[2],
    ]
      .map(number)
      .join(delimiter),
  );
  return `${before}${[headings.join(delimiter), ...lines].join(newline)}${newline}`;
}

/** The one test of a file. */
function only(outcome: Outcome<readonly TestImport[]>): TestImport {
  const tests = given(outcome);
  const [test] = tests;
  if (test === undefined || tests.length > 1) throw new Error(`${tests.length} tests`);
  return test;
}

function rowsAnalysis(outcome: Outcome<readonly TestImport[]>): RowsAnalysis {
  const { analysis } = only(outcome);
  if (analysis.kind !== "rows") throw new Error("cycles where rows were written");
  return analysis;
}

function expectKnownStop(text: string): TestImport {
  const imported = importTestText(text, "generated.csv");
  const analysis = rowsAnalysis(imported);
  const curve = curveThrough(given(analysis.staticCurve).points);
  for (const depth of [5, 10, 20, 30, 38]) {
    const known = knownStop.force(depth);
    expect(Math.abs((curve?.force(depth) ?? 0) - known)).toBeLessThan(10 + 0.02 * known);
  }
  const deep = given(analysis.damping).rows.filter(({ depthMm }) => depthMm > 25);
  expect(deep.length).toBeGreaterThan(3);
  for (const row of deep) {
    const [compressing, rebounding] = knownStop.damping(row.depthMm);
    expect(Math.abs((row.compressing?.coefficient ?? 0) - compressing)).toBeLessThan(0.06);
    expect(Math.abs((row.rebounding?.coefficient ?? 0) - rebounding)).toBeLessThan(0.1);
  }
  return only(imported);
}

const perInch = 1 / 25.4;
const perPound = 1 / 4.4482216152605;

describe("the same known stop however it is written", () => {
  test.each<[string, Writing]>([
    ["commas and points", {}],
    ["semicolons and decimal commas", { delimiter: ";", decimalComma: true }],
    ["tabs and decimal commas", { delimiter: "\t", decimalComma: true }],
    ["lines ended as on old machines", { newline: "\r" }],
    ["lines ended by CR LF, with a byte order mark", { newline: "\r\n", before: "\uFEFF" }],
    ["round brackets", { headings: ["Deflection (mm)", "Velocity (mm/s)", "Load (N)"] }],
    ["units after a stroke", { headings: ["Depth / mm", "Speed / mm/s", "Force / N"] }],
    ["units as last words", { headings: ["Depth mm", "Speed mm/s", "Force N"] }],
    [
      "in, in/s, lbf",
      {
        headings: ["Depth [in]", "Speed [in/s]", "Force [lbf]"],
        factors: [perInch, perInch, perPound],
      },
    ],
    [
      "mm, m/s, kN",
      {
        headings: ["Depth [mm]", "Speed [m/s]", "Force [kN]"],
        factors: [1, 0.001, 0.001],
      },
    ],
    [
      "m, mm/min, kN",
      {
        headings: ["Depth [m]", "Speed [mm/min]", "Force [kN]"],
        factors: [0.001, 60, 0.001],
      },
    ],
    ["a row of units below the headings", { headings: ["Depth,Speed,Force\nmm", "mm/s", "N"] }],
    [
      "lines about the test before",
      {
        before: "Stop 14, bench 2\nDate;2024-05-01\n\n",
        delimiter: ";",
        decimalComma: true,
      },
    ],
    [
      "headings and units exchanged: units are believed",
      {
        headings: ["Force [mm]", "Speed [mm/s]", "Depth [N]"],
      },
    ],
  ])("%s", (_, writing) => {
    expectKnownStop(csvOf(writing));
  });

  test("columns in another order, others between, numbers in quotation marks", () => {
    const lines = csvOf()
      .trim()
      .split("\n")
      .map((line, place) => {
        const [depth, speed, force] = line.split(",");
        return place === 0
          ? `Sample,${force},Temperature [°C],${depth},${speed}`
          : `${place},"${force}",21.5,"${depth}",${speed}`;
      });
    expectKnownStop(lines.join("\n"));
  });

  test("missing samples are left out and told", () => {
    const lines = csvOf().split("\n");
    for (let place = 10; place < lines.length; place += 25) {
      lines[place] = place % 2 === 0 ? "12.5,,300" : "n/a,1,-";
    }
    const { file } = expectKnownStop(lines.join("\n"));
    expect(file.rowsLeftOut).toBeGreaterThan(20);
    expect(file.remarks.map(({ code }) => code)).toEqual(["rowsLeftOut"]);
  });

  test("columns chosen by the person where the file has no headings", () => {
    const text = csvOf().split("\n").slice(1).join("\n");
    expect(faultCode(importTestText(text, "plain.csv"))).toBe("headingsNotKnown");
    const chosen = importTestText(text, "plain.csv", {
      columns: [
        { index: 0, quantity: "depth", unit: "mm" },
        { index: 1, quantity: "speed", unit: "mm/s" },
        { index: 2, quantity: "force", unit: "N" },
      ],
    });
    expect(only(chosen).file.rows).toBe(rows.depthMm.length);
  });

  test("swapped columns in inches and pounds: each number keeps its own unit", () => {
    expectKnownStop(
      csvOf({
        headings: ["Force [lbf]", "Speed [in/s]", "Depth [in]"],
        factors: [perInch, perInch, perPound],
      }),
    );
  });
});

test("cycles: time, displacement, force in s, mm, kN with decimal commas", () => {
  const cycles = cyclesOfPlan({
    amplitudeMm: 5,
    frequencyHz: 3,
    cycles: 6,
    samplesPerCycle: 300,
    meanMm: 15,
    noiseN: 5,
    force: (x, v) => 60 * (15 + x) + 0.5 * v,
  });
  const lines = Array.from(cycles.timeS, (time, row) =>
    [
      time.toFixed(6),
      (cycles.displacementMm[row] as number).toFixed(4),
      ((cycles.forceN[row] as number) / 1000).toFixed(6),
    ]
      .join(";")
      .replaceAll(".", ","),
  );
  const text = ["Zeit [s];Weg [mm];Kraft [kN]", ...lines].join("\r\n");
  const { analysis } = only(importTestText(text, "cycles.csv"));
  if (analysis.kind !== "timed") throw new Error(analysis.kind);
  expect(analysis.staticCurve).toMatchObject({ ok: false, fault: { code: "noRamp" } });
  const [found] = analysis.blocks;
  if (found === undefined) throw new Error("no block of cycles");
  expect(found.cycles).toBe(6);
  expect(found.equivalentDampingNsPerMm?.value).toBeCloseTo(0.5, 2);
  expect(found.lossJ.value).toBeCloseTo((Math.PI * 0.5 * 6 * Math.PI * 25) / 1000, 2);
});

describe("refused in a sentence that says what to do", () => {
  const refused: readonly (readonly [string, string, string])[] = [
    ["nothing", "", "fileEmpty"],
    ["headings only", "Depth [mm],Speed [mm/s],Force [N]\n", "fileEmpty"],
    ["no column of force", "Depth [mm],Speed [mm/s]\n1,2\n", "columnMissing"],
    ["neither speed nor time", "Depth [mm],Force [N]\n1,2\n", "columnMissing"],
    [
      "two columns of force",
      "Depth [mm],Speed [mm/s],Force 1 [N],Force 2 [N]\n1,1,2,3\n",
      "columnsTwice",
    ],
    ["no unit", "Depth,Speed [mm/s],Force [N]\n1,1,2\n", "unitNotTold"],
    ["a unit that is not known", "Depth [mm],Speed [mm/s],Force [tf]\n1,1,2\n", "unitNotKnown"],
    [
      "a force in mm beside a depth in mm",
      "Depth [mm],Speed [mm/s],Force [mm]\n1,1,2\n",
      "unitOfAnother",
    ],
    ["decimal commas between commas", csvOf({ decimalComma: true }), "commaBetweenAndWithin"],
    [
      "point and comma mixed",
      "Depth [mm];Speed [mm/s];Force [N]\n1,5;0;20\n2.5;0;40\n",
      "decimalMarkMixed",
    ],
    ["words for numbers", "Depth [mm],Speed [mm/s],Force [N]\na,b,c\nd,e,f\n", "tooManyUnreadable"],
  ];

  test.each(refused)("%s", (_, text, code) => {
    const imported = importTestText(text, "refused.csv");
    expect(faultCode(imported)).toBe(code);
    const fault = (imported as { readonly fault: Fault }).fault;
    expect(inModelUnits(fault.sentence)).toMatch(/^[A-Z0-9].*\.$/);
  });
});

describe("always", () => {
  test("the pieces in which the text comes change nothing", () => {
    const text = csvOf({ delimiter: ";", decimalComma: true, newline: "\r\n" });
    const whole = new TestReader("a");
    whole.push(text);
    const expected = given(whole.finish()).map(({ test }) => test);
    fc.assert(
      fc.property(fc.array(fc.nat(text.length), { maxLength: 40 }), (cuts) => {
        const reader = new TestReader("a");
        let from = 0;
        for (const to of [...cuts, text.length].sort((a, b) => a - b)) {
          expect(reader.push(text.slice(from, to)).ok).toBe(true);
          from = to;
        }
        expect(given(reader.finish()).map(({ test }) => test)).toEqual(expected);
      }),
      { numRuns: 30 },
    );
  });

  test("whatever the text, an answer or a sentence, never a throw", () => {
    const cell = fc.oneof(
      fc.string({ maxLength: 12 }),
      fc.constantFrom("Depth [mm]", "Speed [mm/s]", "Force [N]", "Time [s]", '"', ";", "1,5", "-3"),
      fc.double().map(String),
    );
    const line = fc.array(cell, { maxLength: 5 }).map((cells) => cells.join(","));
    fc.assert(
      fc.property(fc.array(line, { maxLength: 30 }), (lines) => {
        const imported = importTestText(lines.join("\n"), "any.csv");
        if (!imported.ok) expect(inModelUnits(imported.fault.sentence)).not.toBe("");
      }),
    );
  });
});

test("a number that nothing measures is left out with its row, up to a slip of a thousand million", () => {
  const rows = Array.from({ length: 40 }, (_, row) => `${row % 20};0.2;${1 + 25 * (row % 20)}`);
  const file = ["depth mm;speed mm/s;force N", ...rows];
  const withForce = (force: string) =>
    only(importTestText([...file, `21;0.2;${force}`].join("\n"), "slip.csv"));
  for (const force of ["1e308", "-1e308", "1000000001"]) {
    const { file: facts, analysis } = withForce(force);
    expect(facts.rowsLeftOut).toBe(1);
    expect(facts.rows).toBe(40);
    expect(analysis.kind === "rows" && analysis.staticCurve.ok).toBe(true);
  }
  expect(withForce("1000000000").file.rowsLeftOut).toBe(0);
});

describe("a file in pieces", () => {
  test("progress rises to the whole, and the answer is that of the text", async () => {
    const repeated = csvOf();
    const body = repeated.slice(repeated.indexOf("\n") + 1);
    const text = repeated + body.repeat(150);
    const file = new File([text], "long.csv");
    const seen: number[] = [];
    const phases = new Set<string>();
    let time = 0;
    const imported = await importFile(
      file,
      {},
      ({ bytes, phase }) => {
        seen.push(bytes);
        phases.add(phase);
      },
      () => (time += 200),
    );
    expect(only(imported).file.rows).toBe(151 * rows.depthMm.length);
    expect(seen.length).toBeGreaterThan(3);
    expect([...seen].sort((a, b) => a - b)).toEqual(seen);
    expect(seen.at(-1)).toBe(file.size);
    expect([...phases]).toEqual(["reading", "analysing"]);
  });

  test("UTF-16 as spreadsheets write it", async () => {
    const text = `\uFEFF${csvOf({ delimiter: "\t", decimalComma: true })}`;
    const units = Uint16Array.from(text, (character) => character.charCodeAt(0));
    const imported = await importFile(new File([units], "sheet.txt"), {}, () => undefined);
    expect(only(imported).file.rows).toBe(rows.depthMm.length);
  });
});
