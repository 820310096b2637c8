import {
  add,
  between,
  distance,
  type Point,
  quarterTurn,
  type View,
} from "../drawings/geometry.ts";
import {
  Bar,
  Body,
  Box,
  Coil,
  Damper,
  Ground,
  Joint,
  Line,
  Plate,
  StopShape,
  TyreFromFront,
  WheelFromSide,
} from "../drawings/parts.tsx";
import { axleTubeRadius, tyreWidth } from "../drawings/skeleton.ts";
import type { ClashPlace, DrawnCorner, DrawnMoment } from "./drawnCorner.ts";

interface SceneProps {
  readonly view: View;
  readonly corner: DrawnCorner;
  readonly drawn: DrawnMoment;
}

/** One corner at one moment; `ground` is the road's height in the body's frame, mm. */
export function CornerScene(props: SceneProps & { readonly ground: number }) {
  const { view, corner, drawn, ground } = props;
  return (
    <g>
      <Road {...props} y={ground} />
      <Fender {...props} />
      {corner.fromSide ? (
        <WheelFromSide view={view} centre={drawn.wheel} radius={corner.tyreRadius} />
      ) : (
        <TyreFromFront
          view={view}
          centre={drawn.wheel}
          radius={corner.tyreRadius}
          pressed={ground - (drawn.wheel.y - corner.tyreRadius)}
        />
      )}
      {drawn.damper && <DamperBeside {...props} damper={drawn.damper} />}
      {!corner.fromSide && corner.kind !== "axle" && <Knuckle {...props} />}
      <AroundStop {...props} />
    </g>
  );
}

/** What holds the stop, what meets it, and what else may touch there. */
export function AroundStop(props: SceneProps) {
  return (
    <g>
      <Frame {...props} />
      {props.corner.kind === "axle" ? <Axle {...props} /> : <Arms {...props} />}
      <StopAndPad {...props} />
      {props.drawn.clashes.map((clash) => (
        <ClashParts key={clash.limit.id} {...props} clash={clash} />
      ))}
    </g>
  );
}

function Road({ view, corner, y }: SceneProps & { readonly y: number }) {
  const [low, high] = corner.bounds;
  return <Ground view={view} from={low.x} to={high.x} y={y} />;
}

function Fender({ view, corner, drawn }: SceneProps) {
  const { lipY, atRide, tyreRadius, fromSide } = corner;
  const { x } = atRide.wheel;
  if (fromSide) {
    const half = tyreRadius + 60;
    return (
      <Line
        view={view}
        points={[
          { x: x - half - 60, y: lipY - 210 },
          { x: x - half, y: lipY - 150 },
          { x: x - 0.6 * half, y: lipY - 40 },
          { x, y: lipY },
          { x: x + 0.6 * half, y: lipY - 40 },
          { x: x + half, y: lipY - 150 },
        ]}
      />
    );
  }
  const out = x + tyreWidth / 2 + 22;
  const wheelX = drawn.wheel.x;
  return (
    <g>
      <Line
        view={view}
        points={[
          { x: out + 6, y: lipY - 30 },
          { x: out, y: lipY },
          { x: wheelX - tyreWidth / 2 - 20, y: lipY },
          { x: wheelX - tyreWidth / 2 - 50, y: lipY - 50 },
        ]}
      />
    </g>
  );
}

function DamperBeside({
  view,
  damper: { foot, head, bodyTop },
}: SceneProps & { readonly damper: NonNullable<DrawnMoment["damper"]> }) {
  const seat = between(foot, bodyTop, 0.55);
  return (
    <g>
      <Damper view={view} tone="context" foot={foot} bodyTop={bodyTop} head={head} />
      <Coil view={view} foot={seat} head={head} radius={54} coils={6} wire={13} />
    </g>
  );
}

/** From the joint over the wheel's hub up to where an upper arm would take it. */
function Knuckle({ view, corner, drawn }: SceneProps) {
  const { pose } = drawn.moment;
  const { wheel } = drawn;
  const hub = { x: wheel.x - tyreWidth / 2 - 8, y: wheel.y };
  const joint = pose.outer ?? { x: wheel.x - 160, y: wheel.y - 75 };
  const isUpper = corner.armRole === "upper";
  const far = pose.rod && corner.kind === "strut" ? pose.rod.foot : null;
  const other = pose.otherArm?.joint ?? far ?? add(wheel, { x: -140, y: isUpper ? -120 : 165 });
  return (
    <g>
      <Bar view={view} points={[hub, add(hub, { x: 40, y: 0 })]} width={70} />
      <Bar view={view} points={[joint, hub, other]} width={26} />
      {pose.otherArm ? (
        <>
          <Bar view={view} points={[pose.otherArm.pivot, pose.otherArm.joint]} width={26} />
          <Joint view={view} tone="context" at={pose.otherArm.pivot} />
        </>
      ) : (
        far === null && (
          <Bar
            view={view}
            points={[other, { x: 20, y: otherPivotY(corner, isUpper) }]}
            width={22}
          />
        )
      )}
    </g>
  );
}

