import { useId } from "preact/hooks";
import type { LayoutKind } from "../../physics/fitment.ts";
import { layoutRegistry } from "../../physics/readings/index.ts";
import { layoutsOnScreen } from "../layouts/layoutsOnScreen.ts";
import "./drawings.css";
import type { Skeleton } from "../layouts/skeleton.ts";
import { fitView, type Point, tyreWidth } from "../shapes/geometry.ts";
import { drawnNumbers } from "./drawnNumbers.ts";
import { Scene } from "./Scene.tsx";
import { skeletonOf } from "./skeletonOf.ts";

const size = { width: 150, height: 120 } as const;

export function sceneBounds(skeleton: Skeleton): Point[] {
  const { wheelCentre, wheelRadius, archY, head, kind, fromSide } = skeleton;
  const out = wheelCentre.x + (fromSide ? wheelRadius : tyreWidth / 2) + 30;
  const inner = layoutRegistry[kind].joinsWheels ? -out : -100;
  const top = Math.max(archY + 30, head.y + 50);
  return [
    { x: inner, y: wheelCentre.y - wheelRadius - 20 },
    { x: out, y: top },
  ];
}

export interface LayoutPictureProps {
  readonly kind: LayoutKind;
}

/** A layout to choose by its looks, about 150 × 120 px; the stop stands out. */
export function LayoutPicture({ kind }: LayoutPictureProps) {
  const id = useId();
  const { words, picture } = layoutsOnScreen[kind];
  const numbers = drawnNumbers(kind, "gap", picture.values);
  const skeleton = skeletonOf(kind, "gap", numbers);
  // Nearer than the whole wheel, which is cut by the edge.
  const cut = picture.bounds(skeleton);
  const view = fitView(
    cut ?? sceneBounds(skeleton),
    { left: 4, top: 6, right: size.width - (cut === null ? 4 : 0), bottom: size.height - 6 },
    1,
  );
  const { title, description } = words;
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
