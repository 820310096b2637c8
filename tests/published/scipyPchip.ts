import { type StopCurve, stopCurve } from "../../src/physics/stop/stopCurve.ts";
import { unwrapped } from "../physics/demoFitments.ts";
import fixture from "./scipyPchip.json" with { type: "json" };
import { publishedSource } from "./support/published.ts";

/*
 * SciPy's PchipInterpolator, its derivative and its antiderivative, computed once; the version is in the
 * file. The usable compression lies past the last point, so that the cubics stand alone; slopes at the last
 * point are looked at a hair before it, where the cubic ends.
 */

type Case = (typeof fixture.cases)[number];

function curveOf({ points }: Case): StopCurve {
  return unwrapped(
    stopCurve({
      name: "Test stop",
      duty: "impact",
      freeHeight: { values: [1e4], tol: 0 },
      usableCompressionMm: 2 * Number(points.at(-1)?.[0]),
      curve: points.map(([depth = 0, load = 0]) => [depth, load] as const),
      damping: null,
      testedAtSpeed: false,
    }),
  );
}

/** Greatest difference as a share of the curve's last force. */
function worst(
  each: Case,
  values: readonly number[],
  own: (curve: StopCurve, x: number) => number,
) {
  const curve = curveOf(each);
  const scale = Number(each.points.at(-1)?.[1]);
  return Math.max(
    ...each.at.map((x, index) => Math.abs(own(curve, x) - Number(values[index])) / scale),
  );
}

export const scipyPchip = publishedSource(fixture.source, "met", (published) => {
  for (const each of fixture.cases) {
    const { name, force, slope, energy } = each;
    const share = `greatest difference at ${each.at.length} places, share of the last force`;
    published(`${name}, force: ${share}`, 0, () => worst(each, force, (c, x) => c.force(x)), 1e-12);
    const within = Number(each.points.at(-1)?.[0]) * (1 - 1e-14);
    published(
      `${name}, slope: ${share}`,
      0,
      () => worst(each, slope, (c, x) => c.slope(Math.min(x, within))),
      1e-11,
    );
    published(
      `${name}, energy: ${share}`,
      0,
      () => worst(each, energy, (c, x) => c.energy(x)),
      1e-10,
    );
  }
});
