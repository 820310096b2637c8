import { secantRate, stiffnessClassOf, stopCurve } from "../../../physics/stop/index.ts";
import type { CheckStop } from "../../../records/check/checkRecord.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import { quantityText } from "../../../saying/quantityText.ts";
import * as messages from "../../../words/compiled/screens/check/stop.ts";

const width = 320;
const height = 190;
const edge = { left: 8, right: 8, top: 24, bottom: 26 } as const;

/** The force curve as it is typed so far, with the usable compression marked. Nothing while it can't be drawn. */
export function CurveChart({ stop, unit }: { stop: Partial<CheckStop>; unit: LengthUnit }) {
  const points = stop.curve ?? [];
  const deepest = points.at(-1);
  if (!deepest) return null;
  const usable = stop.usableCompressionMm;
  const height0 = stop.freeHeight ?? { values: [Math.max(deepest[0], usable ?? 0) * 2], tol: 0 };
  const curve = stopCurve({
    name: stop.name ?? "",
    duty: stop.duty ?? "impact",
    freeHeight: height0,
    usableCompressionMm: usable ?? deepest[0],
    curve: points,
    damping: null,
    testedAtSpeed: false,
  });
  if (!curve.ok) return null;
  const depth = Math.max(deepest[0], usable ?? 0);
  const force = Math.max(deepest[1], curve.value.force(usable ?? 0));
  if (!(depth > 0 && force > 0 && Number.isFinite(depth * force))) return null;
  const x = (mm: number) => edge.left + ((width - edge.left - edge.right) * mm) / depth;
  const y = (newtons: number) =>
    height - edge.bottom - ((height - edge.top - edge.bottom) * newtons) / force;
  const line = Array.from({ length: 61 }, (_, index) => {
    const mm = (depth * index) / 60;
    return `${index === 0 ? "M" : "L"}${x(mm).toFixed(1)} ${y(curve.value.force(mm)).toFixed(1)}`;
  }).join("");
  const rate = secantRate(curve.value);
  const named = stiffnessClassOf(rate);
  const text = (value: number, kind: "length" | "force" | "rate" | "stiffnessClass") =>
    quantityText({ kind, value }, unit);
  return (
    <figure class="curve-chart">
      <svg
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={messages.forceRisingToAt({
          deepest: text(deepest[1], "force"),
          deepest2: text(deepest[0], "length"),
        })}
      >
        <path
          d={`M${edge.left} ${height - edge.bottom}H${width - edge.right}M${edge.left} ${edge.top}V${height - edge.bottom}`}
          stroke="var(--line-strong)"
          fill="none"
        />
        {usable !== undefined && (
          <g>
            <path
              d={`M${x(usable)} ${edge.top}V${height - edge.bottom}`}
              stroke="var(--ink-soft)"
              stroke-dasharray="4 4"
            />
            <text x={x(usable) - 5} y={edge.top - 8} text-anchor="end" class="chart-words">
              {messages.fullyCompressed({ usable: text(usable, "length") })}
            </text>
          </g>
        )}
        <path d={line} fill="none" stroke="var(--accent)" stroke-width="2.5" />
        {points.map(([mm, newtons]) => (
          <circle key={mm} cx={x(mm)} cy={y(newtons)} r="4" fill="var(--accent)" />
        ))}
        <text x={edge.left + 6} y={edge.top + 4} class="chart-words">
          {text(force, "force")}
        </text>
        <text x={width - edge.right} y={height - 6} text-anchor="end" class="chart-words">
          {text(depth, "length")}
        </text>
        <text x={edge.left} y={height - 6} class="chart-words">
          0
        </text>
      </svg>
      {usable !== undefined && Number.isFinite(rate) && (
        <figcaption class="small">
          {messages.atHalfOfUsable({
            rate: text(rate, "rate"),
            named: text(named, "stiffnessClass"),
          })}
        </figcaption>
      )}
    </figure>
  );
}
