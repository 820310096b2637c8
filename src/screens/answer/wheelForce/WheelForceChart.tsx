import type { LengthUnit } from "../../../records/entry/units.ts";
import { quantityText } from "../../../saying/quantityText.ts";
import * as messages from "../../../words/compiled/screens/answer/wheelForce.ts";
import { BottomAxis, LeftAxis } from "../../charts/Axis.tsx";
import { forceAxis, lengthAxis } from "../../charts/axisUnit.ts";
import { ChartFigure } from "../../charts/ChartFigure.tsx";
import { useChartWidth } from "../../charts/chartWidth.ts";
import { DataTable } from "../../charts/DataTable.tsx";
import { Legend } from "../../charts/Legend.tsx";
import { areaPath, linePath } from "../../charts/linePath.ts";
import { linearScale, type Scale } from "../../charts/scale.ts";
import { spreadLabels } from "../../charts/spreadLabels.ts";
import { linearTicks } from "../../charts/ticks.ts";
import { lengthText } from "../ladder/ladderWords.ts";
import { totalForce, type WheelForceCurve, type WheelForcePoint } from "./wheelForceCurve.ts";

const height = 286;
const plot = { left: 56, right: 10, top: 30, bottom: 42 };

export interface NamedCurve {
  readonly name: string;
  readonly curve: WheelForceCurve;
}

/** Spring alone, spring and stop, where the marks fall, and the energy as area. */
export function WheelForceChart({
  heading,
  curve,
  compared,
  unit,
}: {
  heading: string;
  curve: WheelForceCurve;
  compared?: NamedCurve | undefined;
  unit: LengthUnit;
}) {
  const { holder, width } = useChartWidth(560);
  const words = wheelForceWords(curve, unit);
  const hasSpring = curve.springJ !== null;
  return (
    <ChartFigure
      heading={heading}
      says={energyWords(curve, unit)}
      words={words}
      assumed={[
        messages.pressedSlowlyLinearRide,
        messages.forceAboveWhatWheel,
        ...(hasSpring ? [] : [messages.rideSpringsRateIs]),
      ]}
      drawing={
        <div ref={holder}>
          <Drawing
            curve={curve}
            compared={compared?.curve}
            unit={unit}
            width={width}
            words={`${heading}. ${words}`}
          />
        </div>
      }
      table={() => <ForceTable heading={heading} curve={curve} compared={compared} unit={unit} />}
    >
      <Legend
        items={[
          ...(hasSpring
            ? [{ words: messages.springAlone, sample: <path class="line-spring" d="M1 8H27" /> }]
            : []),
          {
            words: hasSpring ? messages.springAndStop : messages.stopAlone,
            sample: <path class="line-this" d="M1 8H27" />,
          },
          {
            words: messages.energyStopTakes,
            sample: <rect class="area-energy" x="1" y="1" width="26" height="14" />,
          },
          ...(compared
            ? [{ words: compared.name, sample: <path class="line-other" d="M1 8H27" /> }]
            : []),
        ]}
      />
    </ChartFigure>
  );
}

function Drawing({
  curve,
  compared,
  unit,
  width,
  words,
}: {
  curve: WheelForceCurve;
  compared: WheelForceCurve | undefined;
  unit: LengthUnit;
  width: number;
  words: string;
}) {
  const travel = lengthAxis(unit);
  const force = forceAxis(unit);
  const curves = compared ? [curve, compared] : [curve];
  const farthest = Math.max(...curves.map(({ points }) => points.at(-1)?.travelMm ?? 0));
  const greatest = Math.max(...curves.map((one) => forceAt(one.points, one.endMm))) * 1.25;
  const x = linearScale([0, travel.of(farthest)], [plot.left, width - plot.right]);
  const y = linearScale([0, force.of(greatest)], [height - plot.bottom, plot.top]);
  const at = (point: WheelForcePoint, newtons: number): [number, number] => [
    x.at(travel.of(point.travelMm)),
    y.at(force.of(Math.min(newtons, 4 * greatest))),
  ];
  const taking = curve.points.filter(
    ({ travelMm }) => travelMm >= curve.contactMm && travelMm <= curve.endMm,
  );
  const hasSpring = curve.springJ !== null;
  const clip = `wheel-force-clip-${Math.round(farthest)}-${width}`;
  return (
    <svg
      role="img"
      aria-label={words}
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
    >
      <clipPath id={clip}>
        <rect
          x={plot.left}
          y={plot.top}
          width={width - plot.left - plot.right}
          height={height - plot.top - plot.bottom}
        />
      </clipPath>
      <LeftAxis
        scale={y}
        x={plot.left}
        ticks={linearTicks(0, y.domain[1], 5)}
        gridRight={width - plot.right}
        label={messages.forceAtWheel({ suffix: force.suffix })}
      />
      <BottomAxis
        scale={x}
        y={height - plot.bottom}
        ticks={linearTicks(0, x.domain[1], width > 440 ? 8 : 5)}
        label={messages.wheelTravelUpFrom({ suffix: travel.suffix })}
      />
      <g clip-path={`url(#${clip})`}>
        <path
          class="area-energy"
          d={areaPath(
            taking.map((point) => at(point, totalForce(point))),
            taking.map((point) => at(point, point.springN ?? 0)),
          )}
        />
        {hasSpring && (
          <path
            class="line-spring"
            d={linePath(curve.points.map((point) => at(point, point.springN ?? 0)))}
          />
        )}
        {compared && (
          <path
            class="line-other"
            d={linePath(compared.points.map((point) => at(point, totalForce(point))))}
          />
        )}
        <path
          class="line-this"
          d={linePath(curve.points.map((point) => at(point, totalForce(point))))}
        />
      </g>
      {[
        curve.contactMm,
        curve.fullStopMm,
        ...(curve.hardLimitMm === null ? [] : [curve.hardLimitMm]),
      ]
        .filter((travelMm) => travelMm >= 0)
        .map((travelMm) => {
          const newtons = forceAt(curve.points, travelMm);
          return newtons > greatest ? null : (
            <circle
              key={travelMm}
              class="curve-tick"
              cx={x.at(travel.of(travelMm))}
              cy={y.at(force.of(newtons))}
              r="4.5"
            />
          );
        })}
      <Marks curve={curve} x={x} of={travel.of} bottom={height - plot.bottom} />
    </svg>
  );
}

