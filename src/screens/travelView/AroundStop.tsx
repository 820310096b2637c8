import { useMemo } from "preact/hooks";
import { layoutRegistry } from "../../physics/readings/index.ts";
import { axleTubeRadius } from "../layouts/skeleton.ts";
import { add, between, distance, type Point, quarterTurn } from "../shapes/geometry.ts";
import { Bar, Body, Box, Coil, Damper, Joint, Line, Plate, StopShape } from "../shapes/parts.tsx";
import type { ClashPlace } from "./drawnCorner.ts";
import { otherPivotY, type SceneProps } from "./scene.ts";

/** What holds the stop, what meets it, and what else may touch there. */
export function AroundStop(props: SceneProps) {
  const { view, corner } = props;
  // It stands still while the wheel moves: drawn once.
  const frame = useMemo(() => <Frame view={view} corner={corner} />, [view, corner]);
  return (
    <g>
      {frame}
      {layoutRegistry[props.corner.kind].joinsWheels ? <Axle {...props} /> : <Arms {...props} />}
      <StopAndPad {...props} />
      {props.drawn.clashes.map((clash) => (
        <ClashParts key={clash.limit.id} {...props} clash={clash} />
      ))}
    </g>
  );
}

/** The frame: from the arm's pivot to the seat, or the pad, of the stop. */
function Frame({ view, corner }: Omit<SceneProps, "drawn">) {
  const { pose } = corner.atRide.moment;
  const { axis } = corner.atRide;
  const side = quarterTurn(axis);
  if (layoutRegistry[corner.kind].joinsWheels) {
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
  const web = pose.outer === null ? held.x - 260 : 0;
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
  const { onArm } = layoutRegistry[corner.kind];
  const carried = corner.stopOnArm ? pose.seat : rod ? rod.foot : pose.pad;
  const bend = rod && onArm ? carried : add(carried, drawn.axis, corner.stopOnArm ? -20 : -34);
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
  const strut = !layoutRegistry[corner.kind].onArm;
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
