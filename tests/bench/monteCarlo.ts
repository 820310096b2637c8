import { compile } from "mathjs";
import { travelBudget } from "../../src/physics/budget/travelBudget.ts";
import { drawCorners, SharedDraws } from "../../src/physics/uncertainty/cornerDraws.ts";
import { demoFitment, unwrapped } from "../physics/demoFitments.ts";
import { millisecondsPer, printTable } from "./clock.ts";

const reserveWanted = 5;

/** Section 3 of the model for an arm, as a person would write it down for mathjs. */
const formulas = compile(`
  c = p0 + lean;
  zc = b * (sin(t0) - sin(t0 - c + asin(sin(c) - g / a)));
  zu = b * (sin(t0) - sin(t0 - c + asin(sin(c) - (g + du) / a)));
  zh = min(tyre, damper / perWheel);
  reserve = zh - zu;
  spacer = g + du - a * (sin(c) - sin(c - t0 + asin(sin(t0) - (zh - wanted) / b)));
  taller = spacer / (1 - du / h)
`);

/** Seconds per draw of one corner: ours with its random numbers and percentiles, mathjs without. */
export function compareMonteCarlo(): void {
  const fitment = demoFitment("arm-fits");
  const [corner] = fitment.corners;
  if (corner === undefined) throw new Error("no corner");
  const budget = unwrapped(travelBudget(fitment, corner, reserveWanted));
  const samples = 40_000;
  const draw = () => {
    const draws = new SharedDraws(samples);
    return drawCorners([{ corner: budget, wantedTravels: [] }], draws, reserveWanted);
  };
  const ours = millisecondsPer(() => draw(), 300, 3);

  const draws = new SharedDraws(samples);
  const columns = budget.places.map(({ drawn }) =>
    drawn === null ? new Float64Array(samples) : draws.column(drawn),
  );
  const radians = Math.PI / 180;
  const scope: Record<string, number> = {
    du: fitment.stop.usableCompressionMm,
    wanted: reserveWanted,
    perWheel: corner.limits[1]?.perWheel ?? 1,
  };
  const at = (place: number, index: number) => columns[place]?.[index] ?? Number.NaN;
  const reserves = new Float64Array(samples);
  const evaluate = (index: number) => {
    scope.a = at(0, index);
    scope.b = at(1, index);
    scope.t0 = radians * at(2, index);
    scope.p0 = radians * at(3, index);
    scope.lean = radians * at(4, index);
    scope.g = at(5, index);
    scope.h = at(6, index);
    scope.tyre = at(7, index);
    scope.damper = at(8, index);
    formulas.evaluate(scope);
    reserves[index] = scope.reserve as number;
  };
  const few = 2000;
  const theirs =
    millisecondsPer(
      () => {
        for (let index = 0; index < few; index++) evaluate(index);
      },
      300,
      3,
    ) *
    (samples / few);

  for (let index = 0; index < samples; index++) evaluate(index);
  reserves.sort();
  const [low, high] = draw()[0]?.intervals.reserve ?? [Number.NaN, Number.NaN];
  const apart = Math.max(
    Math.abs((reserves[Math.round(0.025 * samples)] ?? Number.NaN) - low),
    Math.abs((reserves[Math.round(0.975 * samples)] ?? Number.NaN) - high),
  );
  printTable(
    `Monte Carlo of one corner, ${samples} draws (ours with random numbers and percentiles, mathjs without)`,
    ["", "ms", "draws per s"],
    [
      ["ours", ours, (1000 * samples) / ours],
      ["mathjs, compiled", theirs, (1000 * samples) / theirs],
      ["mathjs / ours", theirs / ours, ""],
    ],
  );
  console.log(
    `The reserve's 95 % intervals lie ${apart.toExponential(1)} mm apart, of ${(high - low).toFixed(1)} mm.`,
  );
}
