import type { LinkageFromFront } from "../../layouts/linkageFromFront.ts";
import {
  add,
  between,
  leaning,
  type Point,
  tyreRadius,
  tyreWidth,
  type View,
} from "../../shapes/geometry.ts";
import { Bar, Body, Coil, Disc, Ground, Joint, Line, TyreFromFront } from "../../shapes/parts.tsx";

/** Both arms with the knuckle between them, or the arm with its strut, the tire and the frame. */
export function LinkageScene({
  view,
  linkage,
  strutLean,
  standsOut,
}: {
  readonly view: View;
  readonly linkage: LinkageFromFront;
  readonly strutLean: number;
  /** The arm that is meant, where one of them is to be told at a glance. */
  readonly standsOut?: "upper" | "lower";
}) {
  const { lowerPivot, lowerJoint, upper, top, wheelCentre, groundY } = linkage;
  const hub = { x: wheelCentre.x - tyreWidth / 2 + 20, y: wheelCentre.y };
  return (
    <g>
      <Ground
        view={view}
        from={Math.min(lowerPivot.x, upper?.pivot.x ?? 0) - 90}
        to={wheelCentre.x + tyreWidth / 2 + 20}
        y={groundY}
      />
      <TyreFromFront view={view} centre={wheelCentre} />
      <Line
        view={view}
        dashed
        points={[
          add(wheelCentre, { x: 0, y: -tyreRadius - 14 }),
          add(wheelCentre, { x: 0, y: tyreRadius + 14 }),
        ]}
      />
      <Frame view={view} pivots={upper ? [lowerPivot, upper.pivot] : [lowerPivot]} />
      {top && <Strut view={view} top={top} lean={strutLean} hub={hub} />}
      <Bar
        view={view}
        tone="part"
        width={24}
        points={upper ? [lowerJoint, hub, upper.joint] : [lowerJoint, hub]}
      />
      <g class={standsOut === "lower" ? "stands-out" : undefined}>
        <Arm view={view} pivot={lowerPivot} joint={lowerJoint} />
      </g>
      {upper && (
        <g class={standsOut === "upper" ? "stands-out" : undefined}>
          <Arm view={view} pivot={upper.pivot} joint={upper.joint} />
        </g>
      )}
    </g>
  );
}

function Arm({
  view,
  pivot,
  joint,
}: {
  readonly view: View;
  readonly pivot: Point;
  readonly joint: Point;
}) {
  return (
    <g>
      <Bar view={view} tone="part" width={32} points={[pivot, joint]} />
      <Joint view={view} at={pivot} />
      <Disc view={view} tone="part" centre={joint} radius={20} least={4.5} />
    </g>
  );
}

function Frame({ view, pivots }: { readonly view: View; readonly pivots: readonly Point[] }) {
  const [lower = { x: 0, y: 0 }, upper = add(lower, { x: 0, y: 120 })] = pivots;
  return (
    <Line
      view={view}
      closed
      points={[
        { x: lower.x - 90, y: lower.y - 40 },
        { x: lower.x - 14, y: lower.y - 40 },
        { x: lower.x - 14, y: lower.y + 60 },
        { x: upper.x - 14, y: upper.y - 60 },
        { x: upper.x - 14, y: upper.y + 44 },
        { x: upper.x - 90, y: upper.y + 44 },
      ]}
    />
  );
}

function Strut({
  view,
  top,
  lean,
  hub,
}: {
  readonly view: View;
  readonly top: Point;
  readonly lean: number;
  readonly hub: Point;
}) {
  const axis = leaning(lean);
  const foot = add(top, axis, -Math.max(top.y - hub.y - 60, 120) / Math.max(axis.y, 0.5));
  const bodyTop = between(foot, top, 0.5);
  return (
    <g>
      <Bar view={view} width={24} points={[hub, foot]} />
      <Bar view={view} width={16} points={[bodyTop, top]} />
      <Body view={view} tone="context" from={foot} to={bodyTop} axis={axis} half={26} />
      <Coil
        view={view}
        foot={between(foot, top, 0.4)}
        head={add(top, axis, -14)}
        radius={72}
        coils={5}
        wire={14}
      />
      <Disc view={view} tone="part" centre={top} radius={30} least={6} />
    </g>
  );
}
