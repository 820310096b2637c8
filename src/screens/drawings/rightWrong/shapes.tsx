import type { ComponentChildren } from "preact";

/** The pictures of right and wrong are drawn on 150 × 100. */
export const pairSize = { width: 150, height: 100 } as const;

interface Point {
  readonly x: number;
  readonly y: number;
}

const tenths = (value: number): number => Math.round(value * 10) / 10;

/** What is measured: from end to end, with a tick and a dot at each; `sag` bows it. */
export function Tape({ from, to, sag = 0 }: { from: Point; to: Point; sag?: number }) {
  const length = Math.max(Math.hypot(to.x - from.x, to.y - from.y), 1e-3);
  const across = { x: (-(to.y - from.y) / length) * 5, y: ((to.x - from.x) / length) * 5 };
  const tick = ({ x, y }: Point) =>
    `M${tenths(x + across.x)} ${tenths(y + across.y)}L${tenths(x - across.x)} ${tenths(y - across.y)}`;
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 + 2 * sag };
  const line =
    sag === 0
      ? `M${from.x} ${from.y}L${to.x} ${to.y}`
      : `M${from.x} ${from.y}Q${tenths(middle.x)} ${tenths(middle.y)} ${to.x} ${to.y}`;
  return (
    <g>
      <path class="tape-halo" d={line} />
      <path class="tape" d={`${line}${tick(from)}${tick(to)}`} />
      <circle class="tape-end" cx={from.x} cy={from.y} r={2.6} />
      <circle class="tape-end" cx={to.x} cy={to.y} r={2.6} />
    </g>
  );
}

/** An angle gauge laid along a line. */
export function Gauge({ at, turn, length = 44 }: { at: Point; turn: number; length?: number }) {
  return (
    <g transform={`translate(${at.x} ${at.y}) rotate(${turn})`}>
      <rect class="gauge" x={-length / 2} y={-9} width={length} height={9} rx={2} />
      <path class="tape" d={`M${-length / 2 - 10} 0H${length / 2 + 10}`} />
      <circle class="tape-end" cx={0} cy={-4.5} r={2.4} />
    </g>
  );
}

/** A stop that hangs from (x, y), `height` high, turned about there. */
export function Rubber({
  x,
  y,
  height = 34,
  turn = 0,
}: {
  x: number;
  y: number;
  height?: number;
  turn?: number;
}) {
  return (
    <path
      class="stop"
      transform={`translate(${x} ${y}) rotate(${turn}) scale(${tenths((height / 34) * 10) / 10})`}
      d="M-10 0H10C13 5 13 10 8 12c5 2 5 9-1 10 4 3 3 9-1 12H-6c-4-3-5-9-1-12-6-1-6-8-1-10-5-2-5-7-2-12Z"
    />
  );
}

export function Bolt({ x, y, radius = 6 }: { x: number; y: number; radius?: number }) {
  return (
    <g>
      <circle class="part solid" cx={x} cy={y} r={radius} />
      <circle class="part" cx={x} cy={y} r={1.2} />
    </g>
  );
}

/** A bar from point to point, such as an arm. */
export function ArmBar({ points }: { points: string }) {
  return (
    <g>
      <polyline class="arm-edge" points={points} />
      <polyline class="arm-inside" points={points} />
    </g>
  );
}

export function Ground({ y = 94, from = 4, to = 146 }) {
  const ticks = Array.from({ length: Math.floor((to - from) / 12) }, (_, index) => {
    return `M${from + 10 + index * 12} ${y}l-4 4`;
  });
  return <path class="context" d={`M${from} ${y}H${to}${ticks.join("")}`} />;
}

/** A tyre seen along the vehicle. */
export function Tyre({
  x,
  y,
  width = 24,
  height = 64,
  turn = 0,
}: {
  x: number;
  y: number;
  width?: number;
  height?: number;
  turn?: number;
}) {
  return (
    <g transform={turn === 0 ? undefined : `rotate(${turn} ${x} ${y})`}>
      <rect
        class="context solid"
        x={x - width / 2}
        y={y - height / 2}
        width={width}
        height={height}
        rx={7}
      />
      <path
        class="context dashed"
        d={`M${x - width / 6} ${y - height / 2 + 5}v${height - 10}M${x + width / 6} ${y - height / 2 + 5}v${height - 10}`}
      />
    </g>
  );
}

/** A coil spring between two heights around x. */
export function Coils({
  x,
  top,
  bottom,
  half = 16,
  turns,
  lean = 0,
}: {
  x: number;
  top: number;
  bottom: number;
  half?: number;
  turns: number;
  lean?: number;
}) {
  const rise = (bottom - top) / turns;
  const zigzag = Array.from({ length: turns }, (_, coil) => {
    const y = top + coil * rise;
    return `M${x - half} ${tenths(y + rise)}L${x + half} ${tenths(y)}`;
  });
  return (
    <path
      class="context"
      transform={lean === 0 ? undefined : `rotate(${lean} ${x} ${(top + bottom) / 2})`}
      d={zigzag.join("")}
    />
  );
}

/** A damper with its body below and its rod above, turned about its lower eye at (0, 0). */
export function DamperShape({
  x,
  y,
  length,
  body,
  turn = 0,
  children,
}: {
  x: number;
  y: number;
  length: number;
  body: number;
  turn?: number;
  children?: ComponentChildren;
}) {
  return (
    <g transform={`translate(${x} ${y}) rotate(${turn})`}>
      <path class="part" d={`M0 ${-body}V${-length}`} />
      <rect class="part solid" x={-7} y={-body} width={14} height={body - 4} />
      <circle class="part solid" cx={0} cy={0} r={4.5} />
      <circle class="part solid" cx={0} cy={-length} r={4.5} />
      {children}
    </g>
  );
}
