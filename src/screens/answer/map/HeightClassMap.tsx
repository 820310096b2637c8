import { useState } from "preact/hooks";
import type { MapLayout } from "../../../compute/messages.ts";
import type { Side, UseRules } from "../../../physics/fitment.ts";
import type { MapCell } from "../../../physics/stiffness/index.ts";
import { stiffnessClassOf } from "../../../physics/stop/index.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import * as messages from "../../../words/compiled/screens/answer/map.ts";
import { cellKey, type FillingMap } from "../../assessment/useHeightClassMap.ts";
import { ChartFigure } from "../../charts/ChartFigure.tsx";
import { useChartWidth } from "../../charts/chartWidth.ts";
import { DataTable } from "../../charts/DataTable.tsx";
import { Hatches } from "../../charts/Hatches.tsx";
import { Legend } from "../../charts/Legend.tsx";
import { Button } from "../../parts/Button.tsx";
import { CellFigures } from "./CellFigures.tsx";
import {
  classText,
  failureOrder,
  failureWords,
  foremost,
  heightText,
  type Place,
} from "./cellWords.ts";
import { MapDrawing } from "./MapDrawing.tsx";

/** Extra height by stiffness class: what fits, what fails on what, where this stop is. */
export function HeightClassMap({
  heading,
  side,
  map,
  rules,
  assumed,
  unit,
}: {
  heading: string;
  side: Side;
  map: FillingMap;
  rules: UseRules;
  assumed: readonly string[];
  unit: LengthUnit;
}) {
  const { holder, width } = useChartWidth(640);
  const { layout } = map;
  const [picked, setPicked] = useState<Place | null>(null);
  if (!layout) return <p class="soft">{messages.workingOutMap}</p>;
  const own = ownPlace(layout);
  const place = picked && picked.column < layout.heights.length ? picked : own;
  const cellAt = ({ column, row }: Place) =>
    map.cells.get(cellKey(layout.heights[column] ?? 0, layout.classes[row] ?? 0));
  const present = failureOrder.filter((failure) =>
    [...map.cells.values()].some((cell) => foremost(cell.failures) === failure),
  );
  const words = mapWords(map, layout, unit);
  const prefix = `hatch-${side}`;
  const move = (columns: number, rows: number) =>
    setPicked({
      column: Math.min(Math.max(place.column + columns, 0), layout.heights.length - 1),
      row: Math.min(Math.max(place.row + rows, 0), layout.classes.length - 1),
    });

  return (
    <ChartFigure
      heading={heading}
      words={words}
      says={words}
      assumed={assumed}
      drawing={
        <div class="map-and-cell">
          <div ref={holder}>
            <MapDrawing
              layout={layout}
              cellAt={cellAt}
              own={own}
              place={place}
              onPick={setPicked}
              onMove={move}
              width={width}
              prefix={prefix}
              heading={heading}
              unit={unit}
            />
          </div>
          <div>
            <div class="cell-steps">
              <Stepper
                name={messages.extraHeight}
                value={heightText(layout.heights[place.column] ?? 0, unit)}
                less={place.column > 0 ? () => move(-1, 0) : null}
                more={place.column < layout.heights.length - 1 ? () => move(1, 0) : null}
              />
              <Stepper
                name={messages.stiffnessClass}
                value={classText(layout.classes[place.row] ?? 0, unit)}
                less={place.row > 0 ? () => move(0, -1) : null}
                more={place.row < layout.classes.length - 1 ? () => move(0, 1) : null}
              />
            </div>
            <CellFigures cell={cellAt(place)} rules={rules} unit={unit} />
          </div>
        </div>
      }
      table={() => <MapTable heading={heading} layout={layout} cellAt={cellAt} unit={unit} />}
    >
      <Legend
        items={[
          { words: messages.works, sample: <rect class="cell-works" width="28" height="16" /> },
          ...present.map((failure) => ({
            words: failureWords[failure],
            sample: (
              <>
                <Hatches prefix={`${prefix}-legend`} />
                <rect width="28" height="16" fill={`url(#${prefix}-legend-${failure})`} />
              </>
            ),
          })),
          {
            words: messages.thisStop,
            sample: <circle class="own-stop" cx="14" cy="8" r="5.5" />,
          },
        ]}
      />
    </ChartFigure>
  );
}

/** The cell this stop belongs to: no extra height, its own class. */
function ownPlace(layout: MapLayout): Place {
  const own = stiffnessClassOf(layout.secantRateNPerMm);
  return {
    column: Math.max(0, layout.heights.indexOf(0)),
    row: Math.max(0, layout.classes.indexOf(own)),
  };
}

function mapWords({ cells, done }: FillingMap, layout: MapLayout, unit: LengthUnit): string {
  const working: MapCell[] = [...cells.values()].filter(({ failures }) => failures.length === 0);
  const total = layout.heights.length * layout.classes.length;
  const filling = done ? "" : messages.workedOutSoFar({ cells: cells.size, total });
  const [least, greatest] = [layout.heights[0] ?? 0, layout.heights.at(-1) ?? 0];
  const range = messages.fromTo({
    height: heightText(least, unit),
    height2: heightText(greatest, unit),
  });
  if (working.length === 0) {
    return done ? messages.noCombinationOfExtra({ range }) : messages.noneFitsYet({ filling });
  }
  const heights = working.map(({ extraHeightMm }) => extraHeightMm);
  const classes = working.map(({ stiffnessClass }) => stiffnessClass);
  const full = new Set(heights).size * new Set(classes).size;
  return messages.ofCombinationsFitExtra({
    working: working.length,
    total,
    fromTo: fromTo(heights, (height) => heightText(height, unit)),
    fromTo2: fromTo(classes, (one) => classText(one, unit)),
    isWorking: working.length < full,
    filling,
  });
}

function fromTo(values: readonly number[], text: (value: number) => string): string {
  const [least, greatest] = [Math.min(...values), Math.max(...values)];
  return least === greatest
    ? text(least)
    : messages.to({ least: text(least), greatest: text(greatest) });
}

function Stepper({
  name,
  value,
  less,
  more,
}: {
  name: string;
  value: string;
  less: (() => void) | null;
  more: (() => void) | null;
}) {
  return (
    <fieldset class="stepper">
      <legend>{name}</legend>
      <Button
        icon="minus"
        label={messages.less({ name })}
        disabled={!less}
        onClick={() => less?.()}
      />
      <output>{value}</output>
      <Button
        icon="plus"
        label={messages.more({ name })}
        disabled={!more}
        onClick={() => more?.()}
      />
    </fieldset>
  );
}

function MapTable({
  heading,
  layout,
  cellAt,
  unit,
}: {
  heading: string;
  layout: MapLayout;
  cellAt: (place: Place) => MapCell | undefined;
  unit: LengthUnit;
}) {
  return (
    <DataTable
      caption={messages.whatFails({ heading })}
      columns={[
        { name: messages.extraHeight },
        ...layout.classes.map((one) => ({ name: classText(one, unit) })),
      ]}
      rows={layout.heights.map((height, column) => [
        heightText(height, unit),
        ...layout.classes.map((_, row) => {
          const cell = cellAt({ column, row });
          if (!cell) return "…";
          return cell.failures.length === 0
            ? messages.works
            : cell.failures.map((failure) => failureWords[failure]).join(", ");
        }),
      ])}
    />
  );
}
