import {
  add,
  arcPoints,
  between,
  distance,
  type Point,
  tyreWidth,
  type View,
} from "../shapes/geometry.ts";
import {
  Bar,
  Coil,
  Damper,
  Line,
  Plate,
  StopShape,
  type Tone,
  TyreFromFront,
  WheelFromSide,
} from "../shapes/parts.tsx";
import type { Skeleton } from "./skeleton.ts";

export interface SceneProps {
  readonly view: View;
  readonly skeleton: Skeleton;
  readonly freeHeight: number;
  /** Small pictures leave out what would only be a blot. */
  readonly detail?: boolean;
  /** "part" where the wheel itself is what is measured from. */
  readonly wheelTone?: Tone;
}

export function WheelAndBody({
  view,
  skeleton,
  tone = "context",
}: {
  readonly view: View;
  readonly skeleton: Skeleton;
  readonly tone?: Tone | undefined;
}) {
  const { wheelCentre, wheelRadius, archY } = skeleton;
  if (skeleton.fromSide) {
    return (
      <g>
        <Line
          view={view}
          points={arcPoints(wheelCentre, 1, 0, 180).map(({ x, y }) => ({
            x: wheelCentre.x + (x - wheelCentre.x) * (wheelRadius + 60),
            y: wheelCentre.y + (y - wheelCentre.y) * (archY - wheelCentre.y),
          }))}
        />
        <WheelFromSide view={view} tone={tone} centre={wheelCentre} radius={wheelRadius} />
      </g>
    );
  }
  const half = tyreWidth / 2;
  const out = wheelCentre.x + half + 22;
  const rise = 120;
  return (
    <g>
      <Line
        view={view}
        points={[
          { x: out - 6, y: archY - 24 },
          { x: out + 6, y: archY + 20 },
          { x: out, y: archY + rise },
          { x: out - 60, y: archY + rise + 40 },
          { x: out - 420, y: archY + rise + 60 },
        ]}
      />
      <Line
        view={view}
        tone={tone}
        points={[
          { x: out - 6, y: archY - 24 },
          { x: out - 14, y: archY },
          { x: wheelCentre.x - half - 30, y: archY },
          { x: wheelCentre.x - half - 60, y: archY - 60 },
        ]}
      />
      <TyreFromFront view={view} tone={tone} centre={wheelCentre} />
    </g>
  );
}

export function Knuckle({
  view,
  skeleton,
  to,
}: {
  readonly view: View;
  readonly skeleton: Skeleton;
  readonly to: Point;
}) {
  const { outer, wheelCentre } = skeleton;
  // Seen from the side the arm itself carries the wheel.
  if (skeleton.fromSide) return null;
  const hub = { x: wheelCentre.x - tyreWidth / 2 - 8, y: wheelCentre.y };
  return (
    <g>
      <Bar view={view} points={[hub, add(hub, { x: 40, y: 0 })]} width={70} />
      <Bar view={view} points={[outer, hub, to]} width={26} />
    </g>
  );
}

export function ArmBar({ view, skeleton }: { readonly view: View; readonly skeleton: Skeleton }) {
  const { pivot, outer, bend } = skeleton;
  const points =
    distance(pivot, bend) < distance(pivot, outer) ? [pivot, bend, outer] : [pivot, outer, bend];
  return <Bar view={view} tone="part" points={points} width={38} />;
}

export function ContextSpring({
  view,
  skeleton,
}: {
  readonly view: View;
  readonly skeleton: Skeleton;
}) {
  const { damperFoot, damperHead } = skeleton;
  return (
    <g>
      <Coil
        view={view}
        foot={between(damperFoot, damperHead, 0.3)}
        head={damperHead}
        radius={55}
        coils={6}
        wire={14}
      />
      <Bar view={view} points={[damperFoot, between(damperFoot, damperHead, 0.4)]} width={40} />
    </g>
  );
}

export function Rodded({
  view,
  skeleton,
  freeHeight,
  strut,
}: {
  readonly view: View;
  readonly skeleton: Skeleton;
  readonly freeHeight: number;
  readonly strut: boolean;
}) {
  const { foot, pad, head, axis, stopTop, stopFace } = skeleton;
  const height = distance(stopFace, stopTop);
  const seat = add(pad, axis, -0.3 * distance(foot, pad));
  return (
    <Damper view={view} foot={foot} bodyTop={pad} head={head}>
      {strut && <Coil view={view} foot={seat} head={stopTop} radius={78} coils={5} wire={14} />}
      {strut && <Plate view={view} middle={seat} axis={axis} half={88} />}
      <Plate view={view} middle={add(stopTop, axis, 3)} axis={axis} half={strut ? 88 : 44} />
      {skeleton.stop !== "missing" && (
        <StopShape
          view={view}
          top={stopTop}
          axis={axis}
          height={height}
          freeHeight={skeleton.stop === "pressed" ? freeHeight : height}
        />
      )}
    </Damper>
  );
}
