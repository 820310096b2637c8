import {
  type AnglePlan,
  add,
  type DimensionPlan,
  distance,
  type Frame,
  type Point,
  pathThrough,
  planAngle,
  planDimension,
  quarterTurn,
  tenths,
  type View,
} from "./geometry.ts";
import type { Measurement } from "./measurement.ts";

interface MeasureProps {
  readonly view: View;
  readonly measurement: Measurement;
  /** The current number with its unit. */
  readonly text: string;
  readonly frame: Frame;
}

/** The measurement itself: its two points A and B, or its angle, with the current number. */
export function Measure({ view, measurement, text, frame }: MeasureProps) {
  const labelSize = { width: Math.round(16 + 10.4 * text.length), height: 26 };
  if (measurement.kind === "length") {
    const { a, b, along, away, offset } = measurement;
    const plan = planDimension(
      view.at(a),
      view.at(b),
      view.turned(along),
      view.turned(away),
      offset,
      labelSize,
      frame,
    );
    return <Dimension plan={plan} along={view.turned(along)} text={text} size={labelSize} />;
  }
  if (measurement.kind === "angle") {
    const { vertex, reference, line, positive, reach } = measurement;
    const plan = planAngle(view, vertex, reference, line, positive, reach, labelSize, frame);
    return <Angle plan={plan} text={text} size={labelSize} />;
  }
  return <Label at={view.at(measurement.at)} text={text} size={labelSize} />;
}

type Size = { readonly width: number; readonly height: number };

function Dimension({
  plan,
  along,
  text,
  size,
}: {
  readonly plan: DimensionPlan;
  readonly along: Point;
  readonly text: string;
  readonly size: Size;
}) {
  const { a, b, lineA, lineB, badgeA, badgeB, label } = plan;
  const across = quarterTurn(along);
  const tick = (at: Point) => pathThrough([add(at, across, 8), add(at, across, -8)]);
  return (
    <g class="measure">
      <path class="halo" d={pathThrough([lineA, lineB])} />
      <path class="extension" d={`${pathThrough([a, lineA])}${pathThrough([b, lineB])}`} />
      <path class="dimension" d={`${pathThrough([lineA, lineB])}${tick(lineA)}${tick(lineB)}`} />
      <Mark at={a} name="a" />
      <Mark at={b} name="b" />
      <Badge at={badgeA} letter="A" />
      <Badge at={badgeB} letter="B" />
      <Label at={label} text={text} size={size} />
    </g>
  );
}

function Angle({
  plan,
  text,
  size,
}: {
  readonly plan: AnglePlan;
  readonly text: string;
  readonly size: Size;
}) {
  const { vertex, referenceEnd, lineEnd, arc, plusArc, plus, badgeA, badgeB, label } = plan;
  return (
    <g class="measure">
      <path class="halo" d={pathThrough([vertex, lineEnd])} />
      <path class="reference" d={pathThrough([vertex, referenceEnd])} />
      <path class="dimension" d={`${pathThrough([vertex, lineEnd])}${pathThrough(arc)}`} />
      <path class="plus" d={`${pathThrough(plusArc)}${arrowhead(plusArc)}`} />
      <Mark at={vertex} name="a" />
      <Mark at={lineEnd} name="b" />
      <Badge at={badgeA} letter="A" />
      <Badge at={badgeB} letter="B" />
      <text class="plus-sign" x={tenths(plus.x)} y={tenths(plus.y + 6)} text-anchor="middle">
        +
      </text>
      <Label at={label} text={text} size={size} />
    </g>
  );
}

function arrowhead(path: readonly Point[]): string {
  const tip = path.at(-1);
  const before = path.at(-2);
  if (tip === undefined || before === undefined) return "";
  const length = distance(before, tip) || 1;
  const along = { x: (tip.x - before.x) / length, y: (tip.y - before.y) / length };
  const across = quarterTurn(along);
  const back = add(tip, along, -9);
  return pathThrough([add(back, across, 5), tip, add(back, across, -5)]);
}

function Mark({ at, name }: { readonly at: Point; readonly name: "a" | "b" }) {
  return <circle class={`point point-${name}`} cx={tenths(at.x)} cy={tenths(at.y)} r={4} />;
}

function Badge({ at, letter }: { readonly at: Point; readonly letter: string }) {
  return (
    <g class="badge">
      <circle cx={tenths(at.x)} cy={tenths(at.y)} r={10} />
      <text x={tenths(at.x)} y={tenths(at.y + 4.8)} text-anchor="middle">
        {letter}
      </text>
    </g>
  );
}

export function Label({
  at,
  text,
  size,
}: {
  readonly at: Point;
  readonly text: string;
  readonly size: Size;
}) {
  return (
    <g class="label">
      <rect
        x={tenths(at.x - size.width / 2)}
        y={tenths(at.y - size.height / 2)}
        width={size.width}
        height={size.height}
        rx={8}
      />
      <text x={tenths(at.x)} y={tenths(at.y + 5.6)} text-anchor="middle">
        {text}
      </text>
    </g>
  );
}
