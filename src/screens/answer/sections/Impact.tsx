import { useMemo, useState } from "preact/hooks";
import type { Assessor } from "../../../compute/assessor.ts";
import type { CornerAssessment, Fitment, UseRules } from "../../../physics/fitment.ts";
import type { ImpactRun } from "../../../physics/impact/index.ts";
import type { Outcome } from "../../../physics/outcome.ts";
import { rulesOf } from "../../../physics/road/index.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import { sentenceText } from "../../../saying/sentenceText.ts";
import * as messages from "../../../words/compiled/screens/answer/sections.ts";
import { eventWords } from "../../assessment/eventWords.ts";
import { sideWords } from "../../assessment/stateWords.ts";
import { useImpactRun } from "../../assessment/useImpactRun.ts";
import { Choices } from "../../parts/Choices.tsx";
import type { ComparedStop } from "../compare/comparedStop.ts";
import { ImpactChart, type ImpactRecord } from "../impact/ImpactChart.tsx";

/** The first event that the stop fails in, else the last. */
function worstEvent(
  { events }: CornerAssessment,
  { accelerationCapG, ...rules }: UseRules,
): number {
  const failing = events?.findIndex(
    ({ fullStop, hardContact, peakAccelerationG }) =>
      fullStop || hardContact || peakAccelerationG > accelerationCapG,
  );
  return failing !== undefined && failing >= 0 ? failing : Math.max(0, rules.events.length - 1);
}

/** One event of the use in time; another event is one tap away. */
export function Impact({
  assessor,
  fitment,
  assessed,
  other,
  assumed,
  unit,
}: {
  assessor: Assessor;
  fitment: Fitment;
  assessed: CornerAssessment;
  other: ComparedStop | null;
  assumed: readonly string[];
  unit: LengthUnit;
}) {
  const rules = useMemo(() => rulesOf(fitment.use, fitment.rules), [fitment]);
  const { events } = rules;
  const [picked, setPicked] = useState(() => worstEvent(assessed, rules));
  const event = events[picked] ?? null;
  const { side } = assessed;
  const own = useImpactRun(assessor, fitment, side, event);
  const compared = useImpactRun(assessor, other?.fitment ?? null, side, event);
  if (!event) return null;
  if (own && !own.ok) return <p>{sentenceText(own.fault.sentence, unit)}</p>;
  const record = (name: string, run: Outcome<ImpactRun> | null): ImpactRecord | undefined =>
    run?.ok && run.value.trace
      ? { name, result: run.value.result, trace: run.value.trace }
      : undefined;
  const stop = record(fitment.stop.name, own);
  return (
    <div class="stack-close">
      {events.length > 1 && (
        <Choices
          legend={messages.eventShown}
          options={events.map((one, index) => ({
            value: String(index),
            name: eventWords(one, unit),
          }))}
          value={String(picked)}
          onChange={(value) => setPicked(Number(value))}
        />
      )}
      {stop ? (
        <ImpactChart
          heading={messages.loaded({ side: sideWords[side] })}
          event={event}
          stop={stop}
          other={other ? record(sentenceText(other.name, unit), compared) : undefined}
          marks={{
            contactMm: assessed.wheelTravelToContactMm,
            fullStopMm: assessed.wheelTravelToFullStopMm,
            hardLimitMm: assessed.wheelTravelToHardLimitMm,
          }}
          rules={rules}
          assumed={assumed}
          unit={unit}
        />
      ) : (
        <p class="soft">{messages.workingOutImpact}</p>
      )}
    </div>
  );
}