function otherPivotY({ atRide }: DrawnCorner, isUpper: boolean): number {
  const rise = isUpper ? -260 : 200;
  return Math.max(isUpper ? -400 : atRide.wheel.y + 120, rise);
}

/** The frame: from the arm's pivot to the seat, or the pad, of the stop. */
function Frame({ view, corner }: SceneProps) {
  const { pose } = corner.atRide.moment;
  const { axis } = corner.atRide;
  const side = quarterTurn(axis);
  if (corner.kind === "axle") {
    const { seat } = pose;
    return (
      <Box
        view={view}
        low={{ x: seat.x - 46, y: seat.y + 6 }}
        high={{ x: seat.x + 46, y: seat.y + 112 }}
        round={8}
      />
    );
  }
  const held = pose.rod ? pose.rod.head : corner.stopOnArm ? pose.pad : pose.seat;
  const half = pose.rod ? 56 : 52;
  const under = pose.rod ? 12 : 8;
  const web = corner.kind === "strut" && pose.outer === null ? held.x - 260 : 0;
  const upper = corner.armRole === "upper" || corner.fromSide ? 0 : otherPivotY(corner, false) + 36;
  const top = Math.max(held.y + 74, pose.rod ? 0 : upper);
  const shelf = held.y + 74;
  const tower = corner.atRide.damper?.head;
  return (
    <g>
      {tower && (
        <Bar
          view={view}
          points={[{ x: web - 10, y: top - 14 }, add(tower, { x: 0, y: 12 })]}
          width={24}
        />
      )}
      <Line
        view={view}
        closed
        points={[
          { x: web - 52, y: -34 },
          { x: web + 34, y: -34 },
          { x: web + 40, y: Math.max(held.y - 16, 20) },
          add(add(held, axis, under), side, half),
          add(add(held, axis, under), side, -half),
          { x: held.x + half + 8, y: shelf },
          { x: web + 40, y: shelf },
          { x: web + 40, y: top },
          { x: web - 52, y: top },
        ]}
      />
    </g>
  );
}

function Axle({ view, corner, drawn }: SceneProps) {
  const { wheel, moment } = drawn;
  const { y } = wheel;
  const [low] = corner.bounds;
  return (
    <g>
      <Bar
        view={view}
        tone="part"
        points={[
          { x: low.x - 200, y },
          { x: wheel.x - 100, y },
        ]}
        width={2 * axleTubeRadius}
      />
      <Body
        view={view}
        from={{ x: moment.pose.pad.x, y: y + axleTubeRadius - 4 }}
        to={moment.pose.pad}
        axis={{ x: 0, y: 1 }}
        half={38}
      />
    </g>
  );
}

function Arms({ view, corner, drawn }: SceneProps) {
  const { pose } = drawn.moment;
  const { outer, rod } = pose;
  const pivot = { x: 0, y: 0 };
  if (outer === null) {
    const joint = { x: drawn.wheel.x - 160, y: drawn.wheel.y - 75 };
    return (
      <g>
        <Bar
          view={view}
          points={[{ x: joint.x - 300, y: corner.atRide.wheel.y - 30 }, joint]}
          width={30}
        />
        {rod && <Rod view={view} corner={corner} drawn={drawn} rod={rod} />}
      </g>
    );
  }
  const carried = corner.stopOnArm ? pose.seat : rod ? rod.foot : pose.pad;
  const bend =
    rod && corner.kind === "damper"
      ? carried
      : add(carried, drawn.axis, corner.stopOnArm ? -20 : -34);
  const onArm = corner.kind !== "strut";
  const points =
    !onArm || distance(pivot, bend) > distance(pivot, outer)
      ? [pivot, outer, ...(onArm ? [bend] : [])]
      : [pivot, bend, outer];
  return (
    <g>
      {onArm && rod === null && (
        <Body
          view={view}
          tone="part"
          from={add(bend, drawn.axis, corner.stopOnArm ? 6 : -4)}
          to={carried}
          axis={drawn.axis}
          half={32}
        />
      )}
      <Bar view={view} tone="part" points={points} width={36} />
      <Joint view={view} at={pivot} />
      <Joint view={view} at={outer} />
      {rod && <Rod view={view} corner={corner} drawn={drawn} rod={rod} />}
    </g>
  );
}

