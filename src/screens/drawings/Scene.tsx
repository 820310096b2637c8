import { layoutRegistry } from "../../physics/readings/index.ts";
import { layoutsOnScreen } from "../layouts/layoutsOnScreen.ts";
import type { SceneProps } from "../layouts/sceneParts.tsx";
import { tyreWidth } from "../shapes/geometry.ts";
import { Ground } from "../shapes/parts.tsx";

/** The layout as it stands, seen along the vehicle. */
export function Scene(props: SceneProps) {
  const { view, skeleton } = props;
  const { Scene: Layout } = layoutsOnScreen[skeleton.kind];
  const { wheelCentre, wheelRadius, fromSide } = skeleton;
  const out = wheelCentre.x + (fromSide ? wheelRadius : tyreWidth / 2) + 22;
  return (
    <g>
      <Ground
        view={view}
        from={layoutRegistry[skeleton.kind].joinsWheels ? -out : fromSide ? -300 : -120}
        to={out}
        y={wheelCentre.y - wheelRadius}
      />
      <Layout {...props} />
    </g>
  );
}
