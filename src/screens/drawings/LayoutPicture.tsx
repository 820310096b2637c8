import { useId } from "preact/hooks";
import type { LayoutKind } from "../../physics/fitment.ts";
import "./drawings.css";
import { type DrawingValues, drawnNumbers } from "./drawnNumbers.ts";
import { fitView, type Point } from "./geometry.ts";
import { Scene } from "./scenes.tsx";
import { type Skeleton, skeletonOf, tyreRadius, tyreWidth } from "./skeleton.ts";

const words: { readonly [Kind in LayoutKind]: readonly [string, string] } = {
  arm: ["Stop on an arm", "A control arm swings up and meets a stop under the frame."],
  damper: ["Stop on a shock", "A shock stands on the arm; the stop sits on the shock's rod."],
  strut: [
    "Stop on a strut",
    "A strut carries the wheel; the stop sits on its rod, inside the spring.",
  ],
  axle: [
    "Stop over a beam axle",
    "One axle joins both wheels; a stop hangs from the frame over each end.",
  ],
};

/** Shown larger than life, so that the stop is found at a glance. */
const values: { readonly [Kind in LayoutKind]: DrawingValues } = {
  arm: {
    pivotToStop: 190,
    pivotToOuter: 420,
    armAngle: 9,
    gap: 40,
    freeHeight: 105,
    rideHeight: 470,
  },
  damper: {
    pivotToMount: 270,
    pivotToOuter: 420,
    stopLean: 14,
    damperLength: 470,
    gap: 70,
    freeHeight: 115,
    rideHeight: 470,
  },
  strut: { stopLean: 8, gap: 75, freeHeight: 120, rideHeight: 470 },
  axle: { track: 1500, stopSpacing: 780, gap: 70, freeHeight: 160, rideHeight: 500 },
};

const size = { width: 150, height: 120 } as const;

export function sceneBounds(skeleton: Skeleton): Point[] {
  const { wheelCentre, archY, head, kind } = skeleton;
  const out = wheelCentre.x + tyreWidth / 2 + 30;
  const inner = kind === "axle" ? -out : -100;
  const top = Math.max(archY + 30, head.y + 50);
  return [
    { x: inner, y: wheelCentre.y - tyreRadius - 20 },
    { x: out, y: top },
  ];
}

/** Nearer than the whole wheel, which is cut by the edge. */
function pictureBounds({ kind, wheelCentre, stopTop, head }: Skeleton): Point[] {
  return [
    { x: -50, y: wheelCentre.y - (kind === "arm" ? tyreRadius + 14 : 190) },
    { x: wheelCentre.x + tyreWidth / 2, y: kind === "arm" ? stopTop.y + 100 : head.y + 50 },
  ];
}

export interface LayoutPictureProps {
  readonly kind: LayoutKind;
}

/** A layout to choose by its looks, about 150 × 120 px; the stop stands out. */
export function LayoutPicture({ kind }: LayoutPictureProps) {
  const id = useId();
  const numbers = drawnNumbers(kind, "gap", values[kind]);
  const skeleton = skeletonOf(kind, "gap", numbers);
  const view = fitView(
    kind === "axle" ? sceneBounds(skeleton) : pictureBounds(skeleton),
    { left: 4, top: 6, right: size.width - (kind === "axle" ? 4 : 0), bottom: size.height - 6 },
    1,
  );
  const [title, description] = words[kind];
  return (
    <svg
      class="drawing layout-picture"
      viewBox={`0 0 ${size.width} ${size.height}`}
      role="img"
      aria-labelledby={`${id}-title ${id}-desc`}
    >
      <title id={`${id}-title`}>{title}</title>
      <desc id={`${id}-desc`}>{description}</desc>
      <Scene view={view} skeleton={skeleton} freeHeight={numbers.freeHeight} detail={false} />
    </svg>
  );
}
