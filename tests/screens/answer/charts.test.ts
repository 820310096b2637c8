import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { gapOf } from "../../../src/physics/budget/gap.ts";
import { kinematicsOf } from "../../../src/physics/kinematics/kinematics.ts";
import type { CellFailure, MapCell } from "../../../src/physics/stiffness/heightClassMap.ts";
import { stopCurve } from "../../../src/physics/stop/stopCurve.ts";
import { quantityText, withPlainSpaces } from "../../../src/saying/quantityText.ts";
import { contactsByRoad } from "../../../src/screens/answer/contacts/contactsByRoad.ts";
import { ladderOf } from "../../../src/screens/answer/ladder/ladderRungs.ts";
import { ladderWords } from "../../../src/screens/answer/ladder/ladderWords.ts";
import type { Place } from "../../../src/screens/answer/map/cellWords.ts";
import { outline } from "../../../src/screens/answer/map/outline.ts";
import { regionLabels } from "../../../src/screens/answer/map/regionLabels.ts";
import {
  probabilityNumber,
  probabilityWords,
} from "../../../src/screens/answer/probabilityWords.ts";
import { wheelForceCurve } from "../../../src/screens/answer/wheelForce/wheelForceCurve.ts";
import { tickText } from "../../../src/screens/charts/axisUnit.ts";
import { areaPath, linePath } from "../../../src/screens/charts/linePath.ts";
import { linearScale } from "../../../src/screens/charts/scale.ts";
import { spreadLabels } from "../../../src/screens/charts/spreadLabels.ts";
import { linearTicks } from "../../../src/screens/charts/ticks.ts";
import { assessed, demoFitment, demoNames } from "./demoChecks.ts";

describe("scales", () => {
  it("put the ends of the domain on the ends of the range", () => {
    const scale = linearScale([-5, 20], [200, 10]);
    expect([scale.at(-5), scale.at(20), scale.at(7.5)]).toEqual([200, 10, 105]);
  });
});

describe("ticks", () => {
  it("are round, rising, inside, and about as many as asked for", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e4, max: 1e4, noNaN: true }),
        fc.double({ min: 1e-3, max: 1e5, noNaN: true }),
        (from, span) => {
          const ticks = linearTicks(from, from + span, 5);
          expect(ticks.length).toBeGreaterThanOrEqual(2);
          expect(ticks.length).toBeLessThanOrEqual(7);
          for (const [index, tick] of ticks.entries()) {
            expect(tick).toBeGreaterThanOrEqual(from - 1e-6 * span);
            expect(tick).toBeLessThanOrEqual(from + span * (1 + 1e-6));
            if (index > 0) expect(tick).toBeGreaterThan(ticks[index - 1] ?? Number.NaN);
          }
        },
      ),
    );
    expect(linearTicks(0, 168, 5)).toEqual([0, 50, 100, 150]);
    expect(linearTicks(3, 3, 5)).toEqual([]);
  });

  it("are written without needless zeros", () => {
    expect([tickText(15000), tickText(-50), tickText(0.5), tickText(0)]).toEqual([
      "15\u202f000",
      "−50",
      "0.5",
      "0",
    ]);
  });
});

describe("labels", () => {
  it("stay in order, apart, and within their bounds where there is room", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 300, noNaN: true }), { minLength: 1, maxLength: 6 }),
        (wanted) => {
          const placed = spreadLabels(wanted, 30, [0, 300]);
          const sorted = [...placed].sort((a, b) => a - b);
          expect(sorted[0]).toBeGreaterThanOrEqual(-1e-9);
          expect(sorted.at(-1)).toBeLessThanOrEqual(300 + 1e-9);
          for (let i = 1; i < sorted.length; i++) {
            expect((sorted[i] ?? 0) - (sorted[i - 1] ?? 0)).toBeGreaterThanOrEqual(30 - 1e-9);
          }
          for (const [i, a] of wanted.entries()) {
            for (const [j, b] of wanted.entries()) {
              if (a < b) expect(placed[i]).toBeLessThan(placed[j] ?? 0);
            }
          }
        },
      ),
    );
  });

  it("move no label that has room", () => {
    expect(spreadLabels([10, 100, 200], 30, [0, 300])).toEqual([10, 100, 200]);
  });
});

