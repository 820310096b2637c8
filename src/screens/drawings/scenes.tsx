import {
  add,
  arcPoints,
  between,
  distance,
  type Point,
  quarterTurn,
  type View,
} from "./geometry.ts";
import {
  Bar,
  Body,
  Box,
  Coil,
  Damper,
  Disc,
  Ground,
  Joint,
  Line,
  Plate,
  StopShape,
  type Tone,
  TyreFromFront,
  WheelFromSide,
} from "./parts.tsx";
import { axleTubeRadius, type Skeleton, tyreWidth } from "./skeleton.ts";

interface SceneProps {
  readonly view: View;
  readonly skeleton: Skeleton;
  readonly freeHeight: number;
  /** Small pictures leave out what would only be a blot. */
  readonly detail?: boolean;
  /** "part" where the wheel itself is what is measured from. */
  readonly wheelTone?: Tone;
}

/** The layout as it stands, seen along the vehicle. */
export function Scene(props: SceneProps) {
  const { view, skeleton } = props;
  const Layout = layouts[skeleton.kind];
  const { wheelCentre, wheelRadius, fromSide } = skeleton;
  const out = wheelCentre.x + (fromSide ? wheelRadius : tyreWidth / 2) + 22;
  return (
    <g>
      <Ground
        view={view}
        from={skeleton.kind === "axle" ? -out : fromSide ? -300 : -120}
        to={out}
        y={wheelCentre.y - wheelRadius}
      />
      <Layout {...props} />
    </g>
  );
}

const layouts = { arm: ArmScene, damper: DamperScene, strut: StrutScene, axle: AxleScene };

