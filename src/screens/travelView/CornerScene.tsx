import { useMemo } from "preact/hooks";
import { layoutRegistry } from "../../physics/readings/index.ts";
import { add, between, tenths, tyreWidth } from "../shapes/geometry.ts";
import {
  Bar,
  Coil,
  Damper,
  Ground,
  Joint,
  Line,
  TyreFromFront,
  WheelFromSide,
} from "../shapes/parts.tsx";
import { AroundStop } from "./AroundStop.tsx";
import type { DrawnMoment } from "./drawnCorner.ts";
import { otherPivotY, type SceneProps } from "./scene.ts";

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
      {!corner.fromSide && !layoutRegistry[corner.kind].joinsWheels && <Knuckle {...props} />}
      <AroundStop {...props} />
    </g>
  );
}

function Road({ view, corner, y }: SceneProps & { readonly y: number }) {
  const drawn = useMemo(() => {
    const [low, high] = corner.bounds;
    return <Ground view={view} from={low.x} to={high.x} y={0} />;
  }, [view, corner]);
  // Its hatching is drawn once, and goes up and down as it is.
  return <g transform={`translate(0 ${tenths(-view.scale * y)})`}>{drawn}</g>;
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
  const far = pose.rod && !layoutRegistry[corner.kind].onArm ? pose.rod.foot : null;
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
