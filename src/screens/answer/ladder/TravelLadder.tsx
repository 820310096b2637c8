import type { CornerAssessment, Interval } from "../../../physics/fitment.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import { ChartFigure } from "../../charts/ChartFigure.tsx";
import { useChartWidth } from "../../charts/chartWidth.ts";
import { DataTable } from "../../charts/DataTable.tsx";
import { linearScale, type Scale } from "../../charts/scale.ts";
import { spreadLabels } from "../../charts/spreadLabels.ts";
import { type Ladder, ladderOf, type Rung } from "./ladderRungs.ts";
import { bandText, bareLength, ladderWords, lengthText } from "./ladderWords.ts";

const height = 336;
const top = 30;
const bottom = 26;
const columnWidth = 30;
const numbersWidth = 72;
const labelGap = 36;

const title = { left: "Left", right: "Right" } as const;

/** Wheel travel as a ladder: where the vehicle stands, as measured and loaded, and what comes when. */
export function TravelLadder({
  assessed,
  unit,
  label = "",
}: {
  assessed: CornerAssessment;
  unit: LengthUnit;
  /** Which stop, where two are shown side by side. */
  label?: string;
}) {
  const { holder, width } = useChartWidth(520);
  const ladder = ladderOf(assessed);
  const words = ladderWords(assessed.side, ladder, unit);
  const heading = `${title[assessed.side]}: wheel travel up from ride${label && `, ${label}`}`;
  return (
    <ChartFigure
      heading={heading}
      words={words}
      assumed={
        ladder.sagMm === null || ladder.sagMm === 0
          ? []
          : ["The load sinks the vehicle on a linear spring; the bands are those of the readings."]
      }
      table={() => <LadderTable heading={heading} ladder={ladder} unit={unit} />}
      drawing={
        <div ref={holder}>
          <LadderDrawing ladder={ladder} unit={unit} width={width} words={`${heading}. ${words}`} />
        </div>
      }
    />
  );
}

function LadderDrawing({
  ladder,
  unit,
  width,
  words,
}: {
  ladder: Ladder;
  unit: LengthUnit;
  width: number;
  words: string;
}) {
  const { rungs, sagMm } = ladder;
  const span = ladder.greatestMm - ladder.leastMm || 1;
  const scale = linearScale(
    [ladder.leastMm, ladder.greatestMm + 0.03 * span],
    [height - bottom, top],
  );
  const left = numbersWidth;
  const right = width - numbersWidth - columnWidth;
  const middle = width / 2;
  const labels = spreadLabels(
    rungs.map(({ travelMm }) => scale.at(travelMm)),
    labelGap,
    [top + 8, height - bottom - 24],
  );
  const lowest = Math.max(...labels);
  const ridePlace = (rest: number) => Math.max(scale.at(rest) + 5, lowest + 30);
  return (
    <svg
      class="ladder"
      role="img"
      aria-label={words}
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
    >
      <text class="ladder-head" x={left + columnWidth} y={14} text-anchor="end">
        as measured
      </text>
      <text class="ladder-head" x={right} y={14}>
        {sagMm === null ? "loaded: not known" : sagMm === 0 ? "no payload entered" : "loaded"}
      </text>
      <Column ladder={ladder} scale={scale} x={left} rest={0} />
      {sagMm !== null && <Column ladder={ladder} scale={scale} x={right} rest={sagMm} />}
      {rungs.map((rung, index) => {
        const y = scale.at(rung.travelMm);
        const labelY = labels[index] ?? y;
        return (
          <g key={rung.id} class={`rung rung-${rung.id}`}>
            <path
              class="rung-leader"
              d={`M${left + columnWidth} ${y}L${left + columnWidth + 12} ${labelY}H${middle - 38}${
                sagMm === null ? "" : `M${right} ${y}L${right - 12} ${labelY}H${middle + 38}`
              }`}
            />
            {rung.lines.map((line, row) => (
              <text
                key={line}
                class="rung-words"
                x={middle}
                y={labelY + 4 + 14 * row}
                text-anchor="middle"
              >
                {line}
              </text>
            ))}
            <Numbers rung={rung} rest={0} x={left - 6} y={labelY} anchor="end" unit={unit} />
            {sagMm !== null && (
              <Numbers
                rung={rung}
                rest={sagMm}
                x={right + columnWidth + 6}
                y={labelY}
                anchor="start"
                unit={unit}
              />
            )}
          </g>
        );
      })}
      <text
        class="rung-words"
        x={middle}
        y={Math.max(scale.at(0) + 16, lowest + 34)}
        text-anchor="middle"
      >
        ride
      </text>
      <text class="rung-number" x={left - 6} y={ridePlace(0)} text-anchor="end">
        0
      </text>
      {sagMm !== null && (
        <text class="rung-number" x={right + columnWidth + 6} y={ridePlace(sagMm)}>
          0
        </text>
      )}
    </svg>
  );
}

