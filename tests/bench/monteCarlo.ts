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
  c = p0 + lean;
  zc = b * (sin(t0) - sin(t0 - c + asin(sin(c) - g / a)));
  zu = b * (sin(t0) - sin(t0 - c + asin(sin(c) - (g + du) / a)));
  zh = min(tyre, damper / perWheel);
  reserve = zh - zu;
  spacer = g + du - a * (sin(c) - sin(c - t0 + asin(sin(t0) - (zh - wanted) / b)));
  taller = spacer / (1 - du / h)`;

/** Names of the places of an arm's corner in those formulas, in the order of the readings. */
const names = ["a", "b", "t0", "p0", "lean", "g", "h", "tyre", "damper"] as const;
const angles: readonly string[] = ["t0", "p0", "lean"];
const figureNames = ["zc", "zu", "zh", "reserve", "spacer", "taller"] as const;
const radians = Math.PI / 180;

/** One corner of an arm: ours, and the same formulas compiled by mathjs. */
export function compareMonteCarlo(): void {
  const fitment = demoFitment("arm-fits");
  const [corner] = fitment.corners;
  if (corner === undefined) throw new Error("no corner");
  const budget = unwrapped(travelBudget(fitment, corner, reserveWanted));
  const constants = {
    du: fitment.stop.usableCompressionMm,
    wanted: reserveWanted,
    perWheel: corner.limits[1]?.perWheel ?? 1,
  };
  const ourWhole = () =>
    drawCorners([{ corner: budget, wantedTravels: [] }], new SharedDraws(samples), reserveWanted);
  const drawn = drawnReadings(budget);
  const alone = millisecondsPer(ourFormulas(budget, drawn), 1500);
  const whole = millisecondsPer(ourWhole, 1500);
  const theirAlone = millisecondsPer(mathjsFormulas(drawn, constants, few), 3000) * (samples / few);
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
  const reserves = mathjsFormulas(drawn, constants, samples)();
  const [low, high] = ourWhole()[0]?.intervals.reserve ?? [Number.NaN, Number.NaN];
  const [theirLow = Number.NaN, theirHigh = Number.NaN] = quantileSeq(reserves, [0.025, 0.975]);
  const apart = Math.max(Math.abs(theirLow - low), Math.abs(theirHigh - high));
  console.log(
    `On the same draws the reserve's 95 % intervals lie ${apart.toExponential(1)} mm apart, of ${(high - low).toFixed(1)} mm.`,
  );
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
  constants: Record<string, number>,
  count: number,
): () => number[] {
  const code = compile(formulas);
  const scope = { ...constants };
  const scales = names.map((name) => (angles.includes(name) ? radians : 1));
  return () => {
    const reserves: number[] = [];
    for (let draw = 0; draw < count; draw++) {
      for (const [place, name] of names.entries()) {
        scope[name] = (scales[place] as number) * (drawn[draw * names.length + place] as number);
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
  const lines = names.map((name, place) => {
    const drawn = budget.places.all[place]?.drawn;
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
