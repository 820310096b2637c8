import { add, between, quarterTurn, type View } from "../shapes/geometry.ts";
import { Line, StopShape } from "../shapes/parts.tsx";
import type { ClashPlace } from "./drawnCorner.ts";
import type { SceneProps } from "./scene.ts";

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
