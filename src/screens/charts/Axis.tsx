import { tickText } from "./axisUnit.ts";
import type { Scale } from "./scale.ts";

interface AxisProps {
  readonly scale: Scale;
  readonly ticks: readonly number[];
  readonly label?: string;
  readonly format?: (value: number) => string;
}

/** Ticks and numbers along the bottom, the label under them at the right. */
export function BottomAxis({
  scale,
  ticks,
  label,
  format = tickText,
  y,
  gridTop,
}: AxisProps & { readonly y: number; readonly gridTop?: number }) {
  const [start, end] = scale.range;
  return (
    <g class="axis">
      <line class="axis-line" x1={start} x2={end} y1={y} y2={y} />
      {ticks.map((tick) => (
        <g key={tick}>
          {gridTop !== undefined && (
            <line class="axis-grid" x1={scale.at(tick)} x2={scale.at(tick)} y1={gridTop} y2={y} />
          )}
          <line class="axis-line" x1={scale.at(tick)} x2={scale.at(tick)} y1={y} y2={y + 4} />
          <text x={scale.at(tick)} y={y + 17} text-anchor="middle">
            {format(tick)}
          </text>
        </g>
      ))}
      {label && (
        <text class="axis-label" x={end} y={y + 34} text-anchor="end">
          {label}
        </text>
      )}
    </g>
  );
}

/** Ticks and numbers along the left, the label above them. */
export function LeftAxis({
  scale,
  ticks,
  label,
  format = tickText,
  x,
  gridRight,
}: AxisProps & { readonly x: number; readonly gridRight?: number }) {
  const [bottom, top] = scale.range;
  return (
    <g class="axis">
      <line class="axis-line" x1={x} x2={x} y1={bottom} y2={top} />
      {ticks.map((tick) => (
        <g key={tick}>
          {gridRight !== undefined && (
            <line class="axis-grid" x1={x} x2={gridRight} y1={scale.at(tick)} y2={scale.at(tick)} />
          )}
          <line class="axis-line" x1={x - 4} x2={x} y1={scale.at(tick)} y2={scale.at(tick)} />
          <text x={x - 7} y={scale.at(tick) + 4} text-anchor="end">
            {format(tick)}
          </text>
        </g>
      ))}
      {label && (
        <text class="axis-label" x={0} y={top - 9}>
          {label}
        </text>
      )}
    </g>
  );
}
