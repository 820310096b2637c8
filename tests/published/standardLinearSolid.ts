import { type StopAtSpeed, staticOnly } from "../../src/physics/stop/stopAtSpeed.ts";
import { StopForce } from "../../src/physics/stop/stopForce.ts";
import { linearStop } from "./support/oneMassSetup.ts";
import { publishedSource } from "./support/published.ts";

/*
 * Closed forms of a spring E∞ beside Maxwell elements gᵢ, τᵢ (standard linear solid and its
 * generalisation; rheology texts, sine as in ISO 6721-1; recalled from memory, each follows from
 * q̇ = g·k·ẋ − q/τ): relaxation after a step, q = g·k·x·e^(−t/τ); ramp, q = g·k·v·τ·(1 − e^(−t/τ)); sine,
 * storage part g·ω²τ²/(1 + ω²τ²), loss part g·ωτ/(1 + ω²τ²), loss of a cycle π·k·X²·(loss part). A loss
 * that follows the static force alone, h·k·x, loses 4·h·k·x0·X a cycle about x0.
 */
const rate = 80;
const branches = [
  { tauS: 0.02, share: 0.4 },
  { tauS: 0.3, share: 0.25 },
] as const;
const solid: StopAtSpeed = { ...staticOnly, staticShare: 0.9, branches };

interface Moment {
  readonly t: number;
  readonly x: number;
  readonly force: number;
}

/** The stop's force along x(t), its branches by the classical Runge–Kutta method in equal steps. */
function along(
  parts: StopAtSpeed,
  x: (t: number) => number,
  speed: (t: number) => number,
  until: number,
  steps: number,
): Moment[] {
  const stop = new StopForce(linearStop(rate), parts);
  const count = stop.branchCount;
  let states: Float64Array = new Float64Array(count);
  const ratesAt = (t: number, of: Float64Array) => {
    const rates = new Float64Array(count);
    stop.relaxation(stop.curveForce(x(t)), of, 0, rates, 0);
    return rates;
  };
  const moved = (by: Float64Array, dt: number) =>
    states.map((state, branch) => state + dt * (by[branch] as number));
  const dt = until / steps;
  const moments: Moment[] = [];
  for (let step = 0; step <= steps; step++) {
    const t = step * dt;
    const v = speed(t);
    const share = stop.restLossShare(v);
    const force = stop.whole(x(t), stop.curveForce(x(t)), v, v, share, states, 0);
    moments.push({ t, x: x(t), force });
    const k1 = ratesAt(t, states);
    const k2 = ratesAt(t + dt / 2, moved(k1, dt / 2));
    const k3 = ratesAt(t + dt / 2, moved(k2, dt / 2));
    const k4 = ratesAt(t + dt, moved(k3, dt));
    states = states.map(
      (state, branch) =>
        state +
        (dt / 6) *
          ((k1[branch] as number) +
            2 * (k2[branch] as number) +
            2 * (k3[branch] as number) +
            (k4[branch] as number)),
    );
  }
  return moments;
}

/** ∮F·dx over the last period, J, by the trapezoidal rule. */
function lossOf(moments: readonly Moment[], period: number): number {
  const last = (moments.at(-1)?.t ?? 0) - period * (1 + 1e-9);
  let loss = 0;
  for (const [index, now] of moments.entries()) {
    const before = moments[index - 1];
    if (before === undefined || before.t < last) continue;
    loss += ((now.force + before.force) / 2) * (now.x - before.x);
  }
  return loss / 1000;
}

export const standardLinearSolid = publishedSource(
  "Standard linear solid, generalised (rheology texts; ISO 6721-1)",
  "from memory",
  (published) => {
    const near = (quantity: string, value: number, share: number, compute: () => number) =>
      published(quantity, value, compute, share * Math.abs(value));

    const held = () =>
      along(
        solid,
        () => 12,
        () => 0,
        0.4,
        4000,
      );
    for (const [t, name] of [
      [0, "at once"],
      [0.02, "after 0.02 s"],
      [0.4, "after 0.4 s"],
    ] as const) {
      const wanted =
        rate * 12 * (0.9 + branches.reduce((sum, b) => sum + b.share * Math.exp(-t / b.tauS), 0));
      near(`pressed by 12 mm and held, force ${name}, N`, wanted, 1e-9, () => {
        const moments = held();
        return moments[Math.round((t / 0.4) * 4000)]?.force ?? Number.NaN;
      });
    }

    const speed = 150;
    for (const t of [0.01, 0.05, 0.2]) {
      const ramp = branches.reduce(
        (sum, { tauS, share }) => sum + share * speed * tauS * (1 - Math.exp(-t / tauS)),
        0,
      );
      near(`ramp of 150 mm/s, force after ${t} s, N`, rate * (0.9 * speed * t + ramp), 1e-9, () => {
        const moments = along(
          solid,
          (s) => speed * s,
          () => speed,
          t,
          2000,
        );
        return moments.at(-1)?.force ?? Number.NaN;
      });
    }

    const sine = (parts: StopAtSpeed, frequencyHz: number, amplitude = 4) => {
      const omega = 2 * Math.PI * frequencyHz;
      const periods = Math.ceil(3 * frequencyHz) + 1;
      return lossOf(
        along(
          parts,
          (t) => 15 + amplitude * Math.sin(omega * t),
          (t) => amplitude * omega * Math.cos(omega * t),
          periods / frequencyHz,
          2000 * periods,
        ),
        1 / frequencyHz,
      );
    };
    for (const frequencyHz of [0.5, 4, 20]) {
      const omega = 2 * Math.PI * frequencyHz;
      const lossPart = branches.reduce(
        (sum, { tauS, share }) => sum + (share * omega * tauS) / (1 + (omega * tauS) ** 2),
        0,
      );
      near(
        `sine of 4 mm at ${frequencyHz} Hz: loss of a cycle, J`,
        (Math.PI * rate * 16 * lossPart) / 1000,
        2e-4,
        () => sine(solid, frequencyHz),
      );
    }
    near(
      "dashpot of 0.5 N·s/mm, sine of 4 mm at 4 Hz: loss of a cycle πcωX², J",
      (Math.PI * 0.5 * 8 * Math.PI * 16) / 1000,
      1e-5,
      () => sine({ ...staticOnly, dashpot: { coefficient: () => 0.5 } }, 4),
    );
    // Nearly all of a cycle is faster than 5 mm/s, from where the loss has its full size.
    for (const frequencyHz of [4, 20]) {
      near(
        `rest loss of 0.1 about 15 mm, sine of 4 mm at ${frequencyHz} Hz: loss of a cycle 4hkx0X, J`,
        (4 * 0.1 * rate * 15 * 4) / 1000,
        2e-3,
        () => sine({ ...staticOnly, restLoss: 0.1 }, frequencyHz),
      );
    }
  },
);
