import { describe, expect, it } from "vitest";
import { stopCurve } from "../../src/physics/stop/stopCurve.ts";
import { unwrapped } from "../physics/demoFitments.ts";
import fixture from "./scipyPchip.json";

// Source: SciPy's PchipInterpolator, its derivative and its antiderivative, computed once; the version
// is in the file. The usable compression lies past the last point, so that the cubics stand alone.

describe(`PCHIP as in ${fixture.source}`, () => {
  it.each(fixture.cases)(
    "$name: force, slope and energy",
    ({ points, at, force, slope, energy }) => {
      const last = points.at(-1) ?? [];
      const curve = unwrapped(
        stopCurve({
          name: "Test stop",
          duty: "impact",
          freeHeight: { values: [1e4], tol: 0 },
          usableCompressionMm: 2 * Number(last[0]),
          curve: points.map(([depth = 0, load = 0]) => [depth, load] as const),
          damping: null,
          testedAtSpeed: false,
        }),
      );
      const scale = Number(last[1]);
      for (const [index, x] of at.entries()) {
        expect(Math.abs(curve.force(x) - Number(force[index]))).toBeLessThan(1e-12 * scale);
        expect(Math.abs(curve.slope(x) - Number(slope[index]))).toBeLessThan(1e-11 * scale);
        expect(Math.abs(curve.energy(x) - Number(energy[index]))).toBeLessThan(1e-10 * scale);
      }
    },
  );
});
