import { quantityText } from "../../records/entry/quantityText.ts";
import { fromModel, type LengthUnit } from "../../records/entry/units.ts";
import { type AxisUnit, forceAxis, lengthAxis } from "../charts/axisUnit.ts";
import { OneByOne } from "../charts/OneByOne.tsx";
import { type Series, SeriesChart, seriesLooks } from "../charts/SeriesChart.tsx";
import { dampingSeries, shownSpeeds, type TestPlots, thinnedPoints } from "./testPlots.ts";

function dampingAxis(unit: LengthUnit): AxisUnit {
  const suffix = unit === "in" ? "lbf·s/in" : "N·s/mm";
  return { suffix, of: (value) => fromModel(value, suffix) };
}

function speedWords(speed: number, unit: LengthUnit): string {
  if (speed === 0) return "static rows";
  const text = quantityText({ kind: "speed", value: Math.abs(speed) }, unit);
  return speed > 0 ? `${text}, pressed` : `${text}, coming back`;
}

const mostDots = 160;

/** The drawings of one test: force over depth at each speed, loop, damping over depth, residuals. */
export function TestCharts({ plots, unit }: { plots: TestPlots; unit: LengthUnit }) {
  const { speeds, curve, damping, staticResiduals, speedResiduals, loops } = plots;
  const depth = { words: "depth", unit: lengthAxis(unit) };
  const force = { words: "force", unit: forceAxis(unit) };
  const shown = shownSpeeds(speeds, curve ? seriesLooks - 1 : seriesLooks);
  const hidden = speeds.length - shown.length;
  const forceSeries: Series[] = [
    ...(curve
      ? [{ name: "static curve", look: "line" as const, points: [[0, 0] as const, ...curve] }]
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
            name: "static rows",
            look: "dots" as const,
            points: thinnedPoints(staticResiduals, 2 * mostDots),
          },
        ]
      : []),
    ...(speedResiduals
      ? [
          {
            name: "rows at speed",
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
            heading="Force over depth at each speed"
            words={`Force over depth: ${forceSeries.map(({ name }) => name).join("; ")}.`}
            {...(hidden > 0 && {
              says: `${shown.length} of ${speeds.length} speeds are drawn, the slowest and the fastest among them.`,
            })}
            x={depth}
            y={force}
            series={forceSeries}
          />
        )}
        {loops.length > 0 && (
          <SeriesChart
            heading="Loops: force over displacement"
            words="The mean loop of each block of cycles. The area inside is the energy lost in one cycle."
            {...(loops.length > seriesLooks && {
              says: `${seriesLooks} of ${loops.length} blocks are drawn, the slowest and the fastest among them.`,
            })}
            x={{ words: "displacement", unit: lengthAxis(unit) }}
            y={force}
            series={shownSpeeds(loops, seriesLooks).map(({ speedMmPerS, points }, index) => ({
              name: `block ${index + 1}, up to ${quantityText({ kind: "speed", value: speedMmPerS }, unit)}`,
              look: "line" as const,
              points,
            }))}
            xWithZero={false}
          />
        )}
        {dampingRows.length > 0 && (
          <SeriesChart
            heading="Damping over depth"
            words="Force per speed at each depth, pressed deeper and coming back apart; the bars are standard errors."
            x={depth}
            y={{ words: "damping", unit: dampingAxis(unit) }}
            series={dampingRows}
          />
        )}
        {residuals.length > 0 && (
          <SeriesChart
            heading="Residuals"
            words="What is left of each row's force once the curve, and at speed the damping, is taken off. Scatter about 0 is noise; a bend is not."
            x={depth}
            y={{ words: "force less curve", unit: forceAxis(unit) }}
            series={residuals}
          />
        )}
      </OneByOne>
    </div>
  );
}
