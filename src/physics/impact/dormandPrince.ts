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
/** Couplings a[stage][earlier stage], written out so that a step has no inner loop over stages. */
const a21 = 1 / 5;
const [a31, a32] = [3 / 40, 9 / 40] as const;
const [a41, a42, a43] = [44 / 45, -56 / 15, 32 / 9] as const;
const [a51, a52, a53, a54] = [19372 / 6561, -25360 / 2187, 64448 / 6561, -212 / 729] as const;
const [a61, a62, a63, a64, a65] = [
  9017 / 3168,
  -355 / 33,
  46732 / 5247,
  49 / 176,
  -5103 / 18656,
] as const;
/** Fifth-order weights; those of stages 2 and 7 are 0. */
const [b1, b3, b4, b5, b6] = [35 / 384, 500 / 1113, 125 / 192, -2187 / 6784, 11 / 84] as const;
/** Fifth- less fourth-order weights; that of stage 2 is 0. */
const [e1, e3, e4, e5, e6, e7] = [
  71 / 57600,
  -71 / 16695,
  71 / 1920,
  -17253 / 339200,
  22 / 525,
  -1 / 40,
] as const;
/** Weights of the continuous extension; that of stage 2 is 0. */
const [d1, d3, d4, d5, d6, d7] = [
  -12715105075 / 11282082432,
  87487479700 / 32700410799,
  -10690763975 / 1880347072,
  701980252875 / 199316789632,
  -1453857185 / 822651844,
  69997945 / 29380423,
] as const;

/** Places along a step at which a slope's top is looked for. */
const looks = 20;

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
    const system = this.#system;
    const { rows, state, next, time } = this;
    const stage = this.#stage;
    const { stateCount: count, rowLength: r2 } = system;
    const r3 = 2 * r2;
    const r4 = 3 * r2;
    const r5 = 4 * r2;
    const r6 = 5 * r2;
    const at = (place: number) => rows[place] as number;
    this.size = size;
    for (let i = 0; i < count; i++) stage[i] = (state[i] as number) + size * (a21 * at(i));
    system.derivative(time + size / 5, stage, rows, r2);
    for (let i = 0; i < count; i++) {
      stage[i] = (state[i] as number) + size * (a31 * at(i) + a32 * at(r2 + i));
    }
    system.derivative(time + 0.3 * size, stage, rows, r3);
    for (let i = 0; i < count; i++) {
      stage[i] = (state[i] as number) + size * (a41 * at(i) + a42 * at(r2 + i) + a43 * at(r3 + i));
    }
    system.derivative(time + 0.8 * size, stage, rows, r4);
    for (let i = 0; i < count; i++) {
      stage[i] =
        (state[i] as number) +
        size * (a51 * at(i) + a52 * at(r2 + i) + a53 * at(r3 + i) + a54 * at(r4 + i));
    }
    system.derivative(time + (8 / 9) * size, stage, rows, r5);
    for (let i = 0; i < count; i++) {
      stage[i] =
        (state[i] as number) +
        size *
          (a61 * at(i) + a62 * at(r2 + i) + a63 * at(r3 + i) + a64 * at(r4 + i) + a65 * at(r5 + i));
    }
    system.derivative(time + size, stage, rows, r6);
    for (let i = 0; i < count; i++) next[i] = (state[i] as number) + size * this.#weighted(i);
    system.derivative(time + size, next, rows, 6 * r2);
  }

  /** Mean over the step of the entry in a column of the rows, to fifth order. */
  #weighted(column: number): number {
    const { rows } = this;
    const { rowLength: r } = this.#system;
    return (
      b1 * (rows[column] as number) +
      b3 * (rows[2 * r + column] as number) +
      b4 * (rows[3 * r + column] as number) +
      b5 * (rows[4 * r + column] as number) +
      b6 * (rows[5 * r + column] as number)
    );
  }

  /**
   * Root mean square of the estimated errors of state components, and of the quadratures that follow
   * them, as many as `allowed` is long: each over its allowed error, a state's with `relative` of its
   * own size added.
   */
  error(allowed: Float64Array, relative: number): number {
    const { stateCount, rowLength: r } = this.#system;
    const { rows, state, next } = this;
    let sum = 0;
    for (let i = 0; i < allowed.length; i++) {
      const estimate =
        e1 * (rows[i] as number) +
        e3 * (rows[2 * r + i] as number) +
        e4 * (rows[3 * r + i] as number) +
        e5 * (rows[4 * r + i] as number) +
        e6 * (rows[5 * r + i] as number) +
        e7 * (rows[6 * r + i] as number);
      let most = allowed[i] as number;
      if (i < stateCount) {
        most += relative * Math.max(Math.abs(state[i] as number), Math.abs(next[i] as number));
      }
      const share = (this.size * estimate) / most;
      sum += share * share;
    }
    return Math.sqrt(sum / allowed.length);
  }

  /** Integral over the step tried last of the integrand in a column of the rows. */
  quadrature(column: number): number {
    return this.size * this.#weighted(column);
  }

  /** Prepares `interpolate` for the step tried last. */
  prepareInterpolation(): void {
    for (let i = 0; i < this.#system.stateCount; i++) this.#prepare(i);
  }

  #prepare(component: number): void {
    const { rowLength: r } = this.#system;
    const { rows, size } = this;
    const dense = this.#dense;
    const i = component;
    const first = rows[i] as number;
    const last = rows[6 * r + i] as number;
    const difference = (this.next[i] as number) - (this.state[i] as number);
    const bend = size * first - difference;
    dense[4 * i] = difference;
    dense[4 * i + 1] = bend;
    dense[4 * i + 2] = difference - size * last - bend;
    dense[4 * i + 3] =
      size *
      (d1 * first +
        d3 * (rows[2 * r + i] as number) +
        d4 * (rows[3 * r + i] as number) +
        d5 * (rows[4 * r + i] as number) +
        d6 * (rows[5 * r + i] as number) +
        d7 * last);
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

  /**
   * Share of the step tried last at which the slope of a component's continuous extension is greatest,
   * to a twentieth of the step. Prepares that component for `slopeAt`.
   */
  topOfSlope(component: number): number {
    this.#prepare(component);
    let top = 0;
    let greatest = this.slopeAt(component, 0);
    for (let place = 1; place <= looks; place++) {
      const slope = this.slopeAt(component, place / looks);
      if (slope > greatest) {
        greatest = slope;
        top = place / looks;
      }
    }
    return top;
  }

  /** Slope dy/dt of a prepared component at share `theta` of the step tried last. */
  slopeAt(component: number, theta: number): number {
    const dense = this.#dense;
    const d = 4 * component;
    return (
      ((dense[d] as number) +
        (1 - 2 * theta) * (dense[d + 1] as number) +
        theta *
          ((2 - 3 * theta) * (dense[d + 2] as number) +
            (2 - theta * (6 - 4 * theta)) * (dense[d + 3] as number))) /
      this.size
    );
  }

  /** Takes over the step tried last; its last stage becomes the first of the next. */
  accept(): void {
    const { rows, state, next } = this;
    const { stateCount, rowLength } = this.#system;
    const last = 6 * rowLength;
    this.time += this.size;
    for (let i = 0; i < stateCount; i++) state[i] = next[i] as number;
    for (let i = 0; i < rowLength; i++) rows[i] = rows[last + i] as number;
  }
}
