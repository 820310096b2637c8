import { fromModel, type LengthUnit } from "../../records/entry/units.ts";
import { quantityText } from "../../saying/quantityText.ts";
import * as messages from "../../words/compiled/screens/pack.ts";
import { type AxisUnit, forceAxis, lengthAxis } from "../charts/axisUnit.ts";
import { OneByOne } from "../charts/OneByOne.tsx";
import { type Series, SeriesChart, seriesLooks } from "../charts/SeriesChart.tsx";
import { dampingSeries, shownSpeeds, type TestPlots, thinnedPoints } from "./testPlots.ts";

function dampingAxis(unit: LengthUnit): AxisUnit {
  const suffix = unit === "in" ? "lbf·s/in" : "N·s/mm";
  return { suffix, of: (value) => fromModel(value, suffix) };
}

function speedWords(speed: number, unit: LengthUnit): string {
  if (speed === 0) return messages.staticRows;
  const text = quantityText({ kind: "speed", value: Math.abs(speed) }, unit);
  return speed > 0 ? messages.pressed({ text }) : messages.comingBack2({ text });
}

const mostDots = 160;

/** The drawings of one test: force over depth at each speed, loop, damping over depth, residuals. */
export function TestCharts({ plots, unit }: { plots: TestPlots; unit: LengthUnit }) {
  const { speeds, curve, damping, staticResiduals, speedResiduals, loops } = plots;
  const depth = { words: messages.depthOfAxis, unit: lengthAxis(unit) };
  const force = { words: messages.forceOfAxis, unit: forceAxis(unit) };
  const shown = shownSpeeds(speeds, curve ? seriesLooks - 1 : seriesLooks);
  const hidden = speeds.length - shown.length;
  const forceSeries: Series[] = [
    ...(curve
      ? [
          {
            name: messages.staticCurve2,
            look: "line" as const,
            points: [[0, 0] as const, ...curve],
          },
        ]
      : []),
    ...shown.map(({ speedMmPerS, points }) => ({
      name: speedWords(speedMmPerS, unit),
      look: "dots" as const,
      points: thinnedPoints(points, mostDots),
    })),
  ];
  const dampingRows = damping ? dampingSeries(damping) : [];
  const residuals: Series[] = [
    ...(staticResiduals
      ? [
          {
            name: messages.staticRows,
            look: "dots" as const,
            points: thinnedPoints(staticResiduals, 2 * mostDots),
          },
        ]
      : []),
    ...(speedResiduals
      ? [
          {
            name: messages.rowsAtSpeed,
            look: "dots" as const,
            points: thinnedPoints(speedResiduals, 2 * mostDots),
          },
        ]
      : []),
  ];
  return (
    <div class="charts">
      <OneByOne>
        {forceSeries.length > 0 && (
          <SeriesChart
            heading={messages.forceOverDepthAt}
            words={messages.forceOverDepth({
              forceSeries: forceSeries.map(({ name }) => name).join("; "),
            })}
            {...(hidden > 0 && {
              says: messages.ofSpeedsAreDrawn({ shown: shown.length, speeds: speeds.length }),
            })}
            x={depth}
            y={force}
            series={forceSeries}
          />
        )}
        {loops.length > 0 && (
          <SeriesChart
            heading={messages.loopsForceOverDisplacement}
            words={messages.meanLoopOfEach}
            {...(loops.length > seriesLooks && {
              says: messages.ofBlocksAreDrawn({ seriesLooks, loops: loops.length }),
            })}
            x={{ words: messages.displacement, unit: lengthAxis(unit) }}
            y={force}
            series={shownSpeeds(loops, seriesLooks).map(({ speedMmPerS, points }, index) => ({
              name: messages.blockUpTo({
                index: index + 1,
                speedMmPerS: quantityText({ kind: "speed", value: speedMmPerS }, unit),
              }),
              look: "line" as const,
              points,
            }))}
            xWithZero={false}
          />
        )}
        {dampingRows.length > 0 && (
          <SeriesChart
            heading={messages.dampingOverDepth}
            words={messages.forcePerSpeedAt}
            x={depth}
            y={{ words: messages.dampingOfAxis, unit: dampingAxis(unit) }}
            series={dampingRows}
          />
        )}
        {residuals.length > 0 && (
          <SeriesChart
            heading={messages.residuals}
            words={messages.whatIsLeftOf}
            x={depth}
            y={{ words: messages.forceLessCurve, unit: forceAxis(unit) }}
            series={residuals}
          />
        )}
      </OneByOne>
    </div>
  );
}
