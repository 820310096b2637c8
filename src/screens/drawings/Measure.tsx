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
} from "../shapes/geometry.ts";
import type { Measurement } from "../shapes/measurement.ts";

function labelSizeOf(text: string): Size {
  return { width: Math.round(16 + 10.4 * text.length), height: 26 };
}

const anywhere: Frame = { left: -1e5, top: -1e5, right: 1e5, bottom: 1e5 };

/** The picture points that the marks of a measurement reach, before they are kept inside the picture. */
export function marksOf(measurement: Measurement, text: string, view: View): Point[] {
  const size = labelSizeOf(text);
  const corners = (at: Point, width: number, height: number) => [
    { x: at.x - width / 2, y: at.y - height / 2 },
    { x: at.x + width / 2, y: at.y + height / 2 },
  ];
  if (measurement.kind === "mass") return [];
  if (measurement.kind === "length") {
    const plan = dimensionPlan(measurement, view, size, anywhere);
    return [
      ...corners(plan.badgeA, 22, 22),
      ...corners(plan.badgeB, 22, 22),
      ...corners(plan.label, size.width, size.height),
      plan.a,
      plan.b,
    ];
  }
  const plan = anglePlan(measurement, view, size, anywhere);
  return [
    ...corners(plan.badgeA, 22, 22),
    ...corners(plan.badgeB, 22, 22),
    ...corners(plan.label, size.width, size.height),
    ...corners(plan.plus, 16, 16),
    ...plan.arc,
    ...plan.plusArc,
    plan.referenceEnd,
  ];
}

function dimensionPlan(
  { a, b, along, away, offset, numberBeside = false }: Extract<Measurement, { kind: "length" }>,
  view: View,
  size: Size,
  frame: Frame,
): DimensionPlan {
  const [from, to] = [view.at(a), view.at(b)];
  return planDimension(
    from,
    to,
    view.turned(along),
    view.turned(away),
    offset,
    size,
    frame,
    numberBeside,
  );
}

function anglePlan(
  { vertex, reference, line, positive, reach, clearOf }: Extract<Measurement, { kind: "angle" }>,
  view: View,
  size: Size,
  frame: Frame,
): AnglePlan {
  return planAngle(view, vertex, reference, line, positive, reach, size, frame, clearOf);
}

interface MeasureProps {
  readonly view: View;
  readonly measurement: Measurement;
  /** The current number with its unit. */
  readonly text: string;
  readonly frame: Frame;
}

/** The measurement itself: its two points A and B, or its angle, with the current number. */
export function Measure({ view, measurement, text, frame }: MeasureProps) {
  const size = labelSizeOf(text);
  if (measurement.kind === "length") {
    const plan = dimensionPlan(measurement, view, size, frame);
    const along = view.turned(measurement.along);
    return <Dimension plan={plan} along={along} text={text} size={size} />;
  }
  if (measurement.kind === "angle") {
    return <Angle plan={anglePlan(measurement, view, size, frame)} text={text} size={size} />;
  }
  return <Label at={view.at(measurement.at)} text={text} size={size} />;
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

function Label({
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