function WheelAndBody({
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

function Knuckle({
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

function ArmBar({ view, skeleton }: { readonly view: View; readonly skeleton: Skeleton }) {
  const { pivot, outer, bend } = skeleton;
  const points =
    distance(pivot, bend) < distance(pivot, outer) ? [pivot, bend, outer] : [pivot, outer, bend];
  return <Bar view={view} tone="part" points={points} width={38} />;
}

function ArmScene({ view, skeleton, freeHeight, detail = true, wheelTone }: SceneProps) {
  const { pivot, outer, bend, pad, stopFace, stopTop, axis, wheelCentre, stopHeight } = skeleton;
  const { stopOnArm } = skeleton;
  const side = quarterTurn(axis);
  const upperJoint = { x: wheelCentre.x - 140, y: wheelCentre.y + 165 };
  const onFrame = stopOnArm ? pad : stopTop;
  const onArm = stopOnArm ? stopTop : pad;
  const railTop = onFrame.y + 95;
  const railOut = onFrame.x + 58;
  return (
    <g>
      <WheelAndBody view={view} skeleton={skeleton} tone={wheelTone} />
      {detail && !skeleton.fromSide && <ContextSpring view={view} skeleton={skeleton} />}
      <Knuckle view={view} skeleton={skeleton} to={upperJoint} />
      {!skeleton.fromSide && (
        <Bar
          view={view}
          points={[upperJoint, { x: Math.min(70, upperJoint.x - 80), y: railTop + 60 }]}
          width={26}
        />
      )}
      <Line
        view={view}
        closed
        points={[
          { x: -40, y: -22 },
          { x: 34, y: -22 },
          { x: 40, y: onFrame.y + 8 },
          add(add(onFrame, axis, 8), side, 50),
          add(add(onFrame, axis, 8), side, -50),
          { x: railOut, y: onFrame.y + 22 },
          { x: railOut, y: railTop },
          { x: -40, y: railTop },
        ]}
      />
      <ArmBar view={view} skeleton={skeleton} />
      <Body view={view} from={add(bend, axis, 8)} to={onArm} axis={axis} half={34} />
      <Joint view={view} at={pivot} />
      {detail && <Joint view={view} at={outer} />}
      <Plate view={view} middle={add(onFrame, axis, 4)} axis={axis} half={44} />
      {skeleton.stop !== "missing" && (
        <StopShape
          view={view}
          top={stopTop}
          axis={stopOnArm ? { x: -axis.x, y: -axis.y } : axis}
          height={distance(stopFace, stopTop)}
          freeHeight={Math.max(stopHeight, freeHeight)}
        />
      )}
    </g>
  );
}

function ContextSpring({ view, skeleton }: { readonly view: View; readonly skeleton: Skeleton }) {
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

function Rodded({
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

function DamperScene({ view, skeleton, freeHeight, detail = true, wheelTone }: SceneProps) {
  const { pivot, outer, head, wheelCentre } = skeleton;
  const top = head.y + 40;
  return (
    <g>
      <WheelAndBody view={view} skeleton={skeleton} tone={wheelTone} />
      <Knuckle view={view} skeleton={skeleton} to={add(wheelCentre, { x: -140, y: 150 })} />
      <Line
        view={view}
        closed
        points={[
          { x: -40, y: -22 },
          { x: 34, y: -22 },
          { x: 34, y: head.y - 46 },
          { x: head.x + 50, y: head.y + 6 },
          { x: head.x + 50, y: top },
          { x: -40, y: top },
        ]}
      />
      <ArmBar view={view} skeleton={skeleton} />
      <Joint view={view} at={pivot} />
      {detail && <Joint view={view} at={outer} />}
      <Rodded view={view} skeleton={skeleton} freeHeight={freeHeight} strut={false} />
    </g>
  );
}

function StrutScene({ view, skeleton, freeHeight, detail = true, wheelTone }: SceneProps) {
  const { pivot, outer, head, foot, axis } = skeleton;
  const side = quarterTurn(axis);
  return (
    <g>
      <WheelAndBody view={view} skeleton={skeleton} tone={wheelTone} />
      <Line
        view={view}
        points={[
          { x: -40, y: 110 },
          { x: 20, y: 130 },
          { x: 90, y: head.y - 120 },
          add(head, side, 110),
          add(head, side, -100),
        ]}
      />
      <Box view={view} low={{ x: -60, y: -26 }} high={{ x: 40, y: 110 }} round={10} />
      <Bar view={view} points={[pivot, outer]} width={34} />
      <Joint view={view} at={pivot} tone="context" />
      <Knuckle view={view} skeleton={skeleton} to={foot} />
      {detail && <Joint view={view} at={outer} tone="context" />}
      <Rodded view={view} skeleton={skeleton} freeHeight={freeHeight} strut />
    </g>
  );
}

function mirrored(point: Point): Point {
  return { x: -point.x, y: point.y };
}

function AxleScene(props: SceneProps) {
  const { view, skeleton, detail = true, wheelTone } = props;
  const { wheelCentre } = skeleton;
  const otherView: View = {
    ...view,
    direction: view.direction === 1 ? -1 : 1,
    at: (point) => view.at(mirrored(point)),
    turned: (direction) => view.turned(mirrored(direction)),
  };
  const railTop = skeleton.stopTop.y + 110;
  return (
    <g>
      <WheelAndBody view={view} skeleton={skeleton} tone={wheelTone} />
      <WheelAndBody view={otherView} skeleton={skeleton} />
      <Line
        view={view}
        points={[
          { x: -skeleton.stopTop.x - 90, y: railTop },
          { x: skeleton.stopTop.x + 90, y: railTop },
        ]}
      />
      {detail && <ContextSpring view={view} skeleton={skeleton} />}
      {detail && <ContextSpring view={otherView} skeleton={skeleton} />}
      <Bar
        view={view}
        tone="part"
        points={[add(mirrored(wheelCentre), { x: 100, y: 0 }), add(wheelCentre, { x: -100, y: 0 })]}
        width={2 * axleTubeRadius}
      />
      <Disc view={view} tone="part" centre={{ x: 0, y: 0 }} radius={135} />
      <AxleSide {...props} tone="context" view={otherView} />
      <AxleSide {...props} tone="part" />
    </g>
  );
}

function AxleSide({ view, skeleton, freeHeight, tone }: SceneProps & { readonly tone: Tone }) {
  const { pad, stopFace, stopTop, axis } = skeleton;
  return (
    <g>
      <Box
        view={view}
        low={{ x: stopTop.x - 48, y: stopTop.y + 6 }}
        high={{ x: stopTop.x + 48, y: stopTop.y + 110 }}
        round={8}
      />
      <Body
        view={view}
        tone={tone}
        from={{ x: pad.x, y: axleTubeRadius - 2 }}
        to={pad}
        axis={{ x: 0, y: 1 }}
        half={40}
      />
      <Plate view={view} tone={tone} middle={add(stopTop, axis, 4)} axis={axis} half={42} />
      {skeleton.stop !== "missing" && (
        <StopShape
          view={view}
          top={stopTop}
          axis={axis}
          height={distance(stopFace, stopTop)}
          freeHeight={freeHeight}
        />
      )}
    </g>
  );
}
