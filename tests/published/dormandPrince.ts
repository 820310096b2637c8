import { DormandPrince, type OdeSystem } from "../../src/physics/impact/dormandPrince.ts";
import { publishedSource } from "./support/published.ts";

/*
 * Hairer, Nørsett & Wanner, Solving Ordinary Differential Equations I, II.5 and II.6 (from memory): order
 * 5; the continuous extension is of order 4, an error of the fifth power within a step.
 * y'' = −y, y(0) = 1, y'(0) = 0: cos t; the quadrature is of y².
 */
export const oscillator: OdeSystem = {
  stateCount: 2,
  rowLength: 3,
  derivative(_, y, rows, offset) {
    const [position = 0, speed = 0] = y;
    rows[offset] = speed;
    rows[offset + 1] = -position;
    rows[offset + 2] = position * position;
  },
};

interface Errors {
  readonly state: number;
  readonly quadrature: number;
  readonly dense: number;
}

/** Errors after time 2 in equal steps: of the state, of the quadrature, and within the steps. */
function errorsOf(steps: number): Errors {
  const solver = new DormandPrince(oscillator);
  const between = new Float64Array(2);
  solver.state[0] = 1;
  solver.restart();
  let quadrature = 0;
  let dense = 0;
  for (let step = 0; step < steps; step++) {
    solver.attempt(2 / steps);
    solver.prepareInterpolation();
    for (const theta of [0.2, 0.5, 0.9]) {
      solver.interpolate(theta, between);
      const exact = Math.cos(solver.time + theta * solver.size);
      dense = Math.max(dense, Math.abs((between[0] as number) - exact));
    }
    quadrature += solver.quadrature(2);
    solver.accept();
  }
  return {
    state: Math.hypot(
      (solver.state[0] as number) - Math.cos(2),
      (solver.state[1] as number) + Math.sin(2),
    ),
    quadrature: Math.abs(quadrature - (1 + Math.sin(4) / 4)),
    dense,
  };
}

const order = (name: keyof Errors) => Math.log2(errorsOf(20)[name] / errorsOf(40)[name]);

export const dormandPrince = publishedSource(
  "Hairer, Nørsett & Wanner, Solving Ordinary Differential Equations I, II.5, II.6",
  "from memory",
  (published) => {
    published("order of the state, from 20 and 40 steps", 5, () => order("state"), 0.15);
    published("order of the quadrature, 5 or more", "so", () =>
      order("quadrature") > 4.9 ? "so" : "not so",
    );
    published("power of the error within a step", 5, () => order("dense"), 0.15);
    published("error of the state after 2 s in 40 steps", 0, () => errorsOf(40).state, 1e-9);
  },
);
