import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  arcPoints,
  belowHorizontal,
  distance,
  fitView,
  fitViewAndMarks,
  leaning,
  type Point,
  pathThrough,
  planAngle,
  planDimension,
} from "../../../src/screens/shapes/geometry.ts";

const frame = { left: 20, top: 30, right: 320, bottom: 200 };
const place = fc.record({
  x: fc.double({ min: -3000, max: 3000, noNaN: true }),
  y: fc.double({ min: -3000, max: 3000, noNaN: true }),
});
const direction = fc.constantFrom(1, -1) as fc.Arbitrary<1 | -1>;
const degrees = fc.double({ min: -80, max: 80, noNaN: true });

describe("directions", () => {
  it("takes the outer end lower and the top toward the pivot as positive", () => {
    expect(belowHorizontal(30).x).toBeCloseTo(Math.sqrt(3) / 2, 12);
    expect(belowHorizontal(30).y).toBeCloseTo(-0.5, 12);
    expect(leaning(30).x).toBeCloseTo(-0.5, 12);
    expect(leaning(30).y).toBeCloseTo(Math.sqrt(3) / 2, 12);
  });

  it("keeps an arc on its circle, from its first direction to its last", () => {
    const arc = arcPoints({ x: 5, y: -2 }, 40, 0, -90);
    expect(arc[0]).toEqual({ x: 45, y: -2 });
    expect(arc.at(-1)?.x).toBeCloseTo(5, 9);
    expect(arc.at(-1)?.y).toBeCloseTo(-42, 9);
    for (const point of arc) expect(distance(point, { x: 5, y: -2 })).toBeCloseTo(40, 9);
  });
});

describe("fitView", () => {
  it("shows every point inside the frame and every length at one scale", () => {
    fc.assert(
      fc.property(
        fc.array(place, { minLength: 1, maxLength: 8 }),
        direction,
        place,
        place,
        (points, way, a, b) => {
          const view = fitView(points, frame, way);
          expect(view.scale).toBeGreaterThan(0);
          for (const { x, y } of points.map(view.at)) {
            expect(x).toBeGreaterThanOrEqual(frame.left - 1e-6);
            expect(x).toBeLessThanOrEqual(frame.right + 1e-6);
            expect(y).toBeGreaterThanOrEqual(frame.top - 1e-6);
            expect(y).toBeLessThanOrEqual(frame.bottom + 1e-6);
          }
          expect(distance(view.at(a), view.at(b))).toBeCloseTo(view.scale * distance(a, b), 6);
        },
      ),
    );
  });

  it("mirrors outboard and never up", () => {
    const points = [
      { x: 0, y: 0 },
      { x: 400, y: 100 },
    ];
    const right = fitView(points, frame, 1);
    const left = fitView(points, frame, -1);
    const middle = frame.left + frame.right;
    for (const point of points) {
      expect(right.at(point).x + left.at(point).x).toBeCloseTo(middle, 9);
      expect(right.at(point).y).toBeCloseTo(left.at(point).y, 9);
    }
    expect(right.turned({ x: 1, y: 0 })).toEqual({ x: 1, y: -0 });
    expect(left.turned({ x: 1, y: 0 }).x).toBe(-1);
  });
});

describe("fitViewAndMarks", () => {
  it("makes room for marks that would fall outside", () => {
    const points = [
      { x: 0, y: 0 },
      { x: 300, y: 170 },
    ];
    const room = { left: 0, top: 0, right: 340, bottom: 216 };
    const below = (view: { at(point: Point): Point }) => {
      const { x, y } = view.at({ x: 150, y: 0 });
      return [{ x, y: y + 60 }];
    };
    const free = fitView(points, frame, 1);
    expect(below(free)[0]?.y).toBeGreaterThan(room.bottom);
    const made = fitViewAndMarks(points, frame, 1, below, room);
    expect(below(made)[0]?.y).toBeLessThanOrEqual(room.bottom + 0.5);
    expect(made.scale).toBeLessThan(free.scale);
  });
});