function Marks({
  curve,
  x,
  of,
  bottom,
}: {
  curve: WheelForceCurve;
  x: Scale;
  of: (mm: number) => number;
  bottom: number;
}) {
  const marks = [
    { words: messages.contact, travel: curve.contactMm, name: "contact" },
    { words: messages.fullyCompressed, travel: curve.fullStopMm, name: "fullStop" },
    ...(curve.hardLimitMm === null
      ? []
      : [{ words: messages.hardContact, travel: curve.hardLimitMm, name: "hardLimit" }]),
  ];
  const rows = spreadLabels(
    marks.map((_, index) => plot.top + 14 + 16 * index),
    16,
    [plot.top, bottom],
  );
  return (
    <>
      {marks.map(({ words, travel, name }, index) => {
        const at = x.at(of(travel));
        const before = at > x.range[0] + 0.3 * (x.range[1] - x.range[0]);
        return (
          <g key={name} class={`mark mark-${name}`}>
            <line x1={at} x2={at} y1={plot.top} y2={bottom} />
            <text
              x={before ? at - 5 : at + 5}
              y={rows[index] ?? 0}
              text-anchor={before ? "end" : "start"}
            >
              {words}
            </text>
          </g>
        );
      })}
    </>
  );
}

/** Straight between the points to both sides. */
function forceAt(points: readonly WheelForcePoint[], travelMm: number): number {
  const after = points.findIndex((point) => point.travelMm >= travelMm);
  const high = points[after] ?? points.at(-1);
  const low = points[after - 1] ?? high;
  if (!high || !low) return 1;
  const span = high.travelMm - low.travelMm;
  const share = span > 0 ? (travelMm - low.travelMm) / span : 1;
  return totalForce(low) + share * (totalForce(high) - totalForce(low));
}

function joules(value: number, unit: LengthUnit): string {
  return quantityText({ kind: "energy", value }, unit);
}

function newtons(value: number, unit: LengthUnit): string {
  return quantityText({ kind: "force", value }, unit);
}

function energyWords({ stopJ, springJ, endMm, fullStopMm }: WheelForceCurve, unit: LengthUnit) {
  const end = endMm < fullStopMm ? messages.hardContact : messages.fullCompression;
  return springJ === null
    ? messages.upToStopTakes({ end, joules: joules(stopJ, unit) })
    : messages.upToSpringTakes({
        end,
        joules: joules(springJ, unit),
        joules2: joules(stopJ, unit),
      });
}

function wheelForceWords(curve: WheelForceCurve, unit: LengthUnit): string {
  const marks = [
    messages.contactAt({ contactMm: lengthText(curve.contactMm, unit) }),
    messages.fullyCompressedAt({ fullStopMm: lengthText(curve.fullStopMm, unit) }),
    curve.hardLimitMm === null
      ? messages.noClearanceMeasured
      : messages.hardContactAt({ hardLimitMm: lengthText(curve.hardLimitMm, unit) }),
  ].join(", ");
  const end = newtons(forceAt(curve.points, curve.endMm), unit);
  const course = curve.springJ === null ? messages.stopPressesOnWheel : messages.forceAtWheelRises;
  return messages.toWhereTravelEnds({ course, end, marks, energy: energyWords(curve, unit) });
}

function ForceTable({
  heading,
  curve,
  compared,
  unit,
}: {
  heading: string;
  curve: WheelForceCurve;
  compared: NamedCurve | undefined;
  unit: LengthUnit;
}) {
  const steps = Array.from({ length: 9 }, (_, i) => (curve.endMm * i) / 8);
  return (
    <DataTable
      caption={heading}
      columns={[
        { name: messages.wheelTravel },
        { name: messages.springAlone2 },
        { name: messages.springAndStop2 },
        ...(compared ? [{ name: messages.springAndStop2, note: compared.name }] : []),
      ]}
      rows={steps.map((travel) => [
        lengthText(travel, unit),
        curve.springJ === null ? messages.notKnown : newtons(springAt(curve.points, travel), unit),
        newtons(forceAt(curve.points, travel), unit),
        ...(compared ? [newtons(forceAt(compared.curve.points, travel), unit)] : []),
      ])}
    />
  );
}

function springAt(points: readonly WheelForcePoint[], travelMm: number): number {
  const last = points.at(-1);
  return last?.springN ? (last.springN / last.travelMm) * travelMm : 0;
}
