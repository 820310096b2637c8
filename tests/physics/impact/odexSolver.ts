import { createRequire } from "node:module";

/** As much of odex, by E. Hairer & G. Wanner and C. Smith, as the comparisons use. */
export interface OdexSolver {
  absoluteTolerance: number | number[];
  relativeTolerance: number | number[];
  maxStepSize: number;
  maxSteps: number;
  initialStepSize: number;
  denseOutput: boolean;
  grid(stepS: number, take: (t: number, y: number[]) => void): unknown;
  solve(
    derivative: (t: number, y: number[]) => number[],
    from: number,
    start: number[],
    to: number,
    output?: unknown,
  ): { y: number[]; outcome: number; nEval: number; nStep: number };
}

// Its types are TypeScript source that strict checking refuses, so it is loaded untyped.
const { Solver } = createRequire(import.meta.url)("odex") as {
  Solver: new (dimension: number) => OdexSolver;
};

export function odexSolver(dimension: number): OdexSolver {
  return new Solver(dimension);
}
