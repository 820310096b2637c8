import type { DesignEvent, EventResult, UseRules } from "../../../physics/fitment.ts";
import type { ImpactTrace } from "../../../physics/impact/index.ts";
import { capital } from "../../../physics/sentence.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import { quantityText } from "../../../saying/quantityText.ts";
import * as messages from "../../../words/compiled/screens/answer/impact.ts";
import { eventWords } from "../../assessment/eventWords.ts";
import { BottomAxis, LeftAxis } from "../../charts/Axis.tsx";
import {
  type AxisUnit,
  accelerationAxis,
  forceAxis,
  lengthAxis,
  timeAxis,
} from "../../charts/axisUnit.ts";
import { ChartFigure } from "../../charts/ChartFigure.tsx";
import { useChartWidth } from "../../charts/chartWidth.ts";
import { DataTable } from "../../charts/DataTable.tsx";
import { Legend } from "../../charts/Legend.tsx";
import { linePath } from "../../charts/linePath.ts";
import { linearScale } from "../../charts/scale.ts";
import { linearTicks } from "../../charts/ticks.ts";

/** One stop going through one event. */
export interface ImpactRecord {
  readonly name: string;
  readonly result: EventResult;
  readonly trace: ImpactTrace;
}

export interface ImpactMarks {
  readonly contactMm: number;
  readonly fullStopMm: number;
  readonly hardLimitMm: number | null;
}

interface Limit {
  readonly words: string;
  readonly value: number;
  readonly name: string;
}

interface Panel {
  readonly label: string;
  readonly axis: AxisUnit;
  readonly limits: readonly Limit[];
  of(trace: ImpactTrace): Float64Array;
}

const panelHeight = 118;
const gap = 30;
const left = 56;
const right = 10;
const mostPoints = 400;

/** Wheel travel, stop force and acceleration over time, this stop's against another's. */
export function ImpactChart({
  heading,
  event,
  stop,
  other,
  marks,
  rules,
  assumed,
  unit,
}: {
  heading: string;
  event: DesignEvent;
  stop: ImpactRecord;
  other?: ImpactRecord | undefined;
  marks: ImpactMarks;
  rules: UseRules;
  assumed: readonly string[];
  unit: LengthUnit;
}) {
  const { holder, width } = useChartWidth(640);
  const panels: readonly Panel[] = [
    {
      label: messages.wheelTravel({ suffix: lengthAxis(unit).suffix }),
      axis: lengthAxis(unit),
      of: (trace) => trace.wheelTravelMm,
      limits: [
        { words: messages.contact, value: marks.contactMm, name: "contact" },
        { words: messages.fullyCompressed, value: marks.fullStopMm, name: "fullStop" },
        ...(marks.hardLimitMm === null
          ? []
          : [{ words: messages.hardContact, value: marks.hardLimitMm, name: "hardLimit" }]),
      ],
    },
    {
      label: messages.forceOfStop({ suffix: forceAxis(unit).suffix }),
      axis: forceAxis(unit),
      of: (trace) => trace.stopForceN,
      limits: [],
    },
    {
      label: messages.accelerationOfBodyUp,
      axis: accelerationAxis,
      of: (trace) => trace.accelerationG,
      limits: [{ words: messages.mostAllowed, value: rules.accelerationCapG, name: "cap" }],
    },
  ];
  const words = [stop, ...(other ? [other] : [])]
    .map((record) => impactWords(record, rules, unit))
    .join(" ");
  const title = `${heading}: ${eventWords(event, unit)}`;
  return (
    <ChartFigure
      heading={title}
      words={words}
      says={words}
      assumed={assumed}
      drawing={
        <div ref={holder}>
          <Drawing
            panels={panels}
            stop={stop}
            other={other}
            width={width}
            words={`${title}. ${words}`}
          />
        </div>
      }
      table={() => <ImpactTable caption={title} stop={stop} other={other} unit={unit} />}
    >
      <Legend
        items={[
          { words: stop.name, sample: <path class="line-this" d="M1 8H27" /> },
          ...(other
            ? [{ words: other.name, sample: <path class="line-other" d="M1 8H27" /> }]
            : []),
        ]}
      />
    </ChartFigure>
  );
}

function Drawing({
  panels,
  stop,
  other,
  width,
  words,
}: {
  panels: readonly Panel[];
  stop: ImpactRecord;
  other: ImpactRecord | undefined;
  width: number;
  words: string;
}) {
  const height = panels.length * (panelHeight + gap) + 30;
  const end = Math.max(stop.trace.timeS.at(-1) ?? 0, other?.trace.timeS.at(-1) ?? 0);
  const x = linearScale([0, end], [left, width - right]);
  const bottom = panels.length * (panelHeight + gap) - 4;
  return (
    <svg
      role="img"
      aria-label={words}
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
    >
      {panels.map((panel, index) => (
        <PanelDrawing
          key={panel.label}
          panel={panel}
          stop={stop}
          other={other}
          x={x}
          top={gap - 4 + index * (panelHeight + gap)}
        />
      ))}
      <BottomAxis scale={x} y={bottom} ticks={linearTicks(0, end, 6)} />
      <text class="axis-label" x={width - right} y={bottom + 32} text-anchor="end">
        {messages.time({ suffix: timeAxis.suffix })}
      </text>
    </svg>
  );
}

