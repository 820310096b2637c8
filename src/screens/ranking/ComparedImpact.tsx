import { useEffect, useState } from "preact/hooks";
import type { Assessor } from "../../compute/assessor.ts";
import type { DesignEvent, Fitment, Side } from "../../physics/fitment.ts";
import type { ImpactTrace } from "../../physics/impact/index.ts";
import { simulatedStops } from "../../physics/stop/index.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { said } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/ranking.ts";
import { eventWords } from "../assessment/eventWords.ts";
import { accelerationAxis, lengthAxis, timeAxis } from "../charts/axisUnit.ts";
import { type Series, SeriesChart } from "../charts/SeriesChart.tsx";

export interface ComparedFitment {
  readonly name: string;
  readonly fitment: Fitment;
}

interface NamedTrace {
  readonly name: string;
  readonly trace: ImpactTrace;
}

/** The same event with each of the stops; null while it is worked out. */
function useTraces(
  assessor: Assessor,
  stops: readonly ComparedFitment[],
  side: Side,
  event: DesignEvent,
): readonly NamedTrace[] | null {
  const [traces, setTraces] = useState<readonly NamedTrace[] | null>(null);
  useEffect(() => {
    setTraces(null);
    let left = false;
    const runs = stops.map(async ({ name, fitment }): Promise<NamedTrace[]> => {
      const run = await assessor.run(fitment, side, event);
      return run.ok && run.value.trace ? [{ name, trace: run.value.trace }] : [];
    });
    Promise.all(runs).then((found) => !left && setTraces(found.flat()));
    return () => {
      left = true;
    };
  }, [assessor, stops, side, event]);
  return traces;
}

const mostStretches = 300;

/** The least and the greatest of every short stretch of time, so that no peak is cut off. */
function overTime(traces: readonly NamedTrace[], of: (trace: ImpactTrace) => Float64Array) {
  return traces.map(({ name, trace }): Series => {
    const values = of(trace);
    const every = Math.max(1, Math.ceil(values.length / mostStretches));
    const points: [number, number][] = [];
    for (let from = 0; from < values.length; from += every) {
      let [least, greatest] = [from, from];
      for (let place = from; place < Math.min(from + every, values.length); place++) {
        if ((values[place] ?? 0) < (values[least] ?? 0)) least = place;
        if ((values[place] ?? 0) > (values[greatest] ?? 0)) greatest = place;
      }
      for (const place of [...new Set([least, greatest])].sort((a, b) => a - b)) {
        points.push([trace.timeS[place] ?? 0, values[place] ?? 0]);
      }
    }
    return { name, look: "line", points };
  });
}

/** One event in time, all stops on the same axes. */
export function ComparedImpact({
  assessor,
  stops,
  side,
  event,
  unit,
}: {
  assessor: Assessor;
  stops: readonly ComparedFitment[];
  side: Side;
  event: DesignEvent;
  unit: LengthUnit;
}) {
  const traces = useTraces(assessor, stops, side, event);
  if (traces === null) return <p class="soft">{messages.workingOutImpact}</p>;
  const title = eventWords(event, unit);
  const time = { words: "time", unit: timeAxis };
  const assumed = [messages.loadedQuarterCarStop, said(simulatedStops)];
  return (
    <>
      <SeriesChart
        heading={messages.wheelTravel({ title })}
        words={messages.wheelTravelUpFrom}
        assumed={assumed}
        x={time}
        y={{ words: messages.wheelTravel2, unit: lengthAxis(unit) }}
        series={overTime(traces, ({ wheelTravelMm }) => wheelTravelMm)}
      />
      <SeriesChart
        heading={messages.accelerationOfBody({ title })}
        words={messages.upwardAccelerationOfBody}
        assumed={assumed}
        x={time}
        y={{ words: messages.accelerationUp, unit: accelerationAxis }}
        series={overTime(traces, ({ accelerationG }) => accelerationG)}
      />
    </>
  );
}