describe("planDimension", () => {
  const size = { width: 90, height: 26 };
  const whole = { left: 0, top: 24, right: 340, bottom: 216 };

  it("runs beside the two points, on the side asked for, with its letters apart", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 150, noNaN: true }),
        fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
        fc.record({ x: fc.integer({ min: 0, max: 340 }), y: fc.integer({ min: 24, max: 216 }) }),
        (length, angle, a) => {
          const along = { x: Math.cos(angle), y: Math.sin(angle) };
          const b = { x: a.x + length * along.x, y: a.y + length * along.y };
          const away = { x: 0.6, y: 0.8 };
          const everywhere = { left: -1e4, top: -1e4, right: 1e4, bottom: 1e4 };
          const plan = planDimension(a, b, along, away, 40, size, everywhere);
          const shift = { x: plan.lineA.x - a.x, y: plan.lineA.y - a.y };
          expect(Math.hypot(shift.x, shift.y)).toBeCloseTo(40, 9);
          expect(shift.x * along.x + shift.y * along.y).toBeCloseTo(0, 9);
          expect(shift.x * away.x + shift.y * away.y).toBeGreaterThanOrEqual(-1e-9);
          expect(distance(plan.lineA, plan.lineB)).toBeCloseTo(length, 9);
          expect(distance(plan.badgeA, plan.badgeB)).toBeGreaterThanOrEqual(29.9);
          const kept = planDimension(a, b, along, away, 40, size, whole);
          for (const mark of [kept.badgeA, kept.badgeB, kept.label]) {
            expect(mark.x).toBeGreaterThanOrEqual(11);
            expect(mark.x).toBeLessThanOrEqual(329);
            expect(mark.y).toBeGreaterThanOrEqual(35);
            expect(mark.y).toBeLessThanOrEqual(205);
          }
        },
      ),
    );
  });
});

describe("planAngle", () => {
  it("draws the angle itself, its arc from the reference to the line, and plus the positive way", () => {
    fc.assert(
      fc.property(degrees, direction, (value, way) => {
        const view = fitView(
          [
            { x: -500, y: -500 },
            { x: 500, y: 500 },
          ],
          frame,
          way,
        );
        const vertex = { x: 0, y: 0 };
        const plan = planAngle(view, vertex, 0, -value, -1, 300, { width: 60, height: 26 }, frame);
        const at = plan.vertex;
        const line = { x: way * (plan.lineEnd.x - at.x), y: plan.lineEnd.y - at.y };
        expect((Math.atan2(line.y, line.x) * 180) / Math.PI).toBeCloseTo(value, 6);
        const plusTip = plan.plusArc.at(-1) ?? at;
        expect(plusTip.y).toBeGreaterThan(at.y);
        const first = plan.arc[0] ?? at;
        expect(first.y).toBeCloseTo(at.y, 6);
      }),
    );
  });

  it("keeps the number clear of what stands beside the reference", () => {
    const view = fitView(
      [
        { x: -500, y: -500 },
        { x: 500, y: 500 },
      ],
      frame,
      1,
    );
    const size = { width: 60, height: 26 };
    for (const line of [90, 98, 82]) {
      const { vertex, label } = planAngle(view, { x: 0, y: 0 }, 90, line, 1, 300, size, frame, 80);
      expect(Math.abs(label.x - vertex.x) - size.width / 2).toBeCloseTo(80 * view.scale, 6);
    }
  });
});

describe("pathThrough", () => {
  it("writes tenths of a px", () => {
    const points = [
      { x: 1.26, y: -0.04 },
      { x: 10, y: 2.349 },
    ];
    expect(pathThrough(points)).toBe("M1.3 0L10 2.3");
    expect(pathThrough(points, true)).toBe("M1.3 0L10 2.3Z");
  });
});
