import { useId } from "preact/hooks";
import type { LayoutKind } from "../../physics/fitment.ts";
import { layoutWords } from "../readings/layoutWords.ts";
import { layoutPictures } from "./layoutPictures.ts";
import "./drawings.css";
import { drawnNumbers } from "./drawnNumbers.ts";
import { fitView, type Point } from "./geometry.ts";
import { Scene } from "./scenes.tsx";
import { type Skeleton, skeletonOf, tyreRadius, tyreWidth } from "./skeleton.ts";

const size = { width: 150, height: 120 } as const;

export function sceneBounds(skeleton: Skeleton): Point[] {
  const { wheelCentre, wheelRadius, archY, head, kind, fromSide } = skeleton;
  const out = wheelCentre.x + (fromSide ? wheelRadius : tyreWidth / 2) + 30;
  const inner = kind === "axle" ? -out : -100;
  const top = Math.max(archY + 30, head.y + 50);
  return [
    { x: inner, y: wheelCentre.y - wheelRadius - 20 },
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
  const numbers = drawnNumbers(kind, "gap", layoutPictures[kind].values);
  const skeleton = skeletonOf(kind, "gap", numbers);
  const view = fitView(
    kind === "axle" ? sceneBounds(skeleton) : pictureBounds(skeleton),
    { left: 4, top: 6, right: size.width - (kind === "axle" ? 4 : 0), bottom: size.height - 6 },
    1,
  );
  const { title, description } = layoutWords[kind];
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