function PanelDrawing({
  panel,
  stop,
  other,
  x,
  top,
}: {
  panel: Panel;
  stop: ImpactRecord;
  other: ImpactRecord | undefined;
  x: ReturnType<typeof linearScale>;
  top: number;
}) {
  const series = [stop, ...(other ? [other] : [])].map(({ trace }) =>
    Array.from(panel.of(trace), panel.axis.of),
  );
  const limits = panel.limits.map((limit) => ({ ...limit, at: panel.axis.of(limit.value) }));
  const greatest = Math.max(...series.flat(), 0);
  const near = limits.filter(({ at }) => at <= 1.6 * greatest || limits.length === 1);
  const uppermost = Math.max(...near.map(({ at }) => at));
  const domain: [number, number] = [
    Math.min(0, ...series.flat()),
    Math.max(greatest, ...near.map(({ at }) => at)) * 1.06 || 1,
  ];
  const y = linearScale(domain, [top + panelHeight, top]);
  const line = ({ trace }: ImpactRecord, values: readonly number[]) => {
    const every = Math.max(1, Math.floor(values.length / mostPoints));
    return linePath(
      values.flatMap((value, index) =>
        index % every === 0 ? [[x.at(trace.timeS[index] ?? 0), y.at(value)] as const] : [],
      ),
    );
  };
  const [start, finish] = x.range;
  return (
    <g>
      <LeftAxis
        scale={y}
        x={start}
        ticks={linearTicks(domain[0], domain[1], 6)}
        gridRight={finish}
        label={panel.label}
      />
      {near.map(({ at, words, name }) => (
        <g key={name} class={`mark mark-${name}`}>
          <line x1={start} x2={finish} y1={y.at(at)} y2={y.at(at)} />
          <text
            x={finish}
            y={y.at(at) + (near.length > 1 && at === uppermost ? -4 : 14)}
            text-anchor="end"
          >
            {words}
          </text>
        </g>
      ))}
      {other && <path class="line-other" d={line(other, series[1] ?? [])} />}
      <path class="line-this" d={line(stop, series[0] ?? [])} />
    </g>
  );
}

function impactWords(
  { name, result }: ImpactRecord,
  { accelerationCapG }: UseRules,
  unit: LengthUnit,
): string {
  const travel = quantityText({ kind: "length", value: result.peakWheelTravelMm }, unit);
  const force = quantityText({ kind: "force", value: result.peakStopForceN }, unit);
  const acceleration = quantityText(
    { kind: "acceleration", value: result.peakAccelerationG },
    unit,
  );
  const ends = [
    result.fullStop ? messages.goesPastFullCompression : null,
    result.hardContact ? messages.somethingHardTouches : null,
    result.peakAccelerationG > accelerationCapG
      ? messages.moreThanGAllowed({ accelerationCapG })
      : null,
  ].filter((word) => word !== null);
  return messages.wheelUpStopForce({
    name: capital(name),
    travel,
    force,
    acceleration,
    ends: ends.length > 0 ? ends.join(", ") : messages.withinWhatIsAllowed,
  });
}

function ImpactTable({
  caption,
  stop,
  other,
  unit,
}: {
  caption: string;
  stop: ImpactRecord;
  other: ImpactRecord | undefined;
  unit: LengthUnit;
}) {
  const records = [stop, ...(other ? [other] : [])];
  const rows = [
    [messages.greatestWheelTravel, (result: EventResult) => ["length", result.peakWheelTravelMm]],
    [messages.greatestCompression, (result: EventResult) => ["length", result.peakCompressionMm]],
    [messages.greatestStopForce, (result: EventResult) => ["force", result.peakStopForceN]],
    [
      messages.greatestAcceleration,
      (result: EventResult) => ["acceleration", result.peakAccelerationG],
    ],
    [messages.energyIntoStop, (result: EventResult) => ["energy", result.energyInJ]],
    [messages.energyBackOut, (result: EventResult) => ["energy", result.energyOutJ]],
    [messages.speedLeavingStop, (result: EventResult) => ["speed", result.leaveSpeedMmPerS]],
  ] as const satisfies readonly (readonly [
    string,
    (result: EventResult) => readonly [Parameters<typeof quantityText>[0]["kind"], number],
  ])[];
  return (
    <DataTable
      caption={caption}
      columns={[{ name: messages.figure }, ...records.map(({ name }) => ({ name }))]}
      rows={[
        ...rows.map(([words, pick]) => [
          words,
          ...records.map(({ result }) => {
            const [kind, value] = pick(result);
            return quantityText({ kind, value }, unit);
          }),
        ]),
        [
          messages.pastFullCompression,
          ...records.map(({ result }) => (result.fullStop ? messages.yes : messages.no)),
        ],
        [
          messages.somethingHardTouches2,
          ...records.map(({ result }) => (result.hardContact ? messages.yes : messages.no)),
        ],
      ]}
    />
  );
}
