import { useMemo, useState } from "preact/hooks";
import type { QuantityKind } from "../../physics/sentence.ts";
import { simulatedStops } from "../../physics/stop/index.ts";
import type { FreeMassHit, TestAnalysis } from "../../physics/stopTests/index.ts";
import { predictedHit } from "../../physics/stopTests/index.ts";
import { parseNumber } from "../../records/entry/lengthEntry.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { quantityText } from "../../saying/quantityText.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import { said } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/pack.ts";
import { TextField } from "../parts/Field.tsx";
import { Notice } from "../parts/Notice.tsx";

const figures: readonly (readonly [string, QuantityKind, keyof FreeMassHit])[] = [
  [messages.greatestForce, "force", "peakForceN"],
  [messages.pressedBy, "length", "peakCompressionMm"],
  [messages.leavesAt, "speed", "leaveSpeedMmPerS"],
  [messages.energyIn, "energy", "energyInJ"],
  [messages.energyBackOut, "energy", "energyOutJ"],
];

/** The hit of a free mass on the stop as this test found it. */
export function HitOfTest({ analysis, unit }: { analysis: TestAnalysis; unit: LengthUnit }) {
  const [mass, setMass] = useState("40");
  const [speed, setSpeed] = useState("2");
  const massKg = parseNumber(mass, "aboveZero");
  const speedMPerS = parseNumber(speed, "aboveZero");
  const asked = massKg.ok && speedMPerS.ok ? ([massKg.value, speedMPerS.value] as const) : null;
  const [askedMass, askedSpeed] = asked ?? [null, null];
  const predicted = useMemo(
    () =>
      askedMass === null || askedSpeed === null
        ? null
        : predictedHit(analysis, askedMass, askedSpeed),
    [analysis, askedMass, askedSpeed],
  );
  const message = (parsed: typeof massKg) =>
    parsed.ok ? {} : { tone: "no" as const, message: sentenceText(parsed.fault.sentence, unit) };
  const hit = predicted?.ok ? predicted.value : null;
  return (
    <section class="card" aria-labelledby="hit-heading">
      <h2 id="hit-heading">{messages.predictedHit}</h2>
      <p class="small soft">{messages.freeMassMeetsStop}</p>
      <TextField
        label={messages.mass}
        value={mass}
        unit="kg"
        keys="decimal"
        onInput={setMass}
        {...message(massKg)}
      />
      <TextField
        label={messages.speedAtStop}
        value={speed}
        unit="m/s"
        keys="decimal"
        onInput={setSpeed}
        {...message(speedMPerS)}
      />
      {predicted && !predicted.ok && (
        <Notice tone="unsure">
          <p>{sentenceText(predicted.fault.sentence, unit)}</p>
        </Notice>
      )}
      {hit && (
        <>
          <dl class="pack-figures">
            {figures.map(([name, kind, figure]) => (
              <div key={name}>
                <dt>{name}</dt>
                <dd>
                  {quantityText({ kind, value: hit.hit[figure] }, unit)}
                  {hit.doubt && ` ± ${quantityText({ kind, value: hit.doubt[figure] }, unit)}`}
                </dd>
              </div>
            ))}
          </dl>
          {hit.remarks
            .filter(({ code }) => code !== "hitSimulated")
            .map(({ code, sentence }) => (
              <Notice key={code} tone="care">
                <p>{sentenceText(sentence, unit)}</p>
              </Notice>
            ))}
          <p class="small soft">
            {messages.eachHolds95Of({ simulatedStops: said(simulatedStops) })}
          </p>
        </>
      )}
    </section>
  );
}
