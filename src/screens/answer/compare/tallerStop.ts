import type { Stop } from "../../../physics/fitment.ts";
import { meanOf } from "../../../physics/uncertainty/readingMean.ts";

/**
 * A taller stop of the same build and stiffness class: every height and compression grows in one
 * proportion, and the force with it, so that force over compression at half the usable compression
 * stays. What is not known by test at the new height is damping: none.
 */
export function tallerStop(stop: Stop, byMm: number): Stop {
  const height = meanOf(stop.freeHeight);
  const growth = (height + byMm) / height;
  return {
    ...stop,
    name: `${stop.name}, ${byMm >= 0 ? "taller" : "shorter"}`,
    freeHeight: { values: [height + byMm], tol: stop.freeHeight.tol },
    usableCompressionMm: growth * stop.usableCompressionMm,
    curve: stop.curve.map(([depth, force]) => [growth * depth, growth * force] as const),
    damping: null,
    testedAtSpeed: false,
  };
}
