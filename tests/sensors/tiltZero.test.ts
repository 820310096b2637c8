import fc from "fast-check";
import { beforeEach, describe, expect, it, vi } from "vitest";
import { tiltTolerance } from "../../src/sensors/tiltTolerance.ts";
import {
  forgetTiltZerosInMemory,
  keepTiltZero,
  tiltZeros,
  zeroByTurning,
  zeroOnLevel,
} from "../../src/sensors/tiltZero.ts";

const now = new Date("2026-05-02T09:30:00.000Z");
const double = (least: number, greatest: number) =>
  fc.double({ min: least, max: greatest, noNaN: true });

describe("zero by turning the phone round", () => {
  it("finds the offset and the surface's own lean from θ + o and −θ + o", () => {
    fc.assert(
      fc.property(double(-4.9, 4.9), double(-14, 14), (offset, lean) => {
        const turned = zeroByTurning(
          "leftEdge",
          { degrees: lean + offset, scatterDegrees: 0.06 },
          { degrees: -lean + offset, scatterDegrees: 0.08 },
          now,
        );
        if (!turned.ok) throw new Error(turned.fault);
        expect(turned.zero.offsetDegrees).toBeCloseTo(offset, 9);
        expect(turned.surfaceDegrees).toBeCloseTo(lean, 9);
        // √(0.06² + 0.08²)/2 = 0.05
        expect(turned.zero.scatterDegrees).toBeCloseTo(0.05, 12);
        expect(turned.zero).toMatchObject({
          posture: "leftEdge",
          way: "turned",
          at: now.toISOString(),
        });
      }),
    );
  });

  it("refuses what can't be one phone turned round on its spot", () => {
    const still = (degrees: number) => ({ degrees, scatterDegrees: 0 });
    expect(zeroByTurning("upright", still(8), still(8), now)).toEqual({
      ok: false,
      fault: "offsetTooLarge",
    });
    expect(zeroByTurning("upright", still(20), still(-20), now)).toEqual({
      ok: false,
      fault: "surfaceTooSteep",
    });
    expect(zeroByTurning("upright", still(Number.NaN), still(0), now).ok).toBe(false);
  });
});

describe("zero on a level surface", () => {
  it("is what the phone shows there", () => {
    const zero = zeroOnLevel("rightEdge", { degrees: -0.4, scatterDegrees: 0.1 }, now);
    expect(zero).toMatchObject({ ok: true, zero: { offsetDegrees: -0.4, way: "level" } });
    expect(zeroOnLevel("rightEdge", { degrees: 6, scatterDegrees: 0 }, now)).toEqual({
      ok: false,
      fault: "offsetTooLarge",
    });
  });
});

describe("the ± of a tilt reading", () => {
  const steady = { scatterDegrees: 0, source: "orientation" } as const;
  const turned = {
    posture: "leftEdge",
    offsetDegrees: 0.2,
    scatterDegrees: 0,
    way: "turned",
    at: now.toISOString(),
  } as const;

  it("is the sensor's limit and half a digit where nothing scatters, but never better than 1°", () => {
    expect(tiltTolerance(steady, turned)).toBe(1);
    expect(tiltTolerance(steady, { ...turned, way: "level" })).toBe(1);
    // √(1² + 0.05²)
    expect(tiltTolerance(steady, null)).toBeCloseTo(1.001249, 6);
  });

  it("gives the record's tol/√3 as the combined standard uncertainty", () => {
    fc.assert(
      fc.property(double(0.6, 2), double(0, 2), (scatter, zeroScatter) => {
        const tol = tiltTolerance(
          { scatterDegrees: scatter, source: "orientation" },
          { ...turned, scatterDegrees: zeroScatter },
        );
        const combined = Math.sqrt(0.3 ** 2 / 3 + 0.05 ** 2 / 3 + scatter ** 2 + zeroScatter ** 2);
        expect(tol / Math.sqrt(3)).toBeCloseTo(combined, 12);
      }),
    );
  });

  it("is wider from the acceleration, which comes in steps of 0.1 m/s²", () => {
    // asin(0.05/9.80665) = 0.29213°
    expect(tiltTolerance({ ...steady, source: "motion" }, null)).toBeCloseTo(
      Math.hypot(1, 0.29213),
      4,
    );
  });
});

describe("the zeros kept on the phone", () => {
  const zero = {
    posture: "upright",
    offsetDegrees: 0.3,
    scatterDegrees: 0.02,
    way: "turned",
    at: now.toISOString(),
  } as const;

  beforeEach(() => {
    vi.restoreAllMocks();
    localStorage.clear();
    forgetTiltZerosInMemory();
  });

  it("are there after a reload, with their date, one a posture", () => {
    expect(tiltZeros()).toEqual({});
    keepTiltZero(zero);
    keepTiltZero({ ...zero, posture: "leftEdge", offsetDegrees: -0.1, way: "level" });
    forgetTiltZerosInMemory();
    expect(tiltZeros().upright).toEqual(zero);
    expect(tiltZeros().leftEdge?.offsetDegrees).toBe(-0.1);
    expect(tiltZeros().rightEdge).toBeUndefined();
  });

  it.each([
    ["no JSON", "{"],
    ["another thing", "7"],
    ["null", "null"],
    ["no zero", JSON.stringify({ upright: 1, leftEdge: null })],
    ["no number", JSON.stringify({ upright: { ...zero, offsetDegrees: "1" } })],
    ["an offset too large", JSON.stringify({ upright: { ...zero, offsetDegrees: 50 } })],
    ["a scatter below 0", JSON.stringify({ upright: { ...zero, scatterDegrees: -1 } })],
    ["no scatter", JSON.stringify({ upright: { ...zero, scatterDegrees: null } })],
    ["another way", JSON.stringify({ upright: { ...zero, way: "guess" } })],
    ["no date", JSON.stringify({ upright: { ...zero, at: "yesterday" } })],
    ["a date that is none", JSON.stringify({ upright: { ...zero, at: 5 } })],
  ])("are none where what is kept is %s", (_, text) => {
    localStorage.setItem("stopfit.tiltZero", text);
    expect(tiltZeros()).toEqual({});
  });

  it("hold until the page is closed where the browser refuses to keep them", () => {
    vi.stubGlobal("localStorage", {
      getItem: () => {
        throw new DOMException("no", "SecurityError");
      },
      setItem: () => {
        throw new DOMException("no", "SecurityError");
      },
    });
    keepTiltZero(zero);
    expect(tiltZeros().upright).toEqual(zero);
    vi.unstubAllGlobals();
  });
});
