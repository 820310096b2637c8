import { useRef } from "preact/hooks";
import type { MapLayout } from "../../../compute/messages.ts";
import type { MapCell } from "../../../physics/stiffness/index.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import { unitText } from "../../../saying/unitText.ts";
import * as messages from "../../../words/compiled/screens/answer/map.ts";
import { lengthAxis, tickText } from "../../charts/axisUnit.ts";
import { Hatches } from "../../charts/Hatches.tsx";
import {
  classText,
  failureWords,
  foremost,
  heightText,
  type Place,
  regionWords,
} from "./cellWords.ts";
import { outline } from "./outline.ts";
import { regionLabels } from "./regionLabels.ts";

const left = 52;
/** Half as wide as a number at the axis is, px: the last one keeps within the drawing. */
const halfNumber = 20;
const top = 26;
const rowHeight = 24;
const letterWidth = 7.2;

const arrows: Record<string, readonly [number, number]> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** The grid itself: softest class at the bottom, the least height at the left. */
export function MapDrawing({
  layout,
  cellAt,
  own,
  place,
  onPick,
  onMove,
  width,
  prefix,
  heading,
  unit,
}: {
  layout: MapLayout;
  cellAt: (place: Place) => MapCell | undefined;
  own: Place;
  place: Place;
  onPick: (place: Place) => void;
  onMove: (columns: number, rows: number) => void;
  width: number;
  prefix: string;
  heading: string;
  unit: LengthUnit;
}) {
  const drawing = useRef<SVGSVGElement>(null);
  const { heights, classes } = layout;
  const columnWidth = (width - left - 4) / heights.length;
  const bottom = top + rowHeight * classes.length;
  const x = (column: number) => left + column * columnWidth;
  const y = (row: number) => bottom - (row + 1) * rowHeight;
  const works = (column: number, row: number) => cellAt({ column, row })?.failures.length === 0;
  const every = Math.ceil(46 / columnWidth);
  const middle = heights.indexOf(0);

  const labels = regionLabels(
    heights.length,
    classes.length,
    cellAt,
    (region) => Math.ceil((letterWidth * regionWords[region].length + 8) / columnWidth),
    own,
  );

  const pickFrom = (event: MouseEvent) => {
    const box = drawing.current?.getBoundingClientRect();
    if (!box) return;
    const column = Math.floor((event.clientX - box.left - left) / columnWidth);
    const row = Math.floor((bottom - (event.clientY - box.top)) / rowHeight);
    if (column >= 0 && row >= 0 && column < heights.length && row < classes.length) {
      onPick({ column, row });
    }
  };
  const moveBy = (event: KeyboardEvent) => {
    const step = arrows[event.key];
    if (!step) return;
    event.preventDefault();
    onMove(step[0], step[1]);
  };

  const picked = cellAt(place);
  const told = picked
    ? picked.failures.length === 0
      ? messages.works
      : picked.failures.map((failure) => failureWords[failure]).join(", ")
    : messages.notWorkedOutYet2;
  return (
    <div
      class="map"
      role="slider"
      tabIndex={0}
      aria-label={messages.arrowKeysMoveFrom({ heading })}
      aria-valuemin={0}
      aria-valuemax={heights.length * classes.length - 1}
      aria-valuenow={place.row * heights.length + place.column}
      aria-valuetext={messages.extraHeightClass({
        height: heightText(heights[place.column] ?? 0, unit),
        class: classText(classes[place.row] ?? 0, unit),
        told,
      })}
      onClick={pickFrom}
      onKeyDown={moveBy}
    >
      <svg
        ref={drawing}
        aria-hidden="true"
        width={width}
        height={bottom + 44}
        viewBox={`0 0 ${width} ${bottom + 44}`}
      >
        <Hatches prefix={prefix} />
        <text class="axis-label" x={0} y={14}>
          {messages.classWord({ unit: unitText(unit === "in" ? "lbf/in" : "N/mm") })}
        </text>
        {classes.map((one, row) => (
          <text key={one} class="axis-number" x={left - 6} y={y(row) + 16} text-anchor="end">
            {classText(one, unit).replace(/\s.*$/, "")}
          </text>
        ))}
        {heights.map((height, column) =>
          classes.map((one, row) => {
            const cell = cellAt({ column, row });
            const failure = cell && foremost(cell.failures);
            return (
              <rect
                key={`${height} ${one}`}
                class={cell ? (failure ? "cell" : "cell cell-works") : "cell cell-waiting"}
                x={x(column)}
                y={y(row)}
                width={columnWidth}
                height={rowHeight}
                fill={failure ? `url(#${prefix}-${failure})` : undefined}
              />
            );
          }),
        )}
        <path
          class="map-outline"
          d={outline(heights.length, classes.length, works, (column, row) => [
            x(column),
            bottom - row * rowHeight,
          ])}
        />
        {heights.map(
          (height, column) =>
            (column - middle) % every === 0 && (
              <text
                key={height}
                class="axis-number"
                x={Math.min(x(column) + columnWidth / 2, width - halfNumber)}
                y={bottom + 16}
                text-anchor="middle"
              >
                {height > 0 ? "+" : ""}
                {tickText(
                  Number(
                    lengthAxis(unit)
                      .of(height)
                      .toFixed(unit === "in" ? 2 : 0),
                  ),
                )}
              </text>
            ),
        )}
        <text class="axis-label" x={width - 4} y={bottom + 34} text-anchor="end">
          {messages.extraHeightBySpacer({ suffix: lengthAxis(unit).suffix })}
        </text>
        {labels.map(({ region, row, column, columns }) => (
          <text
            key={region}
            class={`map-region map-region-${region}`}
            x={x(column) + (columns * columnWidth) / 2}
            y={y(row) + rowHeight / 2 + 4}
            text-anchor="middle"
          >
            {regionWords[region]}
          </text>
        ))}
        <circle
          class="own-stop"
          cx={x(own.column) + columnWidth / 2}
          cy={y(own.row) + rowHeight / 2}
          r={Math.min(7, columnWidth / 2 - 2)}
        />
        <rect
          class="cell-picked"
          x={x(place.column)}
          y={y(place.row)}
          width={columnWidth}
          height={rowHeight}
        />
      </svg>
    </div>
  );
}