describe("paths", () => {
  it("leave a gap where a point is not finite", () => {
    expect(
      linePath([
        [0, 0],
        [1, 2],
        [Number.NaN, 3],
        [3, 4],
      ]),
    ).toBe("M0.0 0.0L1.0 2.0M3.0 4.0");
    expect(areaPath([], [])).toBe("");
  });

  it("of an outline hold every edge between inside and outside, and no other", () => {
    const inside = (column: number, row: number) => column === 1 && row < 2;
    const path = outline(3, 3, inside, (column, row) => [column, row]);
    // A column of two unit squares has a way round of six.
    expect(path.match(/M/g)).toHaveLength(6);
    expect(
      outline(
        3,
        3,
        () => false,
        (column, row) => [column, row],
      ),
    ).toBe("");
  });
});

describe("names of a map's regions", () => {
  const cell = (failures: readonly CellFailure[]) => ({ failures }) as unknown as MapCell;
  const grid = [
    [["hardContact"], ["hardContact"], ["hardContact"], []],
    [["hardContact"], [], [], []],
    [["hardContact"], [], [], []],
    [["earlyContact"], ["earlyContact"], [], []],
  ] as const;
  const cellAt = ({ column, row }: Place) => cell(grid[row]?.[column] ?? []);

  it("stand in each region's longest row, where the name has room", () => {
    const elsewhere: Place = { column: 3, row: 3 };
    const labels = regionLabels(4, 4, cellAt, () => 3, elsewhere);
    expect(labels).toEqual([
      { region: "hardContact", row: 0, column: 0, columns: 3 },
      { region: "works", row: 1, column: 1, columns: 3 },
    ]);
    expect(regionLabels(4, 4, cellAt, () => 2, elsewhere).map(({ region }) => region)).toEqual([
      "hardContact",
      "works",
      "earlyContact",
    ]);
  });

  it("leave the row of the stop's own mark to it, where another is as long", () => {
    const rowOf = (region: string, own: Place) =>
      regionLabels(4, 4, cellAt, () => 3, own).find((label) => label.region === region)?.row;
    expect(rowOf("works", { column: 2, row: 1 })).toBe(2);
    expect(rowOf("hardContact", { column: 1, row: 0 })).toBe(0);
  });

  it("are not given before a cell is worked out", () => {
    expect(
      regionLabels(
        4,
        4,
        () => undefined,
        () => 1,
        { column: 0, row: 0 },
      ),
    ).toEqual([]);
  });
});

describe("words", () => {
  it("never claim certainty", () => {
    expect(
      [1, 0.9996, 0.973, 0.5, 0.0004, 0].map((probability) =>
        withPlainSpaces(probabilityNumber(probability)),
      ),
    ).toEqual(["over 99.9 %", "over 99.9 %", "97.3 %", "50 %", "under 0.1 %", "under 0.1 %"]);
  });

  it("change where the decisions do (JCGM 106:2012 with 0.95 and 0.05)", () => {
    expect([0.951, 0.949, 0.051, 0.049].map(probabilityWords)).toEqual([
      "very likely",
      "likely",
      "unlikely",
      "very unlikely",
    ]);
  });

  it("tell contacts as a person would", () => {
    const text = (unit: "mm" | "in") => (value: number) =>
      withPlainSpaces(quantityText({ kind: "contactRate", value }, unit));
    expect([12.34, 1, 0.5, 1 / 8516, 1e-9, 0].map(text("mm"))).toEqual([
      "12.3 per km",
      "1 per km",
      "once in 2 km",
      "once in 8\u202f500 km",
      "less than once in a million km",
      "less than once in a million km",
    ]);
    // 1.609344 km a mile (NIST SP 811).
    expect([12.34, 1 / 1.609344, 0.5, 1 / 8516, 1e-9].map(text("in"))).toEqual([
      "19.9 per mile",
      "1 per mile",
      "once in 1.2 miles",
      "once in 5\u202f300 miles",
      "less than once in a million miles",
    ]);
  });

  it("tell the ladder of a check with its ranges, unladen and loaded", () => {
    const [left] = assessed(demoFitment("arm-fits")).corners;
    if (!left) throw new Error("no corner");
    const words = withPlainSpaces(ladderWords("left", ladderOf(left), "mm"));
    // Vectors: z_c 57.90, z_u 146.42, z_h 167.74, sag 7.00 mm.
    expect(words).toMatch(/contact after 57\.9 mm \(95 %: 5\d\.\d to 6\d\.\d mm\)/);
    expect(words).toContain("fully compressed after 146.4 mm");
    expect(words).toContain("shock closed after 167.7 mm");
    expect(words).toContain("Loaded, standing 7.0 mm lower: contact after 50.9 mm");
  });
});

