import { describe, expect, it } from "vitest";
import { loopFigures } from "../../../src/physics/stopTests/loopFigures.ts";

/** One turn of 5 mm at 1 Hz against 60 N/mm and 0.5 N·s/mm, from a passage of the mean. */
function turn(direction: 1 | -1) {
  const count = 2000;
  const omega = 2 * Math.PI;
  const timeS = Float64Array.from({ length: count }, (_, at) => at / count);
  const displacementMm = timeS.map((time) => direction * 5 * Math.sin(omega * time));
  const forceN = timeS.map(
    (time, at) =>
      60 * (15 + (displacementMm[at] as number)) +
      0.5 * direction * 5 * omega * Math.cos(omega * time),
  );
  return loopFigures(timeS, displacementMm, forceN, { startS: 0, endS: 1, from: 0, to: count });
}

describe("a loop", () => {
  // In: 60·(20² − 10²)/2 and half of the loss π·c·ω·X²; out: the same less the other half.
  const loss = Math.PI * 0.5 * 2 * Math.PI * 25;

  it.each([1, -1] as const)("has the same energies from either passage: %d", (direction) => {
    const figures = turn(direction);
    expect(figures.energyIn / (9000 + loss / 2)).toBeCloseTo(1, 4);
    expect(figures.energyOut / (9000 - loss / 2)).toBeCloseTo(1, 4);
    expect(figures.loss / loss).toBeCloseTo(1, 3);
    expect(figures.rate).toBeCloseTo(60, 3);
  });
});

describe("a loop of eight samples, by hand", () => {
  /** Displacement and force, a second a sample, with what belongs to other cycles at both ends. */
  const displacement = [4, 8, 10, 8, 4, 0, -2, 0];
  const force = [50, 90, 110, 70, 30, 10, 5, 20];
  const figuresFrom = (turned: number, sign: 1 | -1 = 1) => {
    const around = (values: readonly number[]) => [
      ...values.slice(turned),
      ...values.slice(0, turned),
    ];
    return loopFigures(
      Float64Array.from({ length: 12 }, (_, place) => place / 2),
      Float64Array.of(99, -99, ...around(displacement), 99, -99),
      Float64Array.of(500, -700, ...around(force.map((each) => sign * each)), -800, 600),
      { startS: 0.75, endS: 4.75, from: 2, to: 10 },
    );
  };

  it.each([0, 1, 2, 3, 4, 5, 6, 7])("energies by trapezia, begun at sample %i", (turned) => {
    const figures = figuresFrom(turned);
    // In, −2 to 10 mm: 12.5·2 + 35·4 + 70·4 + 100·2. Out, 10 to −2: 90·2 + 50·4 + 20·4 + 7.5·2.
    expect(figures.energyIn).toBeCloseTo(645, 9);
    expect(figures.energyOut).toBeCloseTo(475, 9);
    expect(figures.loss).toBeCloseTo(170, 9);
    expect(figures.peakForceN).toBe(110);
    expect(figures.halfStrokeMm).toBe(6);
  });

  it("a pulling force peaks as well", () => {
    expect(figuresFrom(0, -1).peakForceN).toBe(110);
  });

  it("sines: means, amplitudes, misfit and rate", () => {
    const figures = figuresFrom(0);
    expect(figures.omega).toBeCloseTo(Math.PI / 2, 12);
    expect(figures.meanDisplacementMm).toBeCloseTo(32 / 8, 9);
    expect(figures.meanForceN).toBeCloseTo(385 / 8, 9);
    // About its mean 0 4 6 4 0 −4 −6 −4 is a sine of 3 + 2√2 and a third harmonic of 3 − 2√2.
    const root = Math.SQRT1_2;
    const amplitude = 3 + 2 * Math.SQRT2;
    expect(figures.amplitudeMm).toBeCloseTo(amplitude, 9);
    expect(figures.sineMisfit).toBeCloseTo(((3 - 2 * Math.SQRT2) * root) / amplitude, 9);
    // ¼·Σ F·sin and ¼·Σ F·cos of eighths of a turn.
    const inPhase = (110 - 5 + root * (90 + 70 - 10 - 20)) / 4;
    const ahead = (50 - 30 + root * (90 - 70 - 10 + 20)) / 4;
    expect(figures.forceAmplitudeN).toBeCloseTo(Math.hypot(inPhase, ahead), 9);
    expect(figures.rate).toBeCloseTo(inPhase / amplitude, 9);
  });
});
