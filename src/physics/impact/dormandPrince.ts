/**
 * One-step solver for dy/dt = f(t, y): the explicit Runge–Kutta pair 5(4) of Dormand and Prince, with
 * its fourth-order continuous extension. The caller decides on step size and acceptance.
 *
 * Besides the state, a system may have quadratures, integrals that do not feed back: they are summed
 * with the fifth-order weights and need no stage states. All arrays are made once; a step allocates
 * nothing.
 *
 * Source: Dormand & Prince, J. Comput. Appl. Math. 6 (1980) 19; continuous extension and step size
 * control as in Hairer, Nørsett & Wanner, Solving Ordinary Differential Equations I, II.4–II.6.
 */
export interface OdeSystem {
  /** Number of state components. */
  readonly stateCount: number;
  /** Length of a row: state derivatives, then integrands of the quadratures, then what else is kept. */
  readonly rowLength: number;
  /** Writes f(t, y) and the integrands into `rows` from `offset` on. */
  derivative(t: number, y: Float64Array, rows: Float64Array, offset: number): void;
}

const stageCount = 7;
/** Times of the stages as shares of the step. */
const nodes = [0, 1 / 5, 3 / 10, 4 / 5, 8 / 9, 1, 1] as const;
/** Lower triangle, row by row; the last row holds the fifth-order weights. */
const couplings = Float64Array.of(
  ...[1 / 5],
  ...[3 / 40, 9 / 40],
  ...[44 / 45, -56 / 15, 32 / 9],
  ...[19372 / 6561, -25360 / 2187, 64448 / 6561, -212 / 729],
  ...[9017 / 3168, -355 / 33, 46732 / 5247, 49 / 176, -5103 / 18656],
  ...[35 / 384, 0, 500 / 1113, 125 / 192, -2187 / 6784, 11 / 84],
);
const weights = [35 / 384, 0, 500 / 1113, 125 / 192, -2187 / 6784, 11 / 84, 0] as const;
/** Fifth- less fourth-order weights. */
const errorWeights = [
  71 / 57600,
  0,
  -71 / 16695,
  71 / 1920,
  -17253 / 339200,
  22 / 525,
  -1 / 40,
] as const;
const denseWeights = [
  -12715105075 / 11282082432,
  0,
  87487479700 / 32700410799,
  -10690763975 / 1880347072,
  701980252875 / 199316789632,
  -1453857185 / 822651844,
  69997945 / 29380423,
] as const;

export class DormandPrince {
  readonly #system: OdeSystem;
  /** State at the start of the step. */
  readonly state: Float64Array;
  /** State at the end of the step tried last. */
  readonly next: Float64Array;
  /** Rows of the seven stages; the first belongs to the start, the last to the end of the step. */
  readonly rows: Float64Array;
  readonly #stage: Float64Array;
  readonly #dense: Float64Array;
  /** Time at the start of the step. */
  time = 0;
  /** Size of the step tried last. */
  size = 0;

  constructor(system: OdeSystem) {
    this.#system = system;
    this.state = new Float64Array(system.stateCount);
    this.next = new Float64Array(system.stateCount);
    this.#stage = new Float64Array(system.stateCount);
    this.rows = new Float64Array(stageCount * system.rowLength);
    this.#dense = new Float64Array(4 * system.stateCount);
  }

  /** Evaluates the first stage; to be called at the start and whenever the system has changed. */
  restart(): void {
    this.#system.derivative(this.time, this.state, this.rows, 0);
  }

  /** Tries a step of `size` from the present time and state. */
  attempt(size: number): void {
    const { stateCount, rowLength } = this.#system;
    const { rows, state, next } = this;
    const stage = this.#stage;
    this.size = size;
    let coupling = 0;
    for (let s = 1; s < stageCount; s++) {
      const target = s === stageCount - 1 ? next : stage;
      for (let i = 0; i < stateCount; i++) {
        let sum = 0;
        for (let r = 0; r < s; r++) {
          sum += (couplings[coupling + r] as number) * (rows[r * rowLength + i] as number);
        }
        target[i] = (state[i] as number) + size * sum;
      }
      coupling += s;
      this.#system.derivative(this.time + (nodes[s] as number) * size, target, rows, s * rowLength);
    }
  }

  /** Root mean square of the estimated error, each component over its allowed error. */
  error(allowed: Float64Array, relative: number): number {
    const { stateCount, rowLength } = this.#system;
    let sum = 0;
    for (let i = 0; i < stateCount; i++) {
      let estimate = 0;
      for (let r = 0; r < stageCount; r++) {
        estimate += (errorWeights[r] as number) * (this.rows[r * rowLength + i] as number);
      }
      const size = Math.max(Math.abs(this.state[i] as number), Math.abs(this.next[i] as number));
      const share = (this.size * estimate) / ((allowed[i] as number) + relative * size);
      sum += share * share;
    }
    return Math.sqrt(sum / stateCount);
  }

  /** Integral over the step tried last of the integrand in column `column` of the rows. */
  quadrature(column: number): number {
    const { rowLength } = this.#system;
    let sum = 0;
    for (let r = 0; r < stageCount - 1; r++) {
      sum += (weights[r] as number) * (this.rows[r * rowLength + column] as number);
    }
    return this.size * sum;
  }

  /** Prepares `interpolate` for the step tried last. */
  prepareInterpolation(): void {
    const { stateCount, rowLength } = this.#system;
    const { rows, state, next } = this;
    const dense = this.#dense;
    const size = this.size;
    for (let i = 0; i < stateCount; i++) {
      const difference = (next[i] as number) - (state[i] as number);
      const bend = size * (rows[i] as number) - difference;
      let fourth = 0;
      for (let r = 0; r < stageCount; r++) {
        fourth += (denseWeights[r] as number) * (rows[r * rowLength + i] as number);
      }
      dense[4 * i] = difference;
      dense[4 * i + 1] = bend;
      dense[4 * i + 2] =
        difference - size * (rows[(stageCount - 1) * rowLength + i] as number) - bend;
      dense[4 * i + 3] = size * fourth;
    }
  }

  /** State at share `theta` of the step tried last, 0 … 1. */
  interpolate(theta: number, into: Float64Array): void {
    const { state } = this;
    const dense = this.#dense;
    const rest = 1 - theta;
    for (let i = 0; i < this.#system.stateCount; i++) {
      const d = 4 * i;
      into[i] =
        (state[i] as number) +
        theta *
          ((dense[d] as number) +
            rest *
              ((dense[d + 1] as number) +
                theta * ((dense[d + 2] as number) + rest * (dense[d + 3] as number))));
    }
  }

  /** Takes over the step tried last; its last stage becomes the first of the next. */
  accept(): void {
    const { rowLength } = this.#system;
    this.time += this.size;
    this.state.set(this.next);
    this.rows.copyWithin(0, (stageCount - 1) * rowLength, stageCount * rowLength);
  }
}
