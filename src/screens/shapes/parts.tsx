import type { ComponentChildren } from "preact";
import {
  add,
  arcPoints,
  clamp,
  distance,
  type Point,
  pathThrough,
  quarterTurn,
  roundedThrough,
  tenths,
  tyreRadius,
  tyreWidth,
  type View,
} from "./geometry.ts";

/** context: recognised at a glance, drawn lightly; part: what the reading is about. */
export type Tone = "context" | "part";

interface Toned {
  readonly view: View;
  readonly tone?: Tone;
}

export function Line({
  view,
  points,
  tone = "context",
  closed = false,
  dashed = false,
}: Toned & {
  readonly points: readonly Point[];
  readonly closed?: boolean;
  readonly dashed?: boolean;
}) {
  return (
    <path
      class={`${tone}${closed ? " solid" : ""}${dashed ? " dashed" : ""}`}
      d={pathThrough(points.map(view.at), closed)}
    />
  );
}

/** A bar, tube or arm of `width` mm through the points. */
export function Bar({
  points,
  ...bar
}: Toned & { readonly points: readonly Point[]; readonly width: number }) {
  return <Bars {...bar} lines={[points]} />;
}

/** Several bars as one shape: fit for those that do not lie over each other. */
function Bars({
  view,
  lines,
  width,
  tone = "context",
}: Toned & { readonly lines: readonly (readonly Point[])[]; readonly width: number }) {
  const d = lines.map((points) => pathThrough(points.map(view.at))).join("");
  const edge = edgeOf(view, width);
  const wall = tone === "part" ? 4 : 3;
  return (
    <g class={`bar ${tone}`}>
      <path d={d} stroke-width={tenths(edge)} />
      <path class="inside" d={d} stroke-width={tenths(Math.max(edge - wall, 1))} />
    </g>
  );
}

/** How wide a bar of `width` mm is drawn, px. */
function edgeOf({ scale }: View, width: number): number {
  return Math.max(width * scale, 4);
}

export function Disc({
  view,
  centre,
  radius,
  tone = "context",
  least = 2.5,
}: Toned & { readonly centre: Point; readonly radius: number; readonly least?: number }) {
  const at = view.at(centre);
  return (
    <circle
      class={`${tone} solid`}
      cx={tenths(at.x)}
      cy={tenths(at.y)}
      r={tenths(Math.max(radius * view.scale, least))}
    />
  );
}

/** Upright rectangle between two corners, mm, with rounded edges. */
export function Box({
  view,
  low,
  high,
  round = 0,
  tone = "context",
}: Toned & { readonly low: Point; readonly high: Point; readonly round?: number }) {
  const a = view.at(low);
  const b = view.at(high);
  return (
    <rect
      class={`${tone} solid`}
      x={tenths(Math.min(a.x, b.x))}
      y={tenths(Math.min(a.y, b.y))}
      width={tenths(Math.abs(a.x - b.x))}
      height={tenths(Math.abs(a.y - b.y))}
      rx={tenths(round * view.scale)}
    />
  );
}

/** The ground with its hatching, from `from` to `to` mm. */
export function Ground({
  view,
  from,
  to,
  y,
}: {
  readonly view: View;
  readonly from: number;
  readonly to: number;
  readonly y: number;
}) {
  const a = view.at({ x: from, y });
  const b = view.at({ x: to, y });
  const [left, right] = [Math.min(a.x, b.x), Math.max(a.x, b.x)];
  const count = clamp(Math.round((right - left) / 16), 1, 60);
  const ticks = Array.from({ length: count }, (_, index) => {
    const x = left + ((index + 1) * (right - left)) / count;
    return `M${tenths(x)} ${tenths(a.y)}l-6 6`;
  });
  return (
    <path class="context" d={`M${tenths(left)} ${tenths(a.y)}H${tenths(right)}${ticks.join("")}`} />
  );
}

/** A wheel seen along the vehicle: the tire with the grooves of its tread, flat where the ground presses it. */
export function TyreFromFront({
  view,
  centre,
  tone = "context",
  radius = tyreRadius,
  pressed = 0,
}: Toned & {
  readonly centre: Point;
  readonly radius?: number;
  /** By how much the ground stands above the tire's lowest point, mm. */
  readonly pressed?: number;
}) {
  const half = tyreWidth / 2;
  const foot = -radius + clamp(pressed, 0, 0.5 * radius);
  return (
    <g class="tyre">
      <Box
        view={view}
        tone={tone}
        low={add(centre, { x: -half, y: foot })}
        high={add(centre, { x: half, y: radius })}
        round={62}
      />
      <path
        class="context dashed"
        d={[-0.55, 0, 0.55]
          .map((share) =>
            pathThrough(
              [foot + 14, radius - 14].map((y) => view.at(add(centre, { x: share * half, y }))),
            ),
          )
          .join("")}
      />
    </g>
  );
}

/** [share of the height from the mounted end, share of the half width]. */
const stopProfile: readonly (readonly [number, number])[] = [
  [0, 0.86],
  [0.12, 0.98],
  [0.28, 1.06],
  [0.38, 0.62],
  [0.48, 0.92],
  [0.62, 0.96],
  [0.7, 0.5],
  [0.8, 0.76],
  [1, 0.68],
];

export function stopHalfWidth(freeHeight: number): number {
  return Math.min(0.42 * freeHeight, 70);
}

