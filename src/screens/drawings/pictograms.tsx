import type { ComponentChildren, JSX } from "preact";
import { useId } from "preact/hooks";
import "./drawings.css";

/** Pictograms are drawn on 72 × 56. */
const pictogramSize = { width: 72, height: 56 } as const;

export function Pictogram({
  title,
  children,
}: {
  readonly title: string;
  readonly children: ComponentChildren;
}) {
  const id = useId();
  return (
    <svg
      class="drawing pictogram"
      viewBox={`0 0 ${pictogramSize.width} ${pictogramSize.height}`}
      role="img"
      aria-labelledby={`${id}-title`}
    >
      <title id={`${id}-title`}>{title}</title>
      {children}
    </svg>
  );
}

interface Placed {
  readonly x?: number;
  readonly y?: number;
}

export function GroundLine({ y = 44, from = 4, to = 68 }) {
  const ticks = Array.from({ length: Math.floor((to - from) / 8) }, (_, index) => {
    return `M${from + 8 + index * 8} ${y}l-4 4`;
  });
  return <path class="context" d={`M${from} ${y}H${to}${ticks.join("")}`} />;
}

/** A vehicle from its side, 60 wide, standing on y = 0 at its own left end. */
export function Vehicle({ x = 6, y = 44, tyres = true }: Placed & { readonly tyres?: boolean }) {
  return (
    <g transform={`translate(${x} ${y})`}>
      <path class="part solid" d="M3-7v-9l11-3 7-9h17l9 9 10 3v9Z" />
      <path class="context" d="M18-19h28M30-28v21" />
      {tyres && <SideWheel x={15} />}
      {tyres && <SideWheel x={46} />}
    </g>
  );
}

export function SideWheel({
  x = 0,
  radius = 7,
}: {
  readonly x?: number;
  readonly radius?: number;
}) {
  return (
    <g>
      <circle class="part solid" cx={x} cy={-radius} r={radius} />
      <circle class="part" cx={x} cy={-radius} r={radius * 0.32} />
    </g>
  );
}

export function Chock({
  x,
  y = 44,
  size = 8,
  flip = false,
}: {
  readonly x: number;
  readonly y?: number;
  readonly size?: number;
  readonly flip?: boolean;
}) {
  const way = flip ? -1 : 1;
  return <path class="strong" d={`M${x} ${y}h${way * size * 1.2}l${-way * size}-${size}Z`} />;
}

/** A line with a head at its end, or at both. */
export function Arrow({ d, heads }: { readonly d: string; readonly heads: string }): JSX.Element {
  return <path class="arrow" d={`${d}${heads}`} />;
}

export function Cross({
  x,
  y,
  size = 7,
}: {
  readonly x: number;
  readonly y: number;
  readonly size?: number;
}) {
  const s = 2 * size;
  return (
    <path
      class="cross"
      d={`M${x - size} ${y - size}l${s} ${s}M${x + size} ${y - size}l-${s} ${s}`}
    />
  );
}

export function Tick({ x, y }: { readonly x: number; readonly y: number }) {
  return <path class="tick" d={`M${x - 6} ${y}l4.5 4.5 8-9`} />;
}

/** A scissor jack whose foot stands on y. */
export function Jack({
  x,
  y = 44,
  height = 18,
}: {
  readonly x: number;
  readonly y?: number;
  readonly height?: number;
}) {
  const half = height / 2;
  return (
    <path
      class="part"
      d={`M${x - 6} ${y}h12M${x} ${y}l-7-${half} 7-${half} 7 ${half}ZM${x - 4} ${y - height}h8M${x - 7} ${y - half}h14`}
    />
  );
}

/** A stand on three legs whose feet stand on y. */
export function Stand({
  x,
  y = 44,
  height = 18,
}: {
  readonly x: number;
  readonly y?: number;
  readonly height?: number;
}) {
  return (
    <path
      class="part"
      d={`M${x - 8} ${y}l6-${height - 5}h4l6 ${height - 5}M${x} ${y - height + 5}v-5M${x - 5} ${y - height}h10M${x - 5} ${y - 6}h10`}
    />
  );
}
