import fc from "fast-check";
import { mad, median } from "mathjs";
import { describe, expect, it } from "vitest";
import { medianOf, robustScatter } from "../../src/sensors/median.ts";
import { leanToRight, longEdgeFall } from "../../src/sensors/phoneAngle.ts";
import { sampleEveryMs, TiltSamples } from "../../src/sensors/tiltSamples.ts";

const numbers = fc.array(fc.double({ min: -90, max: 90, noNaN: true }), { minLength: 1 });

describe("median and scatter", () => {
  it("are those of mathjs", () => {
    fc.assert(
      fc.property(numbers, (values) => {
        expect(medianOf(values)).toBeCloseTo(median(values) as number, 10);
        // 1/Φ⁻¹(0.75) = 1.482602… (any table of the normal distribution).
        expect(robustScatter(values)).toBeCloseTo(1.482602 * (mad(values) as number), 3);
      }),
    );
  });

  it("stay put when less than half of the samples are spoilt", () => {
    const good = Array.from({ length: 21 }, (_, index) => 8 + (index - 10) * 0.01);
    const spoilt = [...good, ...Array.from({ length: 19 }, () => 60)];
    expect(Math.abs(medianOf(spoilt) - 8)).toBeLessThan(0.11);
  });

  it("give a normal scatter's standard deviation", () => {
    const random = normals(7);
    const values = Array.from({ length: 20_000 }, () => 0.2 * random());
    expect(robustScatter(values)).toBeGreaterThan(0.2 * 0.98);
    expect(robustScatter(values)).toBeLessThan(0.2 * 1.02);
  });
});

/** Normal numbers from a small generator with a fixed seed (Lehmer, Box–Muller). */
function normals(seed: number): () => number {
  let state = seed;
  const next = () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
  return () => Math.sqrt(-2 * Math.log(next())) * Math.cos(2 * Math.PI * next());
}

interface Held {
  readonly beta: (ms: number) => number;
  readonly gamma?: number;
  readonly ms?: number;
  readonly from?: number;
  /** Acceleration as well: the browser's sign of life. */
  readonly motion?: boolean;
}

/** Feeds events as a browser does: orientation rounded to 0.1° and none where nothing changed, motion always. */
function feed(
  samples: TiltSamples,
  { beta, gamma = 88, ms = 1200, from = 0, motion = true }: Held,
): number {
  let last: number | null = null;
  for (let at = from; at <= from + ms; at += sampleEveryMs) {
    const rounded = Math.round(beta(at) * 10) / 10;
    if (rounded !== last) samples.orientation(at, rounded, gamma);
    if (motion) {
      const b = (rounded * Math.PI) / 180;
      samples.motion(at, -9.8 * Math.cos(b), 9.8 * Math.sin(b), 0);
    }
    last = rounded;
    samples.sample(at);
  }
  return from + ms;
}

