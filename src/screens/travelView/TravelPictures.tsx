import { useMemo } from "preact/hooks";
import { type Frame, fitView, type Point, type View } from "../shapes/geometry.ts";
import "../drawings/drawings.css";
import { AroundStop } from "./AroundStop.tsx";
import { CornerScene } from "./CornerScene.tsx";
import type { DrawnCorner } from "./drawnCorner.ts";
import { ClashMark, GhostStop } from "./stopMarks.tsx";
import "./travelView.css";

const whole = { width: 236, height: 262 } as const;
const near = { width: 124, height: 262 } as const;

/** Where body, wheel and road are: the body over its place at ride, the road under the wheel, mm. */
export interface Placed {
  readonly travelMm: number;
  readonly bodyMm: number;
  readonly roadMm: number;
}

/** The wheel raised against a body that stands still, the road following the tire. */
export function pushedUp(travelMm: number): Placed {
  return { travelMm, bodyMm: 0, roadMm: travelMm };
}

function framed({ width, height }: { readonly width: number; readonly height: number }): Frame {
  return { left: 6, top: 6, right: width - 6, bottom: height - 6 };
}

/** The whole picture moves with the body, so that the parts fixed to it stay as they are drawn. */
function lowered(view: View, bodyMm: number): string {
  const [still, moved] = [view.at({ x: 0, y: 0 }), view.at({ x: 0, y: bodyMm })];
  return `translate(${(moved.x - still.x).toFixed(2)} ${(moved.y - still.y).toFixed(2)})`;
}

/** One corner as it stands at ride, for paper. */
export function TravelStill({
  corner,
  direction,
  words,
}: {
  readonly corner: DrawnCorner;
  readonly direction: 1 | -1;
  readonly words: string;
}) {
  return (
    <svg
      class="drawing travel-still"
      viewBox={`0 0 ${whole.width} ${whole.height}`}
      role="img"
      aria-label={words}
    >
      <CornerScene
        view={fitView(corner.bounds, framed(whole), direction)}
        corner={corner}
        drawn={corner.atRide}
        ground={corner.groundY}
      />
    </svg>
  );
}

/** The corner to scale, and its stop nearer by. */
export function TravelPictures({
  corner,
  ghost,
  placed,
  direction,
  words,
}: {
  readonly corner: DrawnCorner;
  /** The prescribed stop on the same corner. */
  readonly ghost: DrawnCorner | null;
  readonly placed: Placed;
  readonly direction: 1 | -1;
  readonly words: string;
}) {
  const views = useMemo(
    () => ({
      whole: fitView(corner.bounds, framed(whole), direction),
      near: fitView(nearBounds(corner), framed(near), direction),
    }),
    [corner, direction],
  );
  const drawn = corner.at(placed.travelMm);
  const ghostDrawn = ghost?.at(placed.travelMm) ?? null;
  const first = drawn.clashes.reduce<(typeof drawn.clashes)[number] | null>(
    (least, clash) => (least && least.limit.travelMm <= clash.limit.travelMm ? least : clash),
    null,
  );
  const [low, high] = nearBounds(corner);
  const [a, b] = [low, high].map(views.whole.at) as [Point, Point];
  return (
    <div class="travel-pictures" role="img" aria-label={words}>
      <svg
        class="drawing travel-whole"
        viewBox={`0 0 ${whole.width} ${whole.height}`}
        aria-hidden="true"
      >
        <g transform={lowered(views.whole, placed.bodyMm)}>
          <CornerScene
            view={views.whole}
            corner={corner}
            drawn={drawn}
            ground={corner.groundY + placed.roadMm - placed.bodyMm}
          />
          <rect
            class="near-here"
            x={Math.min(a.x, b.x)}
            y={Math.min(a.y, b.y)}
            width={Math.abs(a.x - b.x)}
            height={Math.abs(a.y - b.y)}
            rx={5}
          />
          {first && <ClashMark view={views.whole} clash={first} />}
        </g>
      </svg>
      <svg
        class="drawing travel-near"
        viewBox={`0 0 ${near.width} ${near.height}`}
        aria-hidden="true"
      >
        <AroundStop view={views.near} corner={corner} drawn={drawn} />
        {ghost && ghostDrawn && <GhostStop view={views.near} corner={ghost} drawn={ghostDrawn} />}
        {first && drawn.moment.pose.rod === null && <ClashMark view={views.near} clash={first} />}
      </svg>
    </div>
  );
}

/** Around seat and pad as they stand at ride, as wide as the picture of them is. */
function nearBounds({ atRide, travel, stopOnArm }: DrawnCorner): readonly [Point, Point] {
  const { seat, pad } = atRide.moment.pose;
  const [low, high] = [Math.min(seat.y, pad.y), Math.max(seat.y, pad.y)];
  const tall = high - low + 100;
  const wide = Math.max((tall * near.width) / near.height, travel.freeHeightMm * 1.5) / 2;
  const x = stopOnArm ? pad.x : (seat.x + pad.x) / 2;
  return [
    { x: x - wide, y: low - 56 },
    { x: x + wide, y: high + 44 },
  ];
}
