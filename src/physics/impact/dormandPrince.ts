/**
 * One-step solver for dy/dt = f(t, y): the explicit Runge–Kutta pair 5(4) of Dormand and Prince, with
 * its fourth-order continuous extension. The caller decides on step size and acceptance.
 *
 * Besides the state, a system may have quadratures, integrals that do not feed back: they are summed
 * with the fifth-order weights and need no stage states. All arrays are made once; a step allocates
 * nothing. The coefficients stand in the formulas as the fractions of the tableau.
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

/** Stages of a step: their rows, in the order of time, the last at its end. */
export const stageCount = 7;
/** Places along a step at which a slope's top is looked for. */
const looks = 20;
/** Halvings of a step for the place where a component turns. */
const turnHalvings = 30;

export class DormandPrince {
  #system: OdeSystem;
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

  /** Begins anew, at time 0 and with a state of zeros, with a system of as many states and as long rows. */
  begin(system: OdeSystem): void {
    this.#system = system;
    this.state.fill(0);
    this.time = 0;
  }

  /** Evaluates the first stage; to be called at the start and whenever the system has changed. */
  restart(): void {
    this.#system.derivative(this.time, this.state, this.rows, 0);
  }

  /** Tries a step of `size` from the present time and state. */
  attempt(size: number): void {
    const system = this.#system;
    const { rows: k, state, next, time } = this;
    const stage = this.#stage;
    const { stateCount: count, rowLength: r } = system;
    this.size = size;
    for (let i = 0; i < count; i++) {
      stage[i] = state[i] + size * (1 / 5) * k[i];
    }
    system.derivative(time + size / 5, stage, k, r);
    for (let i = 0; i < count; i++) {
      stage[i] = state[i] + size * ((3 / 40) * k[i] + (9 / 40) * k[r + i]);
    }
    system.derivative(time + 0.3 * size, stage, k, 2 * r);
    for (let i = 0; i < count; i++) {
      stage[i] =
        state[i] + size * ((44 / 45) * k[i] + (-56 / 15) * k[r + i] + (32 / 9) * k[2 * r + i]);
    }
    system.derivative(time + 0.8 * size, stage, k, 3 * r);
    for (let i = 0; i < count; i++) {
      stage[i] =
        state[i] +
        size *
          ((19372 / 6561) * k[i] +
            (-25360 / 2187) * k[r + i] +
            (64448 / 6561) * k[2 * r + i] +
            (-212 / 729) * k[3 * r + i]);
    }
    system.derivative(time + (8 / 9) * size, stage, k, 4 * r);
    for (let i = 0; i < count; i++) {
      stage[i] =
        state[i] +
        size *
          ((9017 / 3168) * k[i] +
            (-355 / 33) * k[r + i] +
            (46732 / 5247) * k[2 * r + i] +
            (49 / 176) * k[3 * r + i] +
            (-5103 / 18656) * k[4 * r + i]);
    }
    system.derivative(time + size, stage, k, 5 * r);
    for (let i = 0; i < count; i++) next[i] = state[i] + size * this.#weighted(i);
    system.derivative(time + size, next, k, 6 * r);
  }

  /** Mean over the step of the entry in a column of the rows, to fifth order. */
  #weighted(column: number): number {
    const { rows } = this;
    const { rowLength: r } = this.#system;
    return (
      (35 / 384) * rows[column] +
      (500 / 1113) * rows[2 * r + column] +
      (125 / 192) * rows[3 * r + column] +
      (-2187 / 6784) * rows[4 * r + column] +
      (11 / 84) * rows[5 * r + column]
    );
  }

  /**
   * Root mean square of the estimated errors of state components, and of the quadratures that follow
   * them, as many as `allowed` is long: each over its allowed error, a state's with `relative` of its
   * own size added. The estimate is the fifth- less the fourth-order result.
   */
  error(allowed: Float64Array, relative: number): number {
    const { stateCount, rowLength: r } = this.#system;
    const { rows, state, next } = this;
    let sum = 0;
    for (let i = 0; i < allowed.length; i++) {
      const estimate =
        (71 / 57600) * rows[i] +
        (-71 / 16695) * rows[2 * r + i] +
        (71 / 1920) * rows[3 * r + i] +
        (-17253 / 339200) * rows[4 * r + i] +
        (22 / 525) * rows[5 * r + i] +
        (-1 / 40) * rows[6 * r + i];
      let most = allowed[i];
      if (i < stateCount) {
        most += relative * Math.max(Math.abs(state[i]), Math.abs(next[i]));
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
    const first = rows[i];
    const last = rows[6 * r + i];
    const difference = this.next[i] - this.state[i];
    const bend = size * first - difference;
    dense[4 * i] = difference;
    dense[4 * i + 1] = bend;
    dense[4 * i + 2] = difference - size * last - bend;
    dense[4 * i + 3] =
      size *
      ((-12715105075 / 11282082432) * first +
        (87487479700 / 32700410799) * rows[2 * r + i] +
        (-10690763975 / 1880347072) * rows[3 * r + i] +
        (701980252875 / 199316789632) * rows[4 * r + i] +
        (-1453857185 / 822651844) * rows[5 * r + i] +
        (69997945 / 29380423) * last);
  }

  /** State at share `theta` of the step tried last, 0 … 1. */
  interpolate(theta: number, into: Float64Array): void {
    const { state } = this;
    const dense = this.#dense;
    const rest = 1 - theta;
    for (let i = 0; i < this.#system.stateCount; i++) {
      const d = 4 * i;
      into[i] =
        state[i] +
        theta * (dense[d] + rest * (dense[d + 1] + theta * (dense[d + 2] + rest * dense[d + 3])));
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

  /** Share of the step tried last at which a prepared component turns from rising to falling. */
  turnOf(component: number): number {
    let low = 0;
    let high = 1;
    for (let halving = 0; halving < turnHalvings; halving++) {
      const middle = (low + high) / 2;
      if (this.slopeAt(component, middle) > 0) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  }

  /** Slope dy/dt of a prepared component at share `theta` of the step tried last. */
  slopeAt(component: number, theta: number): number {
    const dense = this.#dense;
    const d = 4 * component;
    return (
      (dense[d] +
        (1 - 2 * theta) * dense[d + 1] +
        theta * ((2 - 3 * theta) * dense[d + 2] + (2 - theta * (6 - 4 * theta)) * dense[d + 3])) /
      this.size
    );
  }

  /** Takes over the step tried last; its last stage becomes the first of the next. */
  accept(): void {
    const { rows, state, next } = this;
    const { stateCount, rowLength } = this.#system;
    const last = 6 * rowLength;
    this.time += this.size;
    for (let i = 0; i < stateCount; i++) state[i] = next[i];
    for (let i = 0; i < rowLength; i++) rows[i] = rows[last + i];
  }
}
