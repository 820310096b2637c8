import type { ArmPoint } from "../../shapes/armLength.ts";
import { add, pathThrough, type View } from "../../shapes/geometry.ts";
import { Bar, Disc, Line } from "../../shapes/parts.tsx";
import { type ArmFromAbove, footOf } from "./armFromAbove.ts";

/** The arm, its two bolts and the pivot line through them, with the straight edge laid along it. */
export function ArmAboveScene({
  view,
  arm,
  to,
  squareTo,
  withMount,
}: {
  readonly view: View;
  readonly arm: ArmFromAbove;
  /** The point that is measured to. */
  readonly to: ArmPoint | null;
  /** Whether the length is taken square to the pivot line: its right angle is drawn. */
  readonly squareTo: boolean;
  readonly withMount: boolean;
}) {
  const { frontBolt, rearBolt, along, points } = arm;
  const spacing = Math.hypot(rearBolt.x - frontBolt.x, rearBolt.y - frontBolt.y);
  const beyond = 0.14 * spacing;
  return (
    <g>
      <Bar view={view} tone="part" width={40} points={[frontBolt, points.Outer, rearBolt]} />
      <Line
        view={view}
        tone="part"
        dashed
        points={[add(frontBolt, along, -beyond), add(rearBolt, along, beyond)]}
      />
      <Bolt view={view} arm={arm} at="frontBolt" />
      <Bolt view={view} arm={arm} at="rearBolt" />
      <Disc view={view} tone="part" centre={points.Outer} radius={24} least={6} />
      <Disc view={view} tone="part" centre={points.Outer} radius={8} least={2} />
      {withMount ? (
        <Disc view={view} tone="part" centre={points.Mount} radius={26} least={7} />
      ) : (
        <StopFromAbove view={view} arm={arm} />
      )}
      {to !== null && squareTo && <RightAngle view={view} arm={arm} to={to} />}
    </g>
  );
}

/** A pivot bolt lies along the pivot line: a bushing with its bolt through it. */
function Bolt({
  view,
  arm,
  at,
}: {
  readonly view: View;
  readonly arm: ArmFromAbove;
  readonly at: "frontBolt" | "rearBolt";
}) {
  const middle = arm[at];
  const ends = (half: number) => [add(middle, arm.along, -half), add(middle, arm.along, half)];
  return (
    <g>
      <Bar view={view} tone="part" width={46} points={ends(20)} />
      <Bar view={view} tone="part" width={14} points={ends(40)} />
    </g>
  );
}

function StopFromAbove({ view, arm }: { readonly view: View; readonly arm: ArmFromAbove }) {
  const at = view.at(arm.points.Stop);
  const radius = Math.max(30 * view.scale, 8);
  return <circle class="stop" cx={at.x.toFixed(1)} cy={at.y.toFixed(1)} r={radius.toFixed(1)} />;
}

const corner = 11;

function RightAngle({
  view,
  arm,
  to,
}: {
  readonly view: View;
  readonly arm: ArmFromAbove;
  readonly to: ArmPoint;
}) {
  const foot = view.at(footOf(arm, to));
  const along = view.turned(arm.along);
  const square = view.turned(arm.square);
  const first = add(foot, along, corner);
  return (
    <path
      class="right-angle"
      d={pathThrough([first, add(first, square, corner), add(foot, square, corner)])}
    />
  );
}
