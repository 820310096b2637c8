import { useId } from "preact/hooks";
import * as messages from "../../words/compiled/screens/charts.ts";
import { BottomAxis, LeftAxis } from "./Axis.tsx";
import type { AxisUnit } from "./axisUnit.ts";
import { tickText } from "./axisUnit.ts";
import { ChartFigure } from "./ChartFigure.tsx";
import { useChartWidth } from "./chartWidth.ts";
import { DataTable } from "./DataTable.tsx";
import { Legend } from "./Legend.tsx";
import { linePath } from "./linePath.ts";
import { linearScale } from "./scale.ts";
import { linearTicks } from "./ticks.ts";
import "./charts.css";
import "./series.css";

/** Points in the model's units. */
export interface Series {
  readonly name: string;
  readonly look: "line" | "dots";
  readonly points: readonly (readonly [number, number])[];
  /** Half-length of a bar at each point, same unit as its second number. */
  readonly bars?: readonly (number | null)[];
}

export interface ChartAxis {
  readonly words: string;
  readonly unit: AxisUnit;
}

const height = 300;
const plot = { left: 62, right: 12, top: 30, bottom: 44 } as const;
const margin = 0.04;

/** As many looks as a drawing can hold apart; each differs in dashes or shape as well as in colour. */
export const seriesLooks = 6;

function spanOf(values: readonly number[], withZero: boolean): [number, number] {
  let least = withZero ? 0 : Number.POSITIVE_INFINITY;
  let greatest = withZero ? 0 : Number.NEGATIVE_INFINITY;
  for (const value of values) {
    if (!Number.isFinite(value)) continue;
    if (value < least) least = value;
    if (value > greatest) greatest = value;
  }
  if (!(greatest > least)) return [least - 1 || -1, greatest + 1 || 1];
  const room = margin * (greatest - least);
  return [least < 0 ? least - room : least, greatest + room];
}

/** Outlines about the point that the pen stands on. */
const dotShapes = [
  "m-3 0a3 3 0 1 0 6 0a3 3 0 1 0-6 0z",
  "m-3-3h6v6h-6z",
  "m0-4l4 7h-8z",
  "m0-4l4 4l-4 4l-4-4z",
  "m-3-3l6 6m0-6l-6 6",
  "m0-4v8m-4-4h8",
];

/** All dots of a series as one path: thousands of elements would hold the page up for whole frames. */
function Dots({ look, at }: { look: number; at: readonly (readonly [number, number])[] }) {
  const shape = dotShapes[look] ?? "";
  const outlines = at.map(([x, y]) => `M${x.toFixed(1)} ${y.toFixed(1)}${shape}`);
  return <path class={`series-dot series-${look}`} d={outlines.join("")} />;
}

