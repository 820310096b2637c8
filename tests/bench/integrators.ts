import * as mathjsExports from "mathjs";
import type { DesignEvent } from "../../src/physics/fitment.ts";
import { simulateImpact } from "../../src/physics/impact/impact.ts";
import type { ImpactSetup } from "../../src/physics/impact/impactSetup.ts";
import { rulesOf } from "../../src/physics/road/useRules.ts";
import { demoCorners, loadedSetup } from "../physics/demoFitments.ts";
import { odexSolver } from "../physics/impact/odexSolver.ts";
import { plainQuarterCar } from "../physics/impact/plainQuarterCar.ts";
import { millisecondsPer, printTable, processorMs } from "./clock.ts";

/** What the solvers are compared by: energy into and out of the stop, J. */
type Energies = readonly [into: number, outOf: number];
type Solve = (setup: ImpactSetup, event: DesignEvent, tolerance: number) => Energies;

interface EventCase {
  readonly setup: ImpactSetup;
  readonly event: DesignEvent;
}

const ours: Solve = (setup, event, tolerance) => {
  const run = simulateImpact(setup, event, { tolerance, mostSteps: 1e6 });
  if (!run.ok) throw new Error(run.fault.code);
  return [run.value.result.energyInJ, run.value.result.energyOutJ];
};

const odex: Solve = (setup, event, tolerance) => {
  const car = plainQuarterCar(setup, event);
  const solver = odexSolver(6);
  solver.absoluteTolerance = tolerance;
  solver.relativeTolerance = tolerance;
  solver.maxSteps = 1e6;
  const { y } = solver.solve(car.derivative, 0, car.start, car.endS);
  return [y[4] as number, y[5] as number];
};

// Its types do not list solveODE.
const { solveODE } = mathjsExports as unknown as {
  solveODE(
    derivative: (t: number, y: number[]) => number[],
    span: readonly number[],
    start: readonly number[],
    options: object,
  ): { y: number[][] };
};

const mathjs: Solve = (setup, event, tolerance) => {
  const car = plainQuarterCar(setup, event);
  const options = { method: "RK45", tol: tolerance, firstStep: 1e-4, maxIter: 5000 };
  const last = solveODE(car.derivative, [0, car.endS], car.start, options).y.at(-1) ?? [];
  return [last[4] as number, last[5] as number];
};

/** A solver at one tolerance: the worst error over the events and the time an event takes. */
interface Effort {
  readonly solver: string;
  readonly error: number;
  ms: number;
}

/** Processor time spent on one comparison, ms. */
const spendMs = 7000;
const fewestPasses = 3;

/** All solvers at all tolerances, turn by turn, so that a busy machine slows all alike; least times. */
function efforts(
  cases: readonly EventCase[],
  references: readonly Energies[],
  solvers: readonly Contender[],
): Effort[] {
  const entries = solvers.flatMap(({ name, solve, tolerances }) =>
    tolerances.map((tolerance) => {
      let error = 0;
      for (const [index, { setup, event }] of cases.entries()) {
        const [into, outOf] = solve(setup, event, tolerance);
        const [wantedIn, wantedOut] = references[index] as Energies;
        error = Math.max(
          error,
          Math.abs(into - wantedIn) / wantedIn,
          Math.abs(outOf - wantedOut) / wantedIn,
        );
      }
      const work = () => {
        for (const { setup, event } of cases) solve(setup, event, tolerance);
      };
      return { work, effort: { solver: name, error, ms: Number.POSITIVE_INFINITY } };
    }),
  );
  const end = processorMs() + spendMs;
  for (let pass = 0; pass < fewestPasses || processorMs() < end; pass++) {
    for (const { work, effort } of entries) {
      effort.ms = Math.min(effort.ms, millisecondsPer(work, 0, 0) / cases.length);
    }
  }
  return entries.map(({ effort }) => effort);
}

/** Time at which a solver is within an error: the least effort that reaches it. */
function timeWithin(list: readonly Effort[], error: number): number {
  return Math.min(...list.filter((effort) => effort.error <= error).map(({ ms }) => ms));
}

interface Contender {
  readonly name: string;
  readonly solve: Solve;
  readonly tolerances: readonly number[];
}

/** 10^−from … 10^−to. */
function tolerances(from: number, to: number, perDecade: number): readonly number[] {
  return Array.from(
    { length: (to - from) * perDecade + 1 },
    (_, at) => 10 ** -(from + at / perDecade),
  );
}

const contenders: readonly Contender[] = [
  { name: "ours", solve: ours, tolerances: tolerances(3, 7, 4) },
  { name: "odex", solve: odex, tolerances: tolerances(3, 8, 2) },
  { name: "mathjs", solve: mathjs, tolerances: tolerances(1, 4, 1) },
];

function compare(title: string, cases: readonly EventCase[], solvers: readonly Contender[]): void {
  const references = cases.map(({ setup, event }) => ours(setup, event, 1e-11));
  const finest = cases.map(({ setup, event }) => odex(setup, event, 1e-12));
  const apart = Math.max(
    ...references.map(([into], index) => Math.abs((finest[index]?.[0] ?? 0) / into - 1)),
  );
  const all = efforts(cases, references, solvers);
  const lists = solvers.map(({ name }) => all.filter(({ solver }) => solver === name));
  const rows = [1e-2, 1e-3, 1e-4, 1e-5].map((error) => {
    const [mine = Number.NaN, ...theirs] = lists.map((list) => timeWithin(list, error));
    const cells = [mine, ...theirs, ...theirs.map((time) => time / mine)];
    return [
      error.toExponential(0),
      ...cells.map((cell) => (Number.isFinite(cell) ? cell : "not reached")),
    ];
  });
  const names = solvers.map(({ name }) => name);
  printTable(
    title,
    [
      "error",
      ...names.map((name) => `${name}, ms`),
      ...names.slice(1).map((name) => `${name} / ours`),
    ],
    rows,
  );
  console.log(
    `Reference: ours at 1e-11; odex at 1e-12 differs from it by ${apart.toExponential(1)} at most.`,
  );
}

/** One event at equal error: the worst relative error of the energies into and out of the stop. */
export function compareIntegrators(): void {
  const cases = demoCorners.map(({ name, fitment, corner }) => {
    const setup = loadedSetup(fitment, corner);
    return { name, events: rulesOf(fitment.use).events.map((event) => ({ setup, event })) };
  });
  const all = cases.flatMap(({ events }) => events);
  const arm = cases.filter(({ name }) => name.startsWith("arm-fits"));
  compare(`${all.length} demo events, at equal error: time an event`, all, contenders.slice(0, 2));
  compare(
    "The arm-fits events, at equal error: time an event (mathjs cannot end them all)",
    arm.flatMap(({ events }) => events),
    contenders,
  );
}