/** The stop between its mounted end and its face; it bulges as it is pressed below `freeHeight`. */
export function StopShape({
  view,
  top,
  axis,
  height,
  freeHeight,
  ghost = false,
}: {
  readonly view: View;
  readonly top: Point;
  readonly axis: Point;
  readonly height: number;
  readonly freeHeight: number;
  readonly ghost?: boolean;
}) {
  const side = quarterTurn(axis);
  const bulge = Math.min(Math.sqrt(freeHeight / Math.max(height, 1e-3)), 1.7);
  const half = Math.max(stopHalfWidth(freeHeight), 5 / view.scale) * bulge;
  const along = (share: number, width: number) =>
    view.at(add(add(top, axis, -share * height), side, width * half));
  const corners = [
    ...stopProfile.map(([share, width]) => along(share, width)),
    ...[...stopProfile].reverse().map(([share, width]) => along(share, -width)),
  ];
  return <path class={ghost ? "stop ghost" : "stop"} d={roundedThrough(corners)} />;
}

/** A plate across an axis, `half` mm to either side of its middle. */
export function Plate({
  view,
  middle,
  axis,
  half,
  tone = "part",
}: Toned & { readonly middle: Point; readonly axis: Point; readonly half: number }) {
  const side = quarterTurn(axis);
  const ends = [add(middle, side, half), add(middle, side, -half)].map(view.at);
  return <path class={`${tone} plate`} d={pathThrough(ends)} />;
}

/** A coil spring from `foot` to `head`: one wire wound up, its far strands behind its near ones. */
export function Coil({
  view,
  foot,
  head,
  radius,
  coils,
  wire,
  tone = "context",
}: Toned & {
  readonly foot: Point;
  readonly head: Point;
  readonly radius: number;
  readonly coils: number;
  /** mm */
  readonly wire: number;
}) {
  const height = Math.max(distance(foot, head), 1e-3);
  const axis = { x: (head.x - foot.x) / height, y: (head.y - foot.y) / height };
  const side = quarterTurn(axis);
  const rise = Math.max(height - wire, 0) / coils;
  const at = (halfTurns: number) => {
    const middle = add(foot, axis, wire / 2 + (halfTurns / 2) * rise);
    return add(middle, side, halfTurns % 2 === 0 ? radius : -radius);
  };
  const strand = (first: number, coil: number) => [at(2 * coil + first), at(2 * coil + first + 1)];
  const end = (halfTurns: number) => [at(halfTurns), add(at(halfTurns), side, -2 * radius)];
  const wound = { view, tone, width: wire };
  // Strands that touch lie over each other: each is drawn by itself, so that they can be told apart.
  const touching = rise * view.scale < edgeOf(view, wire) * Math.hypot(1, rise / (4 * radius));
  const strands = (first: number) => {
    const lines = Array.from({ length: coils }, (_, coil) => strand(first, coil));
    return touching ? (
      lines.map((points, coil) => <Bar key={coil} {...wound} points={points} />)
    ) : (
      <Bars {...wound} lines={lines} />
    );
  };
  return (
    <g class="coil">
      <g class="behind">{strands(1)}</g>
      <Bars {...wound} lines={[end(0), end(2 * coils)]} />
      {strands(0)}
    </g>
  );
}

/** A damper from eye to eye: its body up to `bodyTop`, then its rod. */
export function Damper({
  view,
  foot,
  bodyTop,
  head,
  tone = "part",
  children,
}: Toned & {
  readonly foot: Point;
  readonly bodyTop: Point;
  readonly head: Point;
  readonly children?: ComponentChildren;
}) {
  const length = Math.max(distance(foot, head), 1e-3);
  const axis = { x: (head.x - foot.x) / length, y: (head.y - foot.y) / length };
  return (
    <g>
      <Bar view={view} tone={tone} points={[bodyTop, head]} width={16} />
      <Body view={view} tone={tone} from={foot} to={bodyTop} axis={axis} half={26} />
      {children}
      <Disc view={view} tone={tone} centre={foot} radius={17} least={3.5} />
      <Disc view={view} tone={tone} centre={head} radius={15} least={3} />
    </g>
  );
}

/** A tube with square ends along an axis. */
export function Body({
  view,
  from,
  to,
  axis,
  half,
  tone = "part",
}: Toned & {
  readonly from: Point;
  readonly to: Point;
  readonly axis: Point;
  readonly half: number;
}) {
  const side = quarterTurn(axis);
  return (
    <Line
      view={view}
      tone={tone}
      closed
      points={[
        add(from, side, half),
        add(to, side, half),
        add(to, side, -half),
        add(from, side, -half),
      ]}
    />
  );
}

/** A wheel seen from the side. */
export function WheelFromSide({
  view,
  centre,
  tone = "context",
  radius = tyreRadius,
}: Toned & { readonly centre: Point; readonly radius?: number }) {
  const spokes = [90, 162, 234, 306, 18].map((degrees) => {
    const [from] = arcPoints(centre, 60, degrees, degrees);
    const [to] = arcPoints(centre, 0.55 * radius, degrees, degrees);
    return pathThrough([from ?? centre, to ?? centre].map(view.at));
  });
  return (
    <g class="tyre">
      <Disc view={view} tone={tone} centre={centre} radius={radius} />
      <Disc view={view} centre={centre} radius={0.63 * radius} />
      <path class="context" d={spokes.join("")} />
      <Disc view={view} tone={tone} centre={centre} radius={58} />
    </g>
  );
}

/** The bracket between two points, seen end on: a bar with a hole at its lower end. */
export function Joint({ view, at, tone = "part" }: Toned & { readonly at: Point }) {
  return (
    <g>
      <Disc view={view} tone={tone} centre={at} radius={24} least={5} />
      <Disc view={view} tone={tone} centre={at} radius={8} least={1.6} />
    </g>
  );
}
