import { useMemo } from "preact/hooks";
import type { Assessor } from "../../compute/assessor.ts";
import type { Assessment, Fitment, Side } from "../../physics/fitment.ts";
import type { RankedStop } from "../../physics/ranking/index.ts";
import { rulesOf } from "../../physics/road/index.ts";
import { stopCurve } from "../../physics/stop/index.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { type Pack, type PackStop, stopOf } from "../../records/pack/pack.ts";
import * as messages from "../../words/compiled/screens/ranking.ts";
import { figuresOf } from "../answer/formulas/figures.ts";
import { TravelLadder } from "../answer/ladder/TravelLadder.tsx";
import { figureText } from "../answer/sections/Figures.tsx";
import { totalForce, wheelForceCurve } from "../answer/wheelForce/wheelForceCurve.ts";
import { sideWords, verdictWords } from "../assessment/stateWords.ts";
import { forceAxis, lengthAxis } from "../charts/axisUnit.ts";
import { DataTable } from "../charts/DataTable.tsx";
import { type Series, SeriesChart } from "../charts/SeriesChart.tsx";
import { StateMark } from "../drawings/StateMark.tsx";
import { Disclosure } from "../parts/Disclosure.tsx";
import { Unfolding } from "../parts/Unfolding.tsx";
import { mountDifferences, partFacts, rankedKey, rankedName } from "../triedStops/triedWords.ts";
import { ComparedImpact } from "./ComparedImpact.tsx";

interface Shown {
  readonly name: string;
  readonly ranked: RankedStop;
  readonly fitment: Fitment;
  readonly assessment: Assessment;
}

/** Two or three stops on the same vehicle: the same charts for all of them. */
export function RankedComparison({
  assessor,
  chosen,
  pack,
  fittedStop,
  unit,
}: {
  assessor: Assessor;
  chosen: readonly RankedStop[];
  pack: Pack;
  /** The check's own stop as the pack has it; null where it is not in the pack. */
  fittedStop: PackStop | null;
  unit: LengthUnit;
}) {
  const shown = useMemo(
    () =>
      chosen.flatMap((ranked): Shown[] =>
        ranked.fitment && ranked.assessment
          ? [
              {
                name: rankedName(ranked, unit),
                ranked,
                fitment: ranked.fitment,
                assessment: ranked.assessment,
              },
            ]
          : [],
      ),
    [chosen, unit],
  );
  const mountsOf = ({ id, name }: RankedStop) => {
    const stop = stopOf(pack, id);
    return stop && name !== fittedStop?.name ? mountDifferences(stop, fittedStop, unit) : [];
  };
  const sides = shown[0]?.assessment.corners.map(({ side }) => side) ?? [];
  return (
    <div class="stack">
      <div class="ranked-compared">
        {shown.map(({ name, ranked, assessment }) => (
          <section key={rankedKey(ranked)} class={`compared-one verdict-${assessment.verdict}`}>
            <h2>{name}</h2>
            <p class="check-state">
              <StateMark state={assessment.verdict} size={24} label="" />
              <strong class={`tone-${assessment.verdict}`}>
                {verdictWords[assessment.verdict]}
              </strong>
            </p>
            {mountsOf(ranked).map((text) => (
              <p key={text} class="ranked-mount small">
                <StateMark state="care" size={20} label="" />
                <span>{text}</span>
              </p>
            ))}
          </section>
        ))}
      </div>
      <PartsTable shown={shown} pack={pack} unit={unit} />
      <StopForces shown={shown} unit={unit} />
      {sides.map((side) => (
        <SideCharts key={side} assessor={assessor} side={side} shown={shown} unit={unit} />
      ))}
      <p class="small">{messages.everyStopIsOn}</p>
    </div>
  );
}

/** The parts themselves: what a person holds in the hand. */
function PartsTable({
  shown,
  pack,
  unit,
}: {
  shown: readonly Shown[];
  pack: Pack;
  unit: LengthUnit;
}) {
  const facts = shown.map(({ ranked, fitment }) =>
    partFacts(fitment.stop, stopOf(pack, ranked.id), unit),
  );
  return (
    <div class="ranked-parts">
      <DataTable
        caption={messages.stopsThemselves}
        columns={[{ name: messages.ofStop }, ...shown.map(({ name }) => ({ name }))]}
        rows={(facts[0] ?? []).map(({ name }, row) => [
          name,
          ...facts.map((each) => each[row]?.text ?? "–"),
        ])}
      />
    </div>
  );
}