function Rod({
  view,
  corner,
  drawn,
  rod,
}: SceneProps & { readonly rod: { readonly foot: Point; readonly head: Point } }) {
  const { pad, seat } = drawn.moment.pose;
  const strut = corner.kind === "strut";
  const springSeat = between(rod.foot, pad, 0.72);
  return (
    <Damper view={view} foot={rod.foot} bodyTop={pad} head={rod.head}>
      {strut && <Coil view={view} foot={springSeat} head={seat} radius={80} coils={5} wire={13} />}
      {strut && (
        <Plate view={view} tone="context" middle={springSeat} axis={drawn.axis} half={90} />
      )}
      {strut && <Plate view={view} tone="context" middle={seat} axis={drawn.axis} half={90} />}
    </Damper>
  );
}

/** Seat, spacer, stop and pad. */
function StopAndPad({ view, corner, drawn }: SceneProps) {
  const { moment, axis } = drawn;
  const { seat, pad, padAlong } = moment.pose;
  const { spacerMm, freeHeightMm } = corner.travel;
  const face = add(seat, axis, -spacerMm);
  const padAxis = { x: -padAlong.y, y: padAlong.x };
  return (
    <g>
      <Plate view={view} middle={add(pad, axis, -3)} axis={padAxis} half={44} />
      {spacerMm > 0 && <Body view={view} tone="part" from={seat} to={face} axis={axis} half={34} />}
      <Plate view={view} middle={add(seat, axis, 3)} axis={axis} half={44} />
      <StopShape
        view={view}
        top={face}
        axis={axis}
        height={Math.max(moment.stopHeightMm, 2)}
        freeHeight={freeHeightMm}
      />
    </g>
  );
}

/** What a hard limit runs into, where the picture does not show it already. */
function ClashParts({ view, drawn, clash }: SceneProps & { readonly clash: ClashPlace }) {
  const { limit, still } = clash;
  if (limit.kind === "tyre" || limit.kind === "damper" || limit.kind === "spring") return null;
  if (limit.at === "stop" && drawn.moment.pose.rod === null) {
    const { axis } = drawn;
    return (
      <g>
        <Plate
          view={view}
          tone="context"
          middle={add(clash.moving, axis, -3)}
          axis={axis}
          half={26}
        />
        <Body
          view={view}
          tone="context"
          from={still}
          to={add(still, axis, Math.max(distance(still, clash.moving), 30) + 10)}
          axis={axis}
          half={14}
        />
      </g>
    );
  }
  if (drawn.moment.pose.rod !== null && limit.at === "stop") return null;
  return (
    <Box
      view={view}
      low={add(still, { x: -34, y: 0 })}
      high={add(still, { x: 34, y: 44 })}
      round={5}
    />
  );
}

/** The place where the travel ends: a ring while there is room, a burst once it is closed. */
export function ClashMark({ view, clash }: { readonly view: View; readonly clash: ClashPlace }) {
  const { x, y } = view.at(between(clash.moving, clash.still, 0.5));
  if (!clash.closed) return <circle class="clash-open" cx={x} cy={y} r={9} />;
  const points = Array.from({ length: 16 }, (_, i) => {
    const radius = i % 2 === 0 ? 13 : 7;
    const angle = (i * Math.PI) / 8;
    return `${i === 0 ? "M" : "L"}${(x + radius * Math.cos(angle)).toFixed(1)} ${(y + radius * Math.sin(angle)).toFixed(1)}`;
  });
  return (
    <g class="clash-closed">
      <path d={`${points.join("")}Z`} />
      <path class="clash-cross" d={`M${x - 3} ${y - 3}l6 6m0 -6l-6 6`} />
    </g>
  );
}

/** The stop that is prescribed, in outline, at the same moment. */
export function GhostStop({ view, corner, drawn }: SceneProps) {
  const { moment, axis } = drawn;
  const face = add(moment.pose.seat, axis, -corner.travel.spacerMm);
  const half = 30;
  const side = quarterTurn(axis);
  const edge = [
    add(moment.pose.seat, side, half),
    add(face, side, half),
    add(face, side, -half),
    add(moment.pose.seat, side, -half),
  ];
  return (
    <g class="ghost-stop">
      {corner.travel.spacerMm > 0 && <Line view={view} points={edge} />}
      <StopShape
        view={view}
        top={face}
        axis={axis}
        height={Math.max(moment.stopHeightMm, 2)}
        freeHeight={corner.travel.freeHeightMm}
        ghost
      />
    </g>
  );
}
