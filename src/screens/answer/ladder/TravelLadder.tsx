import type { CornerAssessment, Interval } from "../../../physics/fitment.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import * as messages from "../../../words/compiled/screens/answer/ladder.ts";
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
const lineHeight = 14;
/** As many letters as stand beside a bar on the narrowest phone, where another bar follows. */
const narrowLetters = 13;
/** The same of a range, written smaller. */
const narrowRange = 15;
/** Of what is as long, px: it is squeezed to that. */
const narrowWord = 88;

const title = { left: messages.left, right: messages.right } as const;

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
  const heading = messages.wheelTravelUpFrom({
    side: title[assessed.side],
    label: label && `, ${label}`,
  });
  return (
    <ChartFigure
      heading={heading}
      words={words}
      assumed={ladder.sagMm === null || ladder.sagMm === 0 ? [] : [messages.loadSinksVehicleOn]}
      table={() => <LadderTable heading={heading} ladder={ladder} unit={unit} />}
      drawing={
        <div ref={holder}>
          <LadderDrawing ladder={ladder} unit={unit} width={width} words={`${heading}. ${words}`} />
        </div>
      }
    />
  );
}

/** One bar as measured; beside it, where a load moves the vehicle, one as loaded. */
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
  const { sagMm } = ladder;
  const span = ladder.greatestMm - ladder.leastMm || 1;
  const scale = linearScale(
    [ladder.leastMm, ladder.greatestMm + 0.03 * span],
    [height - bottom, top],
  );
  const hasLoad = sagMm !== null && sagMm !== 0;
  const half = width / 2;
  return (
    <svg
      class="ladder"
      role="img"
      aria-label={words}
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
    >
      <Bar
        ladder={ladder}
        scale={scale}
        x={6}
        rest={0}
        name={messages.asMeasured}
        roomy={!hasLoad}
        unit={unit}
      />
      {hasLoad && (
        <Bar
          ladder={ladder}
          scale={scale}
          x={half + 6}
          rest={sagMm}
          name={messages.loaded2}
          roomy={false}
          unit={unit}
        />
      )}
    </svg>
  );
}

const squeezed = { textLength: narrowWord, lengthAdjust: "spacingAndGlyphs" };

/** Words broken between them into lines of that many letters at most; a longer word has a line of its own. */
function inLines(words: string, letters: number): string[] {
  const lines: string[] = [];
  for (const word of words.split(" ")) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= letters) {
      lines[lines.length - 1] = `${last} ${word}`;
    } else lines.push(word);
  }
  return lines;
}

/** A bar with what comes when to its right, from its own rest. */
function Bar({
  ladder,
  scale,
  x,
  rest,
  name,
  roomy,
  unit,
}: {
  ladder: Ladder;
  scale: Scale;
  x: number;
  rest: number;
  name: string;
  /** Words and number on one line. */
  roomy: boolean;
  unit: LengthUnit;
}) {
  const marks = [
    ...ladder.rungs.map((rung) => ({
      id: rung.id as string,
      words: rung.words,
      at: rung.travelMm,
      number: lengthText(rung.travelMm - rest, unit),
      range: rung.band && shortBand([rung.band[0] - rest, rung.band[1] - rest], unit),
    })),
    { id: "ride", words: messages.rest, at: rest, number: bareLength(0, unit), range: null },
  ];
  const wordLines = (words: string) => (roomy ? [words] : inLines(words, narrowLetters));
  const mostLines = Math.max(...marks.map(({ words }) => wordLines(words).length));
  const gap = lineHeight * (roomy ? 2 : mostLines + 2) + 4;
  const lowest = marks.reduce((least, mark) => (mark.at < least.at ? mark : least));
  const lowestLines =
    wordLines(lowest.words).length + [!roomy, lowest.range].filter(Boolean).length;
  const labels = spreadLabels(
    marks.map(({ at }) => scale.at(at)),
    gap,
    [top + 8, Math.min(height - bottom, height - 6 - lineHeight * (lowestLines - 1))],
  );
  const edge = x + columnWidth + 3;
  const textX = edge + 16;
  return (
    <g>
      <text class="ladder-head" x={x} y={14}>
        {name}
      </text>
      <Column ladder={ladder} scale={scale} x={x} rest={rest} />
      {marks.map(({ id, words, at, number, range }, index) => {
        const y = scale.at(at);
        const labelY = labels[index] ?? y;
        const told = wordLines(words);
        const lines = roomy ? [range] : [number, range];
        return (
          <g key={id} class={`rung rung-${id}`}>
            <path class="rung-leader" d={`M${edge} ${y}L${edge + 12} ${labelY}`} />
            {told.map((line, row) => (
              <text
                key={line}
                class="rung-words"
                x={textX}
                y={labelY + 4 + lineHeight * row}
                {...(!roomy && line.length >= narrowLetters && !line.includes(" ") && squeezed)}
              >
                {line}
                {roomy && <tspan class="rung-number">{`  ${number}`}</tspan>}
              </text>
            ))}
            {lines
              .filter((line) => line !== null)
              .map((line, row) => (
                <text
                  key={line}
                  class={!roomy && row === 0 ? "rung-number" : "rung-range"}
                  x={textX}
                  y={labelY + 4 + lineHeight * (told.length + row)}
                  {...(!roomy && line.length > narrowRange && squeezed)}
                >
                  {line}
                </text>
              ))}
          </g>
        );
      })}
    </g>
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

function shortBand([low, high]: Interval, unit: LengthUnit): string {
  return [low, high].map((mm) => bareLength(mm, unit)).join(low < 0 ? messages.to : "–");
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
        { name: messages.mark },
        { name: messages.asMeasured2 },
        { name: messages.n95Range },
        { name: messages.loaded },
        { name: messages.n95Range, note: messages.loaded2 },
      ]}
      rows={rungs.map(({ words, travelMm, band }) => [
        words,
        lengthText(travelMm, unit),
        band ? bandText(band, unit) : "–",
        sagMm === null ? messages.notKnown : lengthText(travelMm - sagMm, unit),
        sagMm === null || !band ? "–" : bandText([band[0] - sagMm, band[1] - sagMm], unit),
      ])}
    />
  );
}
