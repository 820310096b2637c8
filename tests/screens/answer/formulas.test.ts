import { describe, expect, it } from "vitest";
import type { Corner, CornerAssessment, Fitment, HardLimit } from "../../../src/physics/fitment.ts";
import { rulesOf } from "../../../src/physics/road/useRules.ts";
import { cornerContext } from "../../../src/physics/worked/cornerContext.ts";
import { lastValue, type WorkedFigure } from "../../../src/physics/worked/workedFigure.ts";
import { plain } from "../../../src/saying/plainNumber.ts";
import { said, worded } from "../../../src/saying/texts.ts";
import { inLetters, inNumbers } from "../../../src/saying/workedStep.ts";
import { type Figure, figuresOf } from "../../../src/screens/answer/formulas/figures.ts";
import {
  formulaQuantity,
  formulaSentence,
} from "../../../src/screens/answer/formulas/formulaText.ts";
import { demoNames as everyDemo } from "../../support/demoRecords.ts";
import { assessed, demoFitment } from "./demoChecks.ts";
import { evaluatedStep, isOff, noticesOperators } from "./workedSteps.ts";

/** Steps in a formula may round differently from the calculation's own order of operations. */
const agreement = 1e-9;

interface Worked {
  readonly figure: Figure;
  readonly corner: CornerAssessment;
  /** Null: a word is shown. */
  readonly shown: number | null;
  readonly worked: WorkedFigure | undefined;
}

function everyFigure(fitment: Fitment): Worked[] {
  const found: Worked[] = [];
  for (const corner of assessed(fitment).corners) {
    const context = cornerContext(fitment, corner);
    if (!context) throw new Error("no context");
    for (const figure of figuresOf(rulesOf(fitment.use, fitment.rules), "mm")) {
      const value = figure.value(corner);
      if (value === null) continue;
      const shown = typeof value === "string" ? null : value.value;
      found.push({ figure, corner, shown, worked: figure.worked(context) });
    }
  }
  return found;
}

const figuresByDemo = new Map<string, readonly Worked[]>();

function figuresOfDemo(name: string, sides: "alike" | "apart" = "alike"): readonly Worked[] {
  const fitment = demoFitment(name);
  const known = `${name} ${sides}`;
  const found =
    figuresByDemo.get(known) ??
    everyFigure(sides === "alike" ? fitment : withOwnRightSide(fitment));
  figuresByDemo.set(known, found);
  return found;
}

function expectAgreement(found: readonly Worked[]): void {
  for (const { figure, corner, shown, worked } of found) {
    if (shown === null) continue;
    const last = worked && lastValue(worked);
    expect(last, `${corner.side} ${figure.id}`).toBeDefined();
    const off = Math.abs((last ?? Number.NaN) - shown) / Math.max(1, Math.abs(shown));
    expect(off, `${corner.side} ${figure.id}`).toBeLessThanOrEqual(agreement);
  }
}

/** A clearance at the wheel that closes by less than the wheel rises. */
function leaning(limit: HardLimit): HardLimit {
  return limit.at === "wheel" ? { ...limit, perWheel: 0.9 } : limit;
}

/** The right side with readings of its own, as far off as two sides of one vehicle may be. */
function withOwnRightSide(fitment: Fitment): Fitment {
  const geometry = Object.fromEntries(
    Object.entries(fitment.layout.readings).map(([name, reading]) => [
      name,
      { values: reading.values.map((value: number) => 1.02 * value + 0.3), tol: reading.tol },
    ]),
  );
  return {
    ...fitment,
    corners: fitment.corners.map(
      (corner): Corner =>
        corner.side === "right"
          ? { ...corner, geometry, limits: corner.limits.map(leaning) }
          : corner,
    ),
  };
}

