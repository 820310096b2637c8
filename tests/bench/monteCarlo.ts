import * as mathjsExports from "mathjs";
import type { CornerBudget } from "../../src/physics/budget/travelBudget.ts";
import { travelBudget } from "../../src/physics/budget/travelBudget.ts";
import { drawCorners } from "../../src/physics/uncertainty/cornerDraws.ts";
import { SharedDraws } from "../../src/physics/uncertainty/sharedDraws.ts";
import { demoFitment, unwrapped } from "../physics/demoFitments.ts";
import { millisecondsPer, printTable } from "./clock.ts";

const { compile, quantileSeq } = mathjsExports as unknown as {
  compile(text: string): { evaluate(scope: Record<string, number>): unknown };
  quantileSeq(values: number[], shares: number[]): number[];
};

const samples = 20_000;
/** Draws of one round of mathjs; its time is scaled to the samples. */
const few = 4000;
const reserveWanted = 5;

/** Section 3 of the model for an arm, as a person would write it down for mathjs. */
const formulas = `
  c = t0 + lean;
  zc = m * k * b * (sin(t0) - sin(t0 - c + asin(sin(c) - g / a)));
  zu = m * k * b * (sin(t0) - sin(t0 - c + asin(sin(c) - (g + du) / a)));
  zh = min(tyre, damper / perWheel);
  reserve = zh - zu;
  spacer = g + du - a * (sin(c) - sin(c - t0 + asin(sin(t0) - (zh - wanted) / (m * k * b))));
  taller = spacer / (1 - du / h)`;

/** Whose value each name of those formulas has. */
const idOf = {
  a: "pivotToStop",
  b: "pivotToOuter",
  t0: "armAngle",
  lean: "stopLean",
  k: "wheelPerOuter",
  m: "linkage",
  g: "left.gap",
  h: "stop.freeHeight",
  du: "stop.usableCompressionMm",
  tyre: "left.limits.0",
  damper: "left.limits.1",
} as const;
const names = Object.keys(idOf) as readonly (keyof typeof idOf)[];
const angles: readonly string[] = ["t0", "lean"];
const figureNames = ["zc", "zu", "zh", "reserve", "spacer", "taller"] as const;
const radians = Math.PI / 180;

/** One corner of an arm: ours, and the same formulas compiled by mathjs. */
export function compareMonteCarlo(): void {
  const fitment = demoFitment("arm-fits");
  const [corner] = fitment.corners;
  if (corner === undefined) throw new Error("no corner");
  const budget = unwrapped(travelBudget(fitment, corner, reserveWanted));
  const constants = {
    wanted: reserveWanted,
    perWheel: corner.limits[1]?.perWheel ?? 1,
  };
  const ourWhole = () =>
    drawCorners([{ corner: budget, wantedTravels: [] }], new SharedDraws(samples), reserveWanted);
  const drawn = drawnReadings(budget);
  const placeOf = placesOf(budget);
  const alone = millisecondsPer(ourFormulas(budget, drawn), 1500);
  const whole = millisecondsPer(ourWhole, 1500);
  const theirAlone =
    millisecondsPer(mathjsFormulas(drawn, placeOf, constants, few), 3000) * (samples / few);
  const theirWhole = millisecondsPer(mathjsWhole(budget, constants, few), 3000) * (samples / few);
  printTable(
    `Monte Carlo of one corner, section 3, ${samples} draws`,
    ["", "ours, ms", "mathjs, ms", "mathjs / ours"],
    [
      ["formulas alone, draws given", alone, theirAlone, theirAlone / alone],
      [
        "the whole: random numbers, formulas, 95 % intervals",
        whole,
        theirWhole,
        theirWhole / whole,
      ],
    ],
  );
  const reserves = mathjsFormulas(drawn, placeOf, constants, samples)();
  const [low, high] = ourWhole()[0]?.intervals.reserve ?? [Number.NaN, Number.NaN];
  const [theirLow = Number.NaN, theirHigh = Number.NaN] = quantileSeq(reserves, [0.025, 0.975]);
  const apart = Math.max(Math.abs(theirLow - low), Math.abs(theirHigh - high));
  console.log(
    `On the same draws the reserve's 95 % intervals lie ${apart.toExponential(1)} mm apart, of ${(high - low).toFixed(1)} mm.`,
  );
}

/** Where each name's value stands among the readings of one draw, and how many readings those are. */
function placesOf({ places: { all } }: CornerBudget): { of: readonly number[]; count: number } {
  const of = names.map((name) => all.findIndex(({ id }) => id === idOf[name]));
  const left = all.filter((_, place) => !of.includes(place));
  if (of.includes(-1) || left.length > 0) throw new Error("The formulas are of other readings.");
  return { of, count: all.length };
}

/** The readings of every draw, one draw after the other, angles in degrees. */
function drawnReadings(budget: CornerBudget): Float64Array {
  const draws = new SharedDraws(samples);
  const places = budget.places.all.map(({ drawn }) => draws.of(drawn));
  return Float64Array.from(
    { length: samples * places.length },
    (_, at) => places[at % places.length]?.at(Math.floor(at / places.length)) ?? 0,
  );
}

function ourFormulas(budget: CornerBudget, drawn: Float64Array): () => void {
  const { model } = budget;
  const count = budget.places.all.length;
  const figures = new Float64Array(figureNames.length);
  return () => {
    for (let draw = 0; draw < samples; draw++) model.evaluate(drawn, figures, count * draw);
  };
}

/** Evaluates the formulas on given draws and returns the reserves. */
function mathjsFormulas(
  drawn: Float64Array,
  placeOf: ReturnType<typeof placesOf>,
  constants: Record<string, number>,
  count: number,
): () => number[] {
  const code = compile(formulas);
  const scope = { ...constants };
  const scales = names.map((name) => (angles.includes(name) ? radians : 1));
  return () => {
    const reserves: number[] = [];
    for (let draw = 0; draw < count; draw++) {
      for (const [index, name] of names.entries()) {
        const at = draw * placeOf.count + (placeOf.of[index] as number);
        scope[name] = (scales[index] as number) * (drawn[at] as number);
      }
      code.evaluate(scope);
      reserves.push(scope.reserve as number);
    }
    return reserves;
  };
}

/** The same with mathjs's random numbers (rectangular parts only) and its quantiles. */
function mathjsWhole(
  budget: CornerBudget,
  constants: Record<string, number>,
  count: number,
): () => void {
  const { of } = placesOf(budget);
  const lines = names.map((name, index) => {
    const drawn = budget.places.all[of[index] as number]?.drawn;
    const scale = angles.includes(name) ? " * pi / 180" : "";
    const { mean = 0, halfWidth = 0 } = drawn ?? {};
    return `${name} = (${mean} + ${halfWidth} * random(-1, 1))${scale};`;
  });
  const code = compile(lines.join("\n") + formulas);
  const scope = { ...constants };
  return () => {
    const figures = figureNames.map((): number[] => []);
    for (let draw = 0; draw < count; draw++) {
      code.evaluate(scope);
      for (const [place, name] of figureNames.entries()) {
        figures[place]?.push(scope[name] as number);
      }
    }
    for (const values of figures) quantileSeq(values, [0.025, 0.975]);
  };
}