const pieces = 60;

function StopForces({ shown, unit }: { shown: readonly Shown[]; unit: LengthUnit }) {
  const series = shown.flatMap(({ name, fitment: { stop } }): Series[] => {
    const curve = stopCurve(stop);
    if (!curve.ok) return [];
    const last = curve.value.usableCompressionMm;
    return [
      {
        name,
        look: "line",
        points: Array.from({ length: pieces + 1 }, (_, index) => {
          const depth = (last * index) / pieces;
          return [depth, curve.value.force(depth)] as const;
        }),
      },
    ];
  });
  return (
    <SeriesChart
      heading={messages.forceOfStopsOver}
      words={messages.forceOverCompressionUp({ shown: shown.map(({ name }) => name).join(", ") })}
      assumed={[messages.pressedSlowly]}
      x={{ words: "compression", unit: lengthAxis(unit) }}
      y={{ words: messages.forceOfStop, unit: forceAxis(unit) }}
      series={series}
    />
  );
}

function SideCharts({
  assessor,
  side,
  shown,
  unit,
}: {
  assessor: Assessor;
  side: Side;
  shown: readonly Shown[];
  unit: LengthUnit;
}) {
  const series = shown.flatMap(({ name, fitment, assessment }): Series[] => {
    const corner = fitment.corners.find((each) => each.side === side);
    const assessed = assessment.corners.find((each) => each.side === side);
    if (!corner || !assessed) return [];
    const curve = wheelForceCurve(fitment, corner, assessed);
    if (!curve.ok) return [];
    return [
      {
        name,
        look: "line",
        points: curve.value.points
          .filter(({ travelMm }) => travelMm <= curve.value.endMm)
          .map((point) => [point.travelMm, totalForce(point)] as const),
      },
    ];
  });
  const first = shown[0];
  if (!first) return null;
  const rules = rulesOf(first.fitment.use, first.fitment.rules);
  const rows = figuresOf(rules, unit).flatMap((figure) => {
    const corners = shown.map(({ assessment }) =>
      assessment.corners.find((each) => each.side === side),
    );
    if (corners.every((corner) => !corner || figure.value(corner) === null)) return [];
    return [
      [
        figure.titleAlone ?? figure.title,
        ...corners.map((corner) => (corner ? figureText(figure, corner, unit) : "–")),
      ],
    ];
  });
  return (
    <>
      <SeriesChart
        heading={messages.wheelForceOverWheel({ side: sideWords[side] })}
        words={messages.forceAboveWhatWheel}
        assumed={[messages.pressedSlowlyLinearRide]}
        x={{ words: messages.wheelTravelUpFromRide, unit: lengthAxis(unit) }}
        y={{ words: messages.forceAtWheel, unit: forceAxis(unit) }}
        series={series}
      />
      <div class="ladders">
        {shown.map(({ name, ranked, assessment }) => {
          const corner = assessment.corners.find((each) => each.side === side);
          return (
            corner && (
              <TravelLadder key={rankedKey(ranked)} assessed={corner} unit={unit} label={name} />
            )
          );
        })}
      </div>
      <Unfolding summary={messages.impactsInTime({ side: sideWords[side] })}>
        {() =>
          rules.events.map((event) => (
            <ComparedImpact
              key={event.kind}
              assessor={assessor}
              stops={shown}
              side={side}
              event={event}
              unit={unit}
            />
          ))
        }
      </Unfolding>
      <Disclosure summary={messages.allNumbersSideBy({ side: sideWords[side] })}>
        <DataTable
          caption={messages.stopsInNumbers({ side: sideWords[side] })}
          columns={[{ name: messages.figure }, ...shown.map(({ name }) => ({ name }))]}
          rows={rows}
        />
      </Disclosure>
    </>
  );
}