/** Several series over one pair of axes, with the same behind it in words and as a table. */
export function SeriesChart({
  heading,
  says,
  words,
  assumed = [],
  x: xAxis,
  y: yAxis,
  series,
  marks = [],
  tableRows = 24,
  xWithZero = true,
}: {
  heading: string;
  says?: string;
  words: string;
  assumed?: readonly string[];
  x: ChartAxis;
  y: ChartAxis;
  series: readonly Series[];
  /** Lines across the drawing at an x of the model. */
  marks?: readonly { readonly words: string; readonly at: number }[];
  /** At most so many rows of each series in the table. */
  tableRows?: number;
  xWithZero?: boolean;
}) {
  const { holder, width } = useChartWidth(560);
  const clip = useId();
  const shown = series.slice(0, seriesLooks);
  const xs = shown.flatMap(({ points }) => points.map(([x]) => xAxis.unit.of(x)));
  const ys = shown.flatMap(({ points, bars }) =>
    points.flatMap(([, y], index) => {
      const bar = bars?.[index] ?? 0;
      return [yAxis.unit.of(y - bar), yAxis.unit.of(y + bar)];
    }),
  );
  const x = linearScale(spanOf(xs, xWithZero), [plot.left, width - plot.right]);
  const y = linearScale(spanOf(ys, true), [height - plot.bottom, plot.top]);
  const at = ([px, py]: readonly [number, number]): [number, number] => [
    x.at(xAxis.unit.of(px)),
    y.at(yAxis.unit.of(py)),
  ];
  const barAt = ([px, py]: readonly [number, number], half: number) => {
    if (half <= 0) return "";
    const [low, high] = [py - half, py + half].map((end) => y.at(yAxis.unit.of(end)).toFixed(1));
    return `M${x.at(xAxis.unit.of(px)).toFixed(1)} ${low}V${high}`;
  };
  return (
    <ChartFigure
      heading={heading}
      words={words}
      assumed={assumed}
      {...(says && { says })}
      drawing={
        <div ref={holder}>
          <svg
            role="img"
            aria-label={`${heading}. ${words}`}
            width={width}
            height={height}
            viewBox={`0 0 ${width} ${height}`}
          >
            <clipPath id={clip}>
              <rect
                x={plot.left}
                y={plot.top - 6}
                width={width - plot.left - plot.right + 6}
                height={height - plot.top - plot.bottom + 12}
              />
            </clipPath>
            <LeftAxis
              scale={y}
              x={plot.left}
              ticks={linearTicks(y.domain[0], y.domain[1], 5)}
              gridRight={width - plot.right}
              label={`${yAxis.words}, ${yAxis.unit.suffix}`}
            />
            <BottomAxis
              scale={x}
              y={height - plot.bottom}
              ticks={linearTicks(x.domain[0], x.domain[1], width > 440 ? 8 : 5)}
              label={`${xAxis.words}, ${xAxis.unit.suffix}`}
            />
            {y.domain[0] < 0 && (
              <line
                class="series-zero"
                x1={plot.left}
                x2={width - plot.right}
                y1={y.at(0)}
                y2={y.at(0)}
              />
            )}
            <g clip-path={`url(#${clip})`}>
              {shown.map(({ name, look, points, bars }, index) =>
                look === "line" ? (
                  <path
                    key={name}
                    class={`series-line series-${index}`}
                    d={linePath(points.map(at))}
                  />
                ) : (
                  <g key={name}>
                    {bars && (
                      <path
                        class={`series-bar series-${index}`}
                        d={points.map((point, place) => barAt(point, bars[place] ?? 0)).join("")}
                      />
                    )}
                    <Dots look={index} at={points.map(at)} />
                  </g>
                ),
              )}
            </g>
            {marks.map((mark, index) => {
              const place = x.at(xAxis.unit.of(mark.at));
              const before = place > (plot.left + width) / 2;
              return (
                <g key={mark.words} class="mark">
                  <line x1={place} x2={place} y1={plot.top} y2={height - plot.bottom} />
                  <text
                    x={before ? place - 5 : place + 5}
                    y={plot.top + 12 + 16 * index}
                    text-anchor={before ? "end" : "start"}
                  >
                    {mark.words}
                  </text>
                </g>
              );
            })}
          </svg>
        </div>
      }
      table={() => (
        <DataTable
          caption={heading}
          columns={[
            { name: messages.series },
            { name: `${xAxis.words}, ${xAxis.unit.suffix}` },
            { name: `${yAxis.words}, ${yAxis.unit.suffix}` },
          ]}
          rows={shown.flatMap(({ name, points }) =>
            thinned(points, tableRows).map(([px, py]) => [
              name,
              numberText(xAxis.unit.of(px)),
              numberText(yAxis.unit.of(py)),
            ]),
          )}
        />
      )}
    >
      <Legend
        items={shown.map(({ name, look }, index) => ({
          words: name,
          sample:
            look === "line" ? (
              <path class={`series-line series-${index}`} d="M1 8H27" />
            ) : (
              <Dots look={index} at={[[14, 8]]} />
            ),
        }))}
      />
    </ChartFigure>
  );
}

function thinned<Item>(items: readonly Item[], most: number): readonly Item[] {
  if (items.length <= most) return items;
  return Array.from(
    { length: most },
    (_, index) => items[Math.round((index * (items.length - 1)) / (most - 1))] as Item,
  );
}

function numberText(value: number): string {
  return Number.isFinite(value) ? tickText(Number(value.toPrecision(4))) : "–";
}
