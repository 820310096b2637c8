import { layoutRegistry } from "../../physics/readings/index.ts";
import type { Skeleton } from "../layouts/skeleton.ts";
import { between, type Frame, fitView, type Point, tenths, type View } from "../shapes/geometry.ts";
import { sceneBounds } from "./LayoutPicture.tsx";
import { Scene } from "./Scene.tsx";

export const insetSize = { width: 96, height: 78 } as const;

/** What must not lie under the inset, px: the arm or rod with its ends, the stop, its mounts. */
function subjectOf(skeleton: Skeleton, view: View): Point[] {
  const { pivot, bend, outer, foot, head, pad, stopTop } = skeleton;
  const parts: [Point, Point][] = [
    ...(layoutRegistry[skeleton.kind].onRod
      ? []
      : ([
          [pivot, bend],
          [bend, outer],
        ] as [Point, Point][])),
    [foot, head],
    [pad, stopTop],
  ];
  const shares = [0, 0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875, 1];
  return parts.flatMap(([from, to]) => shares.map((share) => view.at(between(from, to, share))));
}

/** The corner of the picture in which the inset hides least of its subject and marks; inboard where several do. */
export function freeCorner(
  skeleton: Skeleton,
  view: View,
  direction: 1 | -1,
  marks: readonly Point[],
  frame: Frame,
): Point {
  const left = 4;
  const right = frame.right - insetSize.width - 4;
  const high = frame.top + 2;
  const low = frame.bottom - insetSize.height - 2;
  const [inner, outer] = direction === 1 ? [left, right] : [right, left];
  const subject = subjectOf(skeleton, view);
  const hidden = ({ x, y }: Point) => {
    const under = (at: Point, room: number) =>
      at.x > x - room &&
      at.x < x + insetSize.width + room &&
      at.y > y - room &&
      at.y < y + insetSize.height + room;
    return (
      subject.filter((at) => under(at, 14)).length + 3 * marks.filter((at) => under(at, 4)).length
    );
  };
  const corners = [inner, outer].flatMap((x) => [high, low].map((y) => ({ x, y })));
  return corners.reduce((best, corner) => (hidden(corner) < hidden(best) ? corner : best));
}

export function Inset({
  corner,
  skeleton,
  freeHeight,
  direction,
  atDamper,
}: {
  /** Its upper left corner, px. */
  readonly corner: Point;
  readonly skeleton: Skeleton;
  readonly freeHeight: number;
  readonly direction: 1 | -1;
  readonly atDamper: boolean;
}) {
  const { x, y } = corner;
  const view: View = fitView(
    sceneBounds(skeleton),
    { left: 4, top: 4, right: insetSize.width - 4, bottom: insetSize.height - 4 },
    direction,
  );
  const { pad, stopTop, damperFoot, damperHead } = skeleton;
  const [from, to] = atDamper ? [damperFoot, damperHead] : [pad, stopTop];
  const middle = view.at({ x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 });
  return (
    <svg
      class="inset"
      x={x}
      y={y}
      width={insetSize.width}
      height={insetSize.height}
      aria-hidden="true"
    >
      <rect width={insetSize.width} height={insetSize.height} rx={8} />
      <Scene view={view} skeleton={skeleton} freeHeight={freeHeight} detail={atDamper} />
      <circle class="here" cx={tenths(middle.x)} cy={tenths(middle.y)} r={13} />
    </svg>
  );
}