function Column({
  ladder: { rungs, greatestMm },
  scale,
  x,
  rest,
}: {
  ladder: Ladder;
  scale: Scale;
  x: number;
  rest: number;
}) {
  const contact = rungs.find(({ id }) => id === "contact")?.travelMm ?? 0;
  const fullStop = rungs.find(({ id }) => id === "fullStop")?.travelMm ?? greatestMm;
  const hardLimit = rungs.find(({ id }) => id === "hardLimit")?.travelMm ?? fullStop;
  const block = (from: number, to: number, name: string) => (
    <rect
      class={`ladder-${name}`}
      x={x}
      width={columnWidth}
      y={scale.at(Math.max(from, to))}
      height={Math.abs(scale.at(from) - scale.at(to))}
    />
  );
  return (
    <g>
      {block(rest, Math.max(rest, contact), "free")}
      {block(Math.max(rest, contact), Math.min(fullStop, hardLimit), "working")}
      {hardLimit > fullStop && block(fullStop, hardLimit, "reserve")}
      {hardLimit < fullStop && block(hardLimit, fullStop, "beyond")}
      {rungs.map((rung) => (
        <RungMark key={rung.id} rung={rung} scale={scale} x={x} />
      ))}
      <path
        class="ladder-rest"
        d={`M${x - 4} ${scale.at(rest)}H${x + columnWidth + 4}M${x + columnWidth / 2} ${scale.at(rest) - 3}l-6 10h12z`}
      />
    </g>
  );
}

function RungMark({ rung, scale, x }: { rung: Rung; scale: Scale; x: number }) {
  const y = scale.at(rung.travelMm);
  const [low, high] = rung.band ?? [rung.travelMm, rung.travelMm];
  return (
    <g class={`rung rung-${rung.id}`}>
      <rect
        class="rung-band"
        x={x + 3}
        width={columnWidth - 6}
        y={scale.at(high)}
        height={Math.max(2, scale.at(low) - scale.at(high))}
      />
      <line class="rung-line" x1={x - 3} x2={x + columnWidth + 3} y1={y} y2={y} />
      {rung.id === "contact" && <circle class="rung-sign" cx={x + columnWidth / 2} cy={y} r="5" />}
      {rung.id === "hardLimit" && (
        <path class="rung-sign" d={`M${x - 3} ${y - 5}H${x + columnWidth + 3}V${y}H${x - 3}Z`} />
      )}
    </g>
  );
}

function Numbers({
  rung: { travelMm, band },
  rest,
  x,
  y,
  anchor,
  unit,
}: {
  rung: Rung;
  rest: number;
  x: number;
  y: number;
  anchor: "start" | "end";
  unit: LengthUnit;
}) {
  const shifted = (interval: Interval): Interval => [interval[0] - rest, interval[1] - rest];
  return (
    <>
      <text class="rung-number" x={x} y={y} text-anchor={anchor}>
        {lengthText(travelMm - rest, unit)}
      </text>
      {band && (
        <text class="rung-range" x={x} y={y + 14} text-anchor={anchor}>
          {shortBand(shifted(band), unit)}
        </text>
      )}
    </>
  );
}

function shortBand([low, high]: Interval, unit: LengthUnit): string {
  return [low, high].map((mm) => bareLength(mm, unit)).join(low < 0 ? " to " : "–");
}

function LadderTable({
  heading,
  ladder: { rungs, sagMm },
  unit,
}: {
  heading: string;
  ladder: Ladder;
  unit: LengthUnit;
}) {
  return (
    <DataTable
      caption={heading}
      columns={[
        { name: "Mark" },
        { name: "As measured" },
        { name: "95 % range" },
        { name: "Loaded" },
        { name: "95 % range", note: "loaded" },
      ]}
      rows={rungs.map(({ words, travelMm, band }) => [
        words,
        lengthText(travelMm, unit),
        band ? bandText(band, unit) : "–",
        sagMm === null ? "not known" : lengthText(travelMm - sagMm, unit),
        sagMm === null || !band ? "–" : bandText([band[0] - sagMm, band[1] - sagMm], unit),
      ])}
    />
  );
}
