import { analyseCycles } from "../../src/physics/stopTests/analyseCycles.ts";
import { unwrapped } from "../physics/demoFitments.ts";
import { cyclesOfPlan } from "../physics/stopTests/generatedTests.ts";
import { publishedSource } from "./support/published.ts";

/*
 * Loss of a harmonic cycle, vibration texts (recalled from memory; each follows by integrating F·dx over
 * one period of x = X·sin ωt): viscous dashpot ΔE = π·c·ω·X²; linear spring ΔE = 0; hysteretic damping
 * ΔE = π·η·k·X² at any frequency, so c = η·k/ω; dry friction ΔE = 4·F·X; loss factor ΔE/(2π·½kX²).
 * A polygon of N samples misses (2π/N)²/6 of an ellipse's area: 2.6e-6 at N = 1600.
 */
const plan = { amplitudeMm: 6, frequencyHz: 4, cycles: 5, samplesPerCycle: 1600 };
const omega = 2 * Math.PI * plan.frequencyHz;

type Change = Partial<Parameters<typeof cyclesOfPlan>[0]>;
const found = (change: Change) =>
  unwrapped(analyseCycles(cyclesOfPlan({ ...plan, force: () => 0, ...change })));

export const harmonicLoop = publishedSource(
  "Loss of a harmonic cycle (vibration texts)",
  "from memory",
  (published) => {
    const near = (quantity: string, value: number, share: number, compute: () => number) =>
      published(quantity, value, compute, share * value);
    const none = (quantity: string, compute: () => number) => published(quantity, 0, compute, 1e-9);

    const dashpot = () => found({ force: (_, v) => 0.8 * v });
    const viscous = (Math.PI * 0.8 * omega * 36) / 1000;
    near("dashpot of 0.8 N·s/mm: loss πcωX², J", viscous, 1e-5, () => dashpot().lossJ.value);
    near(
      "dashpot of 0.8 N·s/mm: damping, N·s/mm",
      0.8,
      1e-5,
      () => dashpot().equivalentDampingNsPerMm?.value ?? Number.NaN,
    );
    near("its amplitude, mm", 6, 1e-6, () => dashpot().amplitudeMm);
    near("its frequency, Hz", 4, 1e-6, () => dashpot().frequencyHz);
    published("its cycles", 5, () => dashpot().cycles);
    published("its loss factor, without a rate to refer it to", "none", () =>
      dashpot().lossFactor === null ? "none" : "given",
    );

    const spring = () => found({ meanMm: 20, force: (x) => 50 * (20 + x) });
    const workIn = (0.5 * 50 * (26 ** 2 - 14 ** 2)) / 1000;
    near(
      "spring of 50 N/mm, 14 to 26 mm: work in, J",
      workIn,
      1e-4,
      () => spring().energyInJ.value,
    );
    near("the same spring: work back, J", workIn, 1e-4, () => spring().energyOutJ.value);
    none("the same spring: loss, J", () => spring().lossJ.value);
    none("the same spring: loss factor", () => spring().lossFactor?.value ?? Number.NaN);
    near("the same spring: rate, N/mm", 50, 1e-9, () => spring().dynamicRateNPerMm.value);

    const both = () => found({ meanMm: 20, force: (x, v) => 50 * (20 + x) + 0.8 * v });
    near(
      "spring and dashpot: loss factor cω/k",
      (0.8 * omega) / 50,
      1e-5,
      () => both().lossFactor?.value ?? Number.NaN,
    );
    near("spring and dashpot: rate, N/mm", 50, 1e-6, () => both().dynamicRateNPerMm.value);
    near(
      "spring and dashpot: work in less work out, J",
      viscous,
      1e-5,
      () => both().energyInJ.value - both().energyOutJ.value,
    );

    for (const frequencyHz of [0.5, 4, 15]) {
      const w = 2 * Math.PI * frequencyHz;
      const loop = () =>
        found({
          frequencyHz,
          meanMm: 20,
          force: (x, v) => 50 * (20 + x) + ((0.15 * 50) / w) * v,
        });
      const at = `hysteretic, η 0.15, k 50 N/mm at ${frequencyHz} Hz`;
      near(
        `${at}: loss πηkX², J`,
        (Math.PI * 0.15 * 50 * 36) / 1000,
        1e-5,
        () => loop().lossJ.value,
      );
      near(`${at}: loss factor`, 0.15, 1e-5, () => loop().lossFactor?.value ?? Number.NaN);
      near(
        `${at}: damping ηk/ω, N·s/mm`,
        (0.15 * 50) / w,
        1e-5,
        () => loop().equivalentDampingNsPerMm?.value ?? Number.NaN,
      );
    }

    const friction = () =>
      found({
        samplesPerCycle: 1601,
        meanMm: 20,
        force: (x, v) => 50 * (20 + x) + 40 * Math.sign(v),
      });
    near("dry friction of 40 N: loss 4FX, J", 0.96, 1e-3, () => friction().lossJ.value);
    near(
      "dry friction of 40 N: damping 4F/(πωX), N·s/mm",
      (4 * 40) / (Math.PI * omega * 6),
      1e-3,
      () => friction().equivalentDampingNsPerMm?.value ?? Number.NaN,
    );
  },
);
