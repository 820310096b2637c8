import { standardGravity } from "../physics/standardGravity.ts";
import type { TiltSource } from "./tiltSamples.ts";
import type { TiltZero } from "./tiltZero.ts";

/**
 * ± half-width of what a phone's sensor may still be off by, degrees, by how its zero was found: not
 * at all, on a surface held to be level, or by turning the phone round. Common practice, no source.
 */
export const sensorLimits = { none: 1, level: 0.5, turned: 0.3 } as const;

/**
 * No angle held by hand against a part is believed to better than this, degrees, whatever the sensor says:
 * phones differed from a fixed angle by −0.4 to 1.2° on average, with a spread under 2° (PubMed 27632853).
 */
export const leastTiltTolerance = 1;

/**
 * Half of the last digit that browsers give: orientation to 0.1°, acceleration to 0.1 m/s², which
 * across gravity is 0.58° (W3C Device Orientation and Motion, on precision, from memory).
 */
const halfDigit: Readonly<Record<TiltSource, number>> = {
  orientation: 0.05,
  motion: (Math.asin(0.05 / standardGravity) * 180) / Math.PI,
};

/**
 * The ± of one tilt reading, degrees, as the record holds it: a half-width whose tol/√3 is the
 * combined standard uncertainty u = √(limit²/3 + digit²/3 + s² + s₀²), with the scatter s of the
 * samples and s₀ of the zero. s is that of a single sample, not s/√n: samples 25 ms apart are not
 * independent, and so a median of many is not trusted further than each. Never less than
 * `leastTiltTolerance`.
 * Source: JCGM 100:2008, 5.1.2, 4.3.7, F.2.2.1 (digit). `zero` null: the phone was never zeroed so.
 */
export function tiltTolerance(
  reading: { readonly scatterDegrees: number; readonly source: TiltSource },
  zero: TiltZero | null,
): number {
  const limit = sensorLimits[zero === null ? "none" : zero.way];
  const scatter = Math.hypot(reading.scatterDegrees, zero?.scatterDegrees ?? 0);
  return Math.max(
    leastTiltTolerance,
    Math.hypot(limit, halfDigit[reading.source], Math.sqrt(3) * scatter),
  );
}
