import { describe, expect, it } from "vitest";
import { drawnNumbers } from "../../../src/screens/drawings/drawnNumbers.ts";
import { freeCorner, insetSize } from "../../../src/screens/drawings/Inset.tsx";
import { skeletonOf } from "../../../src/screens/drawings/skeletonOf.ts";
import { fitView, type Point } from "../../../src/screens/shapes/geometry.ts";

const frame = { left: 0, top: 24, right: 340, bottom: 216 };
const values = { armAngle: 40, stopLean: -7, pressedHeight: 38, freeHeight: 60 };

function placed(direction: 1 | -1, marks: readonly Point[] = []) {
  const skeleton = skeletonOf("arm", "stopLean", drawnNumbers("arm", "stopLean", values), "arm");
  const { pivot, outer, bend, pad } = skeleton;
  const view = fitView(
    [pivot, outer, bend, pad],
    { left: 90, top: 90, right: 250, bottom: 196 },
    direction,
  );
  const corner = freeCorner(skeleton, view, direction, marks, frame);
  const hides = ({ x, y }: Point) =>
    x >= corner.x &&
    x <= corner.x + insetSize.width &&
    y >= corner.y &&
    y <= corner.y + insetSize.height;
  return { corner, hides, points: [pivot, outer, bend, pad].map((point) => view.at(point)) };
}

describe.each([1, -1] as const)("the inset of a picture, outboard toward %s", (direction) => {
  it("hides neither end of an arm that carries its stop, nor its bend or the pad", () => {
    const { hides, points } = placed(direction);
    expect(points.filter(hides)).toEqual([]);
  });

  it("leaves a corner where a mark stands", () => {
    const { corner } = placed(direction);
    const mark = { x: corner.x + insetSize.width / 2, y: corner.y + insetSize.height / 2 };
    const { hides } = placed(direction, [mark]);
    expect(hides(mark)).toBe(false);
  });

  it("stands within the picture", () => {
    const { corner } = placed(direction);
    expect(corner.x).toBeGreaterThanOrEqual(frame.left);
    expect(corner.x + insetSize.width).toBeLessThanOrEqual(frame.right);
    expect(corner.y).toBeGreaterThanOrEqual(frame.top);
    expect(corner.y + insetSize.height).toBeLessThanOrEqual(frame.bottom);
  });
});
