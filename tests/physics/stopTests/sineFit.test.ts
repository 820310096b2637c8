import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sineFit } from "../../../src/physics/stopTests/sineFit.ts";

describe("a sine through samples", () => {
  it("of one moment alone is their mean, and no sine", () => {
    const fit = sineFit(Float64Array.of(2, 2, 2), Float64Array.of(4, 5, 6), 0, 3, 2 * Math.PI * 3);
    expect(fit).toMatchObject({ mean: 5, cosine: 0, sine: 0 });
    expect(fit.rms).toBeCloseTo(Math.sqrt(2 / 3), 12);
  });

  it("is found again from uneven samples of less than a period, phases counted from their middle", () => {
    const times = [0.1, 0.13, 0.2, 0.34, 0.35, 0.5, 0.71];
    const middle = (0.1 + 0.71) / 2;
    const part = fc.double({ min: -20, max: 20, noNaN: true });
    fc.assert(
      fc.property(part, part, part, (mean, cosine, sine) => {
        const y = times.map(
          (t) => mean + cosine * Math.cos(7 * (t - middle)) + sine * Math.sin(7 * (t - middle)),
        );
        // What stands before and behind is not of this cycle.
        const fit = sineFit(
          Float64Array.of(-5, 0, ...times, 0.8, 3),
          Float64Array.of(900, -700, ...y, 800, -600),
          2,
          9,
          7,
        );
        expect(fit.mean).toBeCloseTo(mean, 9);
        expect(fit.cosine).toBeCloseTo(cosine, 9);
        expect(fit.sine).toBeCloseTo(sine, 9);
        expect(fit.rms).toBeCloseTo(0, 9);
      }),
    );
  });

  it("leaves over what is no sine of its period, as a root mean square", () => {
    // A third harmonic of 2 over one whole period of 12 samples: 2/√2 is left, and nothing changes.
    const timeS = Float64Array.from({ length: 12 }, (_, at) => at / 12);
    const omega = 2 * Math.PI;
    const y = timeS.map((t) => 4 + 3 * Math.sin(omega * t) + 2 * Math.cos(3 * omega * t));
    const fit = sineFit(timeS, y, 0, 12, omega);
    expect(fit.mean).toBeCloseTo(4, 12);
    expect(Math.hypot(fit.cosine, fit.sine)).toBeCloseTo(3, 12);
    expect(fit.rms).toBeCloseTo(Math.SQRT2, 12);
  });
});