describe.each(everyDemo)("the working of %s", (name) => {
  it("ends in the figure shown, for every figure", () => {
    const found = figuresOfDemo(name);
    expect(found.length).toBeGreaterThan(15);
    expectAgreement(found);
  });

  it("ends in it too where the right side was measured apart and the angles are not the arm's", () => {
    expectAgreement(figuresOfDemo(name, "apart"));
  });

  it("comes to its result by the numbers written in it, every step, the last as well", () => {
    let evaluated = 0;
    for (const { figure, corner, worked } of figuresOfDemo(name)) {
      for (const step of worked?.steps ?? []) {
        const found = evaluatedStep(step);
        if (found === null) {
          expect(["impact", "doubt"], `${figure.id}: ${inLetters(step)}`).toContain(figure.group);
          continue;
        }
        evaluated += 1;
        expect(
          isOff(found, step),
          `${corner.side} ${figure.id}: ${inLetters(step)} = ${found}`,
        ).toBe(false);
      }
    }
    expect(evaluated).toBeGreaterThan(60);
  });

  it("calls a stop progressive where the last step says so", () => {
    const found = figuresOfDemo(name).filter(({ figure }) => figure.id === "progressive");
    expect(found.length).toBeGreaterThan(0);
    for (const { corner, worked } of found) {
      expect((worked && lastValue(worked)) ?? Number.NaN, corner.side).toSatisfy(
        (ratio: number) => ratio >= 2 === corner.progressive,
      );
    }
  });

  it("shows beside what was found by search that it is what was looked for", () => {
    for (const { figure, corner, worked } of figuresOfDemo(name)) {
      const steps = worked?.steps ?? [];
      if (!steps.some((step) => /z is \(z_h − r\), found by search/.test(inLetters(step))))
        continue;
      const asked = steps.find((step) => inLetters(step) === "z_h − r")?.result.value ?? Number.NaN;
      const reached = steps.filter((step) => inLetters(step).startsWith("z = "));
      const nearest = Math.min(...reached.map(({ result }) => Math.abs(result.value - asked)));
      expect(nearest, `${corner.side} ${figure.id}`).toBeLessThan(1e-6);
    }
  });

  it.each(["mm", "in"] as const)("reads as finite numbers in %s", (unit) => {
    for (const { figure, worked } of figuresOfDemo(name)) {
      for (const step of worked?.steps ?? []) {
        const text = `${formulaSentence(inNumbers(step), unit)} ${formulaQuantity(step.result, unit)}`;
        expect(text, figure.id).not.toMatch(/NaN|Infinity|unknown|undefined/);
        expect(inLetters(step).length, figure.id).toBeGreaterThan(2);
      }
      expect(said(worked?.source ?? "").length, figure.id).toBeGreaterThan(5);
    }
  });

  it("names in its symbols every letter with a value and an origin", () => {
    for (const { figure, worked } of figuresOfDemo(name)) {
      for (const { symbol, meaning, value, origin } of worked?.symbols ?? []) {
        expect(symbol && said(meaning) && formulaSentence(origin, "mm"), figure.id).toBeTruthy();
        for (const part of worded(value)) {
          if (typeof part !== "string") expect(Number.isFinite(part.value), figure.id).toBe(true);
        }
      }
    }
  });
});

describe("a wrong operator", () => {
  it("would be noticed, whichever it is and in whichever formula", () => {
    const noticed = new Map<string, boolean[]>();
    for (const name of everyDemo) {
      const both = [...figuresOfDemo(name), ...figuresOfDemo(name, "apart")];
      for (const { worked } of both) {
        for (const step of worked?.steps ?? []) {
          const formula = inLetters(step);
          const before = noticed.get(formula);
          if (before?.every(Boolean)) continue;
          const now = noticesOperators(step);
          noticed.set(
            formula,
            now.map((isNoticed, place) => isNoticed || !!before?.[place]),
          );
        }
      }
    }
    const unnoticed = [...noticed].filter(([, places]) => !places.every(Boolean));
    expect(noticed.size).toBeGreaterThan(60);
    expect(unnoticed.map(([formula, places]) => `${formula}: ${places}`)).toEqual([]);
  });
});

describe("a carrying stop that touches under load", () => {
  const fitment = demoFitment("damper-shaft");
  const heavy: Fitment = { ...fitment, ride: { ...fitment.ride, payloadPerCornerKg: 220 } };

  it("has a sag whose working counts the stop's force", () => {
    const found = everyFigure(heavy);
    const sag = found.find(({ figure }) => figure.id === "loadedSag");
    expect(sag?.worked?.steps.map(inLetters)).toContain("F_stop·ds/dz at that sag");
    expectAgreement(found);
    const [load, stop] = sag?.worked?.steps.map(({ result }) => result.value) ?? [];
    const spring = (fitment.ride?.wheelRateNPerMm ?? 0) * (sag?.shown ?? 0);
    expect(spring + (stop ?? 0)).toBeCloseTo(load ?? 0, 6);
  });
});

describe("an undamped impact", () => {
  it("has force and energy that the static curve gives at the greatest compression", () => {
    const found = everyFigure(demoFitment("arm-fits"));
    for (const [part, kept] of [
      ["peakStopForceN", 1e-3],
      ["energyInJ", 1e-3],
    ] as const) {
      const one = found.find(({ figure }) => figure.id === `event1.${part}`);
      const check = one?.worked?.steps.at(-2);
      expect(check && inLetters(check)).toMatch(/^check:/);
      expect(Math.abs((check?.result.value ?? 0) / (one?.shown ?? 1) - 1)).toBeLessThan(kept);
    }
  });
});

describe("a number inside a formula", () => {
  it.each([
    [0, "0"],
    [0.1, "0.1"],
    [2700, "2700"],
    [16.6666667, "16.667"],
    [9.131191580537418e-7, "9.131 · 10⁻⁷"],
    [2.5e7, "2.5 · 10⁷"],
  ])("%d is written %s", (value, text) => {
    expect(plain(value)).toBe(text);
  });
});

/** The same with every reading said to be the library's. */
function ofTheLibrary<Value>(value: Value): Value {
  if (Array.isArray(value)) return value.map(ofTheLibrary) as Value;
  if (typeof value !== "object" || value === null) return value;
  const parts = Object.entries(value).map(([name, part]) => [name, ofTheLibrary(part)] as const);
  const isReading = "values" in value && "tol" in value;
  return { ...Object.fromEntries(parts), ...(isReading && { source: "pack" }) } as Value;
}

it.each(everyDemo)("no reading of the library is called measured: %s", (name) => {
  const told = everyFigure(ofTheLibrary(demoFitment(name))).flatMap(
    ({ worked }) => worked?.symbols.map(({ origin }) => formulaSentence(origin, "mm")) ?? [],
  );
  expect(told.filter((origin) => /(?<!not )measured/.test(origin))).toEqual([]);
  expect(told).toContain("from the library");
});
