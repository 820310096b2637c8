import type {
  CyclesAnalysis,
  Doubted,
  StopLoss,
  TimedAnalysis,
} from "../../physics/stopTests/index.ts";
import { fromModel, type LengthUnit } from "../../records/entry/units.ts";
import { quantityText, unbroken } from "../../saying/quantityText.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import * as messages from "../../words/compiled/screens/pack.ts";
import { language } from "../../words/language.ts";
import { Notice } from "../parts/Notice.tsx";
import { DampingFound, dampingUnitOf } from "./DampingFound.tsx";
import { StaticCurveFound, scatterText } from "./StaticCurveFound.tsx";

/** What a record of time, depth and force gave. */
export function TimedFound({ analysis, unit }: { analysis: TimedAnalysis; unit: LengthUnit }) {
  const { staticCurve, loss, blocks, leftOut } = analysis;
  return (
    <>
      <StaticCurveFound staticCurve={staticCurve} unit={unit} />
      {loss.ok ? (
        <LossFound loss={loss.value} unit={unit} />
      ) : (
        staticCurve.ok && (
          <Notice tone="unsure">
            <p>
              <strong>{messages.noLossAtSpeed}</strong> {sentenceText(loss.fault.sentence, unit)}
            </p>
          </Notice>
        )
      )}
      {leftOut.rows + leftOut.cycles > 0 && (
        <p class="small">
          {messages.leftOutRowsCycles({
            rows: leftOut.rows.toLocaleString(language),
            cycles: leftOut.cycles,
          })}
        </p>
      )}
      {blocks.length > 0 && <Blocks blocks={blocks} unit={unit} />}
    </>
  );
}

function LossFound({ loss, unit }: { loss: StopLoss; unit: LengthUnit }) {
  const dampingUnit = dampingUnitOf(unit);
  const share = ({ value, doubt }: Doubted) =>
    `${(100 * value).toFixed(1)} ± ${(100 * doubt).toFixed(1)} %`;
  const { restLoss, branches, damping, staticShare } = loss;
  return (
    <>
      <p>
        <strong>{messages.loss}</strong>
        {messages.eachWithIts95({ scatter: scatterText(loss.misfitN, unit) })}
      </p>
      <dl class="pack-figures">
        <div>
          <dt>{messages.shareOfCurveThat}</dt>
          <dd>{share(staticShare)}</dd>
        </div>
        <div>
          <dt>{messages.lostAtRestShare}</dt>
          <dd>{share(restLoss)}</dd>
        </div>
        {branches.map(({ tauS, share: own }) => (
          <div key={tauS}>
            <dt>{messages.fadesWithinS2({ tauS })}</dt>
            <dd>{share(own)}</dd>
          </div>
        ))}
        {damping.length === 0 && (
          <div>
            <dt>{messages.dampingIfAnyAt}</dt>
            <dd>
              {unbroken(
                `${fromModel(loss.dampingDoubt, dampingUnit).toPrecision(2)} ${dampingUnit}`,
              )}
            </dd>
          </div>
        )}
      </dl>
      {damping.length > 0 && (
        <DampingFound
          caption={messages.dampingAtEachDepthWith}
          rows={damping.map(({ depthMm, compressing, rebounding }) => ({
            depthMm,
            compressing: [compressing.value, compressing.doubt],
            rebounding: [rebounding.value, rebounding.doubt],
          }))}
          unit={unit}
        />
      )}
    </>
  );
}

function Blocks({ blocks, unit }: { blocks: readonly CyclesAnalysis[]; unit: LengthUnit }) {
  const length = (value: number) => quantityText({ kind: "length", value }, unit);
  return (
    <>
      <h3>{messages.cyclesBlockByBlock}</h3>
      {blocks.map((block, index) => (
        <section key={index} aria-label={messages.block2({ index: index + 1 })}>
          <h4>
            {messages.blockCycle({
              index: index + 1,
              cycles: block.cycles,
              greatestSpeedMmPerS: quantityText(
                { kind: "speed", value: block.greatestSpeedMmPerS },
                unit,
              ),
              amplitudeMm: length(block.amplitudeMm),
              meanDisplacementMm: length(block.meanDisplacementMm),
            })}
          </h4>
          <CyclesFound analysis={block} unit={unit} />
        </section>
      ))}
    </>
  );
}

function CyclesFound({ analysis, unit }: { analysis: CyclesAnalysis; unit: LengthUnit }) {
  const energy = (value: number) => quantityText({ kind: "energy", value }, unit);
  const dampingUnit = dampingUnitOf(unit);
  const { lossFactor, equivalentDampingNsPerMm } = analysis;
  const figures: readonly [string, string][] = [
    [messages.cycles2, `${analysis.cycles} at ${analysis.frequencyHz.toPrecision(4)} Hz`],
    [messages.halfStroke2, quantityText({ kind: "length", value: analysis.amplitudeMm }, unit)],
    [messages.energyInCycle, energy(analysis.energyInJ.value)],
    [messages.energyOutCycle, energy(analysis.energyOutJ.value)],
    [
      messages.lossCycle,
      `${energy(analysis.lossJ.value)} ± ${energy(analysis.lossJ.standardError)}`,
    ],
    [
      messages.dynamicRate,
      quantityText({ kind: "rate", value: analysis.dynamicRateNPerMm.value }, unit),
    ],
    [messages.lossFactor, lossFactor ? lossFactor.value.toPrecision(3) : messages.notDefinedHere],
    [
      messages.equivalentViscousDamping,
      equivalentDampingNsPerMm
        ? unbroken(
            `${fromModel(equivalentDampingNsPerMm.value, dampingUnit).toPrecision(3)} ${dampingUnit}`,
          )
        : messages.notDefinedHere,
    ],
  ];
  return (
    <dl class="pack-figures">
      {figures.map(([name, value]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}
