import { type Posture, postures } from "./phoneAngle.ts";
import type { TiltReading } from "./tiltSamples.ts";

/** What the sensor shows in one posture where the truth is 0, and how that was found. */
export interface TiltZero {
  readonly posture: Posture;
  readonly offsetDegrees: number;
  readonly scatterDegrees: number;
  readonly way: "level" | "turned";
  /** ISO 8601 UTC. */
  readonly at: string;
}

export type Turned =
  | { readonly ok: true; readonly zero: TiltZero; readonly surfaceDegrees: number }
  | { readonly ok: false; readonly fault: "offsetTooLarge" | "surfaceTooSteep" };

/** A sensor that is further off than this was not turned on its own spot. Common practice. */
const greatestOffset = 5;
/** A surface to zero on leans less than this. Common practice. */
const steepestSurface = 15;

type Measured = Pick<TiltReading, "degrees" | "scatterDegrees">;

/**
 * Two-position calibration. On a surface that leans by θ the phone shows θ + o; turned round by 180°
 * about the vertical, on the same edge and spot, −θ + o. So the offset o is half the sum, and the
 * surface's own lean half the difference: it need not be level. Scatter: √(s₁² + s₂²)/2.
 * Source: reversal error separation as for a spirit level; common practice.
 */
export function zeroByTurning(
  posture: Posture,
  first: Measured,
  second: Measured,
  now: Date,
): Turned {
  const offsetDegrees = (first.degrees + second.degrees) / 2;
  const surfaceDegrees = (first.degrees - second.degrees) / 2;
  if (!(Math.abs(offsetDegrees) <= greatestOffset)) return { ok: false, fault: "offsetTooLarge" };
  if (!(Math.abs(surfaceDegrees) <= steepestSurface)) {
    return { ok: false, fault: "surfaceTooSteep" };
  }
  const scatterDegrees = Math.hypot(first.scatterDegrees, second.scatterDegrees) / 2;
  return {
    ok: true,
    surfaceDegrees,
    zero: { posture, offsetDegrees, scatterDegrees, way: "turned", at: now.toISOString() },
  };
}

/** Zero on a surface that is held to be level: what the phone shows there is its offset. */
export function zeroOnLevel(posture: Posture, reading: Measured, now: Date): Turned {
  const { degrees: offsetDegrees, scatterDegrees } = reading;
  if (!(Math.abs(offsetDegrees) <= greatestOffset)) return { ok: false, fault: "offsetTooLarge" };
  return {
    ok: true,
    surfaceDegrees: 0,
    zero: { posture, offsetDegrees, scatterDegrees, way: "level", at: now.toISOString() },
  };
}

export type TiltZeros = { readonly [Name in Posture]?: TiltZero };

const key = "stopfit.tiltZero";

function readZero(posture: Posture, value: unknown): TiltZero | null {
  if (typeof value !== "object" || value === null) return null;
  const field = (name: string): unknown => Reflect.get(value, name);
  const [offset, scatter, way, at] = ["offsetDegrees", "scatterDegrees", "way", "at"].map(field);
  if (typeof offset !== "number" || !(Math.abs(offset) <= greatestOffset)) return null;
  if (typeof scatter !== "number" || !(scatter >= 0 && scatter < 90)) return null;
  if (way !== "level" && way !== "turned") return null;
  if (typeof at !== "string" || !Number.isFinite(Date.parse(at))) return null;
  return { posture, offsetDegrees: offset, scatterDegrees: scatter, way, at };
}

let held: TiltZeros | null = null;

/** The zeros kept on this phone, by posture. */
export function tiltZeros(): TiltZeros {
  if (held !== null) return held;
  const found: { [Name in Posture]?: TiltZero } = {};
  try {
    const value: unknown = JSON.parse(localStorage.getItem(key) ?? "null");
    for (const posture of postures) {
      const own: unknown =
        typeof value === "object" && value !== null ? Reflect.get(value, posture) : null;
      const zero = readZero(posture, own);
      if (zero !== null) found[posture] = zero;
    }
  } catch {
    // Refused or unreadable: the phone counts as not zeroed.
  }
  held = found;
  return found;
}

/** Keeps a zero; where the browser refuses, it holds until the page is closed. */
export function keepTiltZero(zero: TiltZero): void {
  held = { ...tiltZeros(), [zero.posture]: zero };
  try {
    localStorage.setItem(key, JSON.stringify(held));
  } catch {
    // It holds in memory.
  }
}

/** Read anew from the browser, as after a reload. */
export function forgetTiltZerosInMemory(): void {
  held = null;
}