describe("a second of samples", () => {
  it("is silent before the first event, and for an event without numbers", () => {
    const samples = new TiltSamples();
    samples.orientation(0, null, null);
    samples.motion(0, null, null, null);
    samples.sample(0);
    expect(samples.heard).toBe(false);
    expect(samples.state(0, longEdgeFall)).toEqual({ state: "silent" });
  });

  it("gives the median of a noisy phone that is held still, with its scatter", () => {
    const samples = new TiltSamples();
    const random = normals(11);
    const at = feed(samples, { beta: () => -8.4 + 0.15 * random() });
    const state = samples.state(at, longEdgeFall);
    if (state.state !== "still") throw new Error(state.state);
    expect(Math.abs(state.reading.degrees - 8.4)).toBeLessThanOrEqual(0.1);
    expect(state.reading.scatterDegrees).toBeGreaterThan(0.08);
    expect(state.reading.scatterDegrees).toBeLessThan(0.25);
    expect(state.reading.source).toBe("orientation");
    expect(samples.heard).toBe(true);
  });

  it("holds the last angle while a still phone sends only accelerations, and hears of a silence", () => {
    const samples = new TiltSamples();
    const at = feed(samples, { beta: () => -8.4 });
    expect(samples.state(at, longEdgeFall).state).toBe("still");
    expect(samples.state(at + 1400, longEdgeFall).state).not.toBe("silent");
    expect(samples.state(at + 1600, longEdgeFall).state).toBe("silent");
  });

  it("does not take a browser too busy to tell for a phone that is held still", () => {
    const samples = new TiltSamples();
    const at = feed(samples, { beta: () => -8.4, motion: false });
    expect(samples.state(at, longEdgeFall).state).toBe("moving");
    const shaken = feed(samples, { beta: (ms) => -8 + 4 * Math.sin(ms / 30), from: at });
    for (let ms = 0; ms <= 1200; ms += sampleEveryMs) samples.sample(shaken + ms);
    expect(samples.state(shaken + 1200, longEdgeFall).state).toBe("moving");
  });

  it.each([
    ["turns slowly along the line", (ms: number) => -8 + ms / 1000],
    ["shakes", (ms: number) => -8 + 2 * Math.sin(ms / 40)],
    ["was set down half a second ago", (ms: number) => (ms < 700 ? -20 : -8)],
  ])("is moving where the phone %s", (_, beta) => {
    const samples = new TiltSamples();
    const at = feed(samples, { beta });
    const state = samples.state(at, longEdgeFall);
    expect(state.state).toBe("moving");
    if (state.state === "moving") expect(state.degrees).not.toBeNull();
  });

  it("is moving where the phone rolls about the edge that is measured", () => {
    const samples = new TiltSamples();
    for (let at = 0; at <= 1200; at += sampleEveryMs) {
      samples.orientation(at, -8, 60 + at / 100);
      samples.sample(at);
    }
    expect(samples.state(1200, longEdgeFall).state).toBe("moving");
  });

  it("is moving until nine tenths of a second have passed, and since the time asked for", () => {
    const samples = new TiltSamples();
    const at = feed(samples, { beta: () => -8, ms: 800 });
    expect(samples.state(at, longEdgeFall).state).toBe("moving");
    const later = feed(samples, { beta: () => -8, ms: 1000, from: at });
    expect(samples.state(later, longEdgeFall).state).toBe("still");
    expect(samples.state(later, longEdgeFall, later - 300).state).toBe("moving");
    expect(samples.state(later, longEdgeFall, later).state).toBe("moving");
  });

  it("is moving where the acceleration is not gravity's, and has no angle while it never was", () => {
    const samples = new TiltSamples();
    const at = feed(samples, { beta: () => -8 });
    samples.motion(at + 5, 0, 0, 20);
    samples.sample(at + sampleEveryMs);
    expect(samples.state(at + sampleEveryMs, longEdgeFall).state).toBe("moving");
    const thrown = new TiltSamples();
    for (let ms = 0; ms <= 1200; ms += sampleEveryMs) {
      thrown.motion(ms, 0, 0, 20);
      thrown.sample(ms);
    }
    expect(thrown.state(1200, longEdgeFall)).toEqual({
      state: "moving",
      up: null,
      degrees: null,
    });
  });

  it("takes the acceleration where there is no orientation", () => {
    const samples = new TiltSamples();
    for (let at = 0; at <= 1200; at += sampleEveryMs) {
      // Upright, leaning 10° to the right: up is (−sin 10°, cos 10°, 0).
      samples.motion(at, -1.70291, 9.65766, 0);
      samples.sample(at);
    }
    const state = samples.state(1200, leanToRight);
    if (state.state !== "still") throw new Error(state.state);
    expect(state.reading.degrees).toBeCloseTo(10, 3);
    expect(state.reading.source).toBe("motion");
  });

  it("does not mind a browser that gives the acceleration with its sign reversed", () => {
    const samples = new TiltSamples();
    for (let at = 0; at <= 1200; at += sampleEveryMs) {
      samples.orientation(at, 80, 0);
      samples.motion(at, 0, -9.66, -1.7);
      samples.sample(at);
    }
    const state = samples.state(1200, leanToRight);
    if (state.state !== "still") throw new Error(state.state);
    expect(state.reading.degrees).toBeCloseTo(0, 9);
    expect(state.reading.source).toBe("orientation");
  });

  it("shows the mean direction, for the way the phone lies", () => {
    const samples = new TiltSamples();
    const at = feed(samples, { beta: () => 0, gamma: 90 });
    const state = samples.state(at, longEdgeFall);
    if (state.state !== "still") throw new Error(state.state);
    expect(state.reading.up.x).toBeCloseTo(-1, 6);
  });
});
