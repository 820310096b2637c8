import type { RowsAnalysis } from "../../physics/stopTests/index.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import * as messages from "../../words/compiled/screens/pack.ts";
import { Notice } from "../parts/Notice.tsx";
import { DampingFound } from "./DampingFound.tsx";
import { StaticCurveFound } from "./StaticCurveFound.tsx";

/** What rows of depth, speed and force gave. */
export function RowsFound({ analysis, unit }: { analysis: RowsAnalysis; unit: LengthUnit }) {
  const { staticCurve, damping } = analysis;
  const pairOf = (value: { coefficient: number; standardError: number } | null) =>
    value && ([value.coefficient, value.standardError] as const);
  return (
    <>
      <StaticCurveFound staticCurve={staticCurve} unit={unit} />
      {damping.ok ? (
        <>
          {damping.value.restLoss && (
            <p>
              <strong>{messages.lostAtRest}</strong>
              {messages.ofForce({
                restLoss: (100 * damping.value.restLoss.value).toFixed(1),
                standardError: (100 * damping.value.restLoss.standardError).toFixed(1),
              })}
            </p>
          )}
          <p>
            <strong>{messages.damping}</strong>{" "}
            {messages.atDepthsWithStandard({ rows: damping.value.rows.length })}
          </p>
          <DampingFound
            caption={messages.dampingAtEachDepth}
            rows={damping.value.rows.map(({ depthMm, compressing, rebounding }) => ({
              depthMm,
              compressing: pairOf(compressing),
              rebounding: pairOf(rebounding),
            }))}
            unit={unit}
          />
        </>
      ) : (
        <Notice tone="unsure">
          <p>
            <strong>{messages.noDamping}</strong> {sentenceText(damping.fault.sentence, unit)}
          </p>
        </Notice>
      )}
    </>
  );
}