describe.each(demoNames)("wheel force of %s", (name) => {
  const fitment = demoFitment(name);
  const [corner] = fitment.corners;
  const [left] = assessed(fitment).corners;
  if (!corner || !left) throw new Error("no corner");
  const outcome = wheelForceCurve(fitment, corner, left);
  if (!outcome.ok) throw new Error(outcome.fault.code);
  const curve = outcome.value;

  it("has as its area the energy that the stop takes: virtual work, ∫ F/R dz = ∫ F ds", () => {
    const kinematics = kinematicsOf(fitment.layout);
    const stop = stopCurve(fitment.stop);
    if (!kinematics.ok || !stop.ok) throw new Error("no curve");
    const standing = gapOf(fitment, corner);
    if (!standing.ok) throw new Error("no gap");
    const gap = standing.value;
    const pieces = 4000;
    const width = (curve.endMm - curve.contactMm) / pieces;
    const slopes = new Float64Array(3);
    let area = 0;
    for (let i = 0; i < pieces; i++) {
      kinematics.value.evaluate(curve.contactMm + (i + 0.5) * width, slopes);
      area += stop.value.force((slopes[0] ?? 0) - gap) * (slopes[1] ?? 0) * width;
    }
    expect(curve.stopJ).toBeGreaterThan(0);
    expect(Math.abs(curve.stopJ / (area / 1000) - 1)).toBeLessThan(1e-4);
  });

  it("is the spring's alone up to contact and never falls after it", () => {
    let before = 0;
    for (const { travelMm, springN, stopN } of curve.points) {
      if (travelMm < curve.contactMm - 1e-6) expect(stopN).toBe(0);
      expect((springN ?? 0) + stopN).toBeGreaterThanOrEqual(before - 1e-6);
      before = (springN ?? 0) + stopN;
    }
  });
});

describe("contacts by road", () => {
  it("meet the answer's own figures on the road of the use, and rise with roughness", () => {
    for (const name of demoNames) {
      const fitment = demoFitment(name);
      const used = { daily: "C", towing: "C", offroad: "D" }[fitment.use];
      for (const [index, corner] of assessed(fitment).corners.entries()) {
        const measured = fitment.corners[index];
        if (!measured) throw new Error("no corner");
        const contacts = contactsByRoad(fitment, measured);
        if (!contacts.ok) throw new Error(contacts.fault.code);
        const here = contacts.value.find(({ roadClass }) => roadClass === used);
        expect(here?.unladenPerKm).toBe(corner.contactsPerKm);
        expect(here?.ladenPerKm).toBe(corner.loadedContactsPerKm);
        const rates = contacts.value.map(({ ladenPerKm }) => ladenPerKm ?? Number.NaN);
        expect(rates).toEqual([...rates].sort((a, b) => a - b));
      }
    }
  });
});
