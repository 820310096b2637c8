import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { turningPlace } from "../../../src/physics/impact/turningPlace.ts";

type Curve = (theta: number) => number;

/** Where a curve turns, and the places at which it was asked for. */
function turn(curve: Curve, upTo = 1, slack = 1e-10) {
  const asked: number[] = [];
  let last = Number.NaN;
  const theta = turningPlace(
    {
      standing(place) {
        asked.push(place);
        last = curve(place);
        return last;
      },
      isTurning: () => Math.abs(last) <= slack,
    },
    upTo,
  );
  return { theta, asked };
}

describe("the place where a measure turns", () => {
  it("is found at once on a straight line", () => {
    for (const root of [0.001, 0.3, 0.999]) {
      const { theta, asked } = turn((place) => 5 * (root - place));
      expect(theta).toBeCloseTo(root, 12);
      expect(asked).toEqual([0, 1, theta]);
    }
  });

  it("is found in few looks on bent curves, from either side", () => {
    // Plain false position needs 25, 26, 203, 7, 28 and some thousand looks.
    for (const [most, curve] of [
      [13, (place) => Math.exp(-8 * place) - Math.exp(-0.8)],
      [13, (place) => 1 - Math.exp(8 * (place - 0.9))],
      [13, (place) => 0.2 ** 3 - place ** 3],
      [8, (place) => Math.cos(2.5 * place) + 0.1],
      [13, (place) => 1 - (place / 0.9) ** 9],
      [24, (place) => (1 - place) ** 9 - 0.1 ** 9 * 1e5],
    ] as [number, Curve][]) {
      const { theta, asked } = turn(curve);
      expect(Math.abs(curve(theta))).toBeLessThanOrEqual(1e-10);
      expect(asked.length).toBeLessThanOrEqual(most);
    }
  });

  it("is looked for up to a given place only", () => {
    const { theta, asked } = turn((place) => Math.cos(4 * place), 0.5);
    expect(theta).toBeCloseTo(Math.PI / 8, 9);
    expect(asked.slice(0, 2)).toEqual([0, 0.5]);
    expect(Math.max(...asked)).toBe(0.5);
  });

  it("is the later one where a measure begins at 0 or below it and rises first", () => {
    for (const start of [0, -1e-4]) {
      const curve: Curve = (place) => start + place * (0.7 - place);
      const { theta, asked } = turn(curve);
      expect(Math.abs(curve(theta))).toBeLessThanOrEqual(1e-10);
      expect(theta).toBeGreaterThan(0.69);
      expect(asked.slice(0, 3)).toEqual([0, 1, 0.5]);
    }
  });

  it("is found where the measure is positive near the start only", () => {
    // Past its turn it is next to nothing, so that a line from there would lead far astray.
    const curve: Curve = (place) => place * (0.1 - place) * Math.exp(-30 * place);
    const { theta, asked } = turn(curve, 1, 1e-16);
    expect(theta).toBeCloseTo(0.1, 9);
    expect(asked.slice(0, 6)).toEqual([0, 1, 0.5, 0.25, 0.125, 0.0625]);
    expect(Math.max(...asked.slice(6))).toBeLessThan(0.125);
  });

  it("is looked for as the rule's authors put it: the end that stays counts half", () => {
    for (const curve of [
      (place) => 0.2 ** 3 - place ** 3,
      (place) => Math.exp(-8 * place) - Math.exp(-0.8),
      (place) => 1 - Math.exp(8 * (place - 0.9)),
    ] as Curve[]) {
      // Dowell & Jarratt, BIT 11 (1971) 168 (from memory).
      let [before, atBefore] = [0, curve(0)];
      let [last, atLast] = [1, curve(1)];
      const wanted = [before, last];
      while (wanted.length < 11) {
        const next = last - (atLast * (last - before)) / (atLast - atBefore);
        const atNext = curve(next);
        wanted.push(next);
        if (atNext * atLast < 0) [before, atBefore] = [last, atLast];
        // The first line has no end that stayed yet.
        else if (wanted.length > 3) atBefore /= 2;
        [last, atLast] = [next, atNext];
      }
      expect(turn(curve).asked.slice(0, 11)).toEqual(wanted.map((at) => expect.closeTo(at, 10)));
    }
  });

  it("is the start where the measure is nowhere seen positive", () => {
    for (const curve of [(place) => -place, () => -1, () => 0, () => Number.NaN] as Curve[]) {
      const { theta, asked } = turn(curve);
      expect(theta).toBe(0);
      // Halved down to a millionth.
      expect(asked).toHaveLength(2 + 19);
      expect(Math.min(...asked.slice(1))).toBeCloseTo(2 ** -19, 12);
    }
  });

  it("is just past a jump, where no look is as good as 0", () => {
    for (const jump of [0.37, 0.9]) {
      const { theta, asked } = turn((place) => (place < jump ? 1 : -1));
      expect(theta).toBeGreaterThanOrEqual(jump);
      expect(theta - jump).toBeLessThan(2e-12);
      // Ended by the width of what is left, before 60 looks are through.
      expect(asked.length).toBeLessThan(58);
    }
  });

  it("is given up after 60 looks where a curve is flat as a board, on its far side", () => {
    const curve: Curve = (place) => (0.3 - place) ** 31 * 1e6;
    const { theta, asked } = turn(curve, 1, 0);
    expect(asked).toHaveLength(62);
    expect(curve(theta)).toBeLessThanOrEqual(0);
  });

  it("is never before the last place that was seen positive, nor past the first that was not", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 0.999, noNaN: true }),
        fc.double({ min: -0.9, max: 3, noNaN: true }),
        (root, bend) => {
          const curve: Curve = (place) => (root - place) * (1 + bend * place);
          const { theta } = turn(curve);
          expect(Math.abs(theta - root)).toBeLessThan(2e-9);
        },
      ),
    );
  });
});
