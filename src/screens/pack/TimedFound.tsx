import type {
  CyclesAnalysis,
  Doubted,
  StopLoss,
  TimedAnalysis,
} from "../../physics/stopTests/index.ts";
import { quantityText, sentenceText } from "../../records/entry/quantityText.ts";
import { fromModel, type LengthUnit } from "../../records/entry/units.ts";
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
              <strong>No loss at speed.</strong> {sentenceText(loss.fault.sentence, unit)}
            </p>
          </Notice>
        )
      )}
      {leftOut.rows + leftOut.cycles > 0 && (
        <p class="small">
          Left out: {leftOut.rows.toLocaleString("en")} rows, {leftOut.cycles} cycles.
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
        <strong>Loss</strong>, each with its 95 % ±. What is left of the force scatters by{" "}
        {scatterText(loss.misfitN, unit)}.
      </p>
      <dl class="pack-figures">
        <div>
          <dt>Share of the curve that stays at rest</dt>
          <dd>{share(staticShare)}</dd>
        </div>
        <div>
          <dt>Lost at rest, a share of the force</dt>
          <dd>{share(restLoss)}</dd>
        </div>
        {branches.map(({ tauS, share: own }) => (
          <div key={tauS}>
            <dt>Fades within {tauS} s</dt>
            <dd>{share(own)}</dd>
          </div>
        ))}
        {damping.length === 0 && (
          <div>
            <dt>Damping, if any, at most</dt>
            <dd>
              {fromModel(loss.dampingDoubt, dampingUnit).toPrecision(2)} {dampingUnit}
            </dd>
          </div>
        )}
      </dl>
      {damping.length > 0 && (
        <DampingFound
          caption="Damping at each depth, with its 95 % ±"
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
      <h3>Cycles, block by block</h3>
      {blocks.map((block, index) => (
        <section key={index} aria-label={`Block ${index + 1}`}>
          <h4>
            Block {index + 1}: {block.cycles} {block.cycles === 1 ? "cycle" : "cycles"}, up to{" "}
            {quantityText({ kind: "speed", value: block.greatestSpeedMmPerS }, unit)}, half stroke{" "}
            {length(block.amplitudeMm)} about {length(block.meanDisplacementMm)}
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
    ["Cycles", `${analysis.cycles} at ${analysis.frequencyHz.toPrecision(4)} Hz`],
    ["Half the stroke", quantityText({ kind: "length", value: analysis.amplitudeMm }, unit)],
    ["Energy in, a cycle", energy(analysis.energyInJ.value)],
    ["Energy out, a cycle", energy(analysis.energyOutJ.value)],
    ["Loss a cycle", `${energy(analysis.lossJ.value)} ± ${energy(analysis.lossJ.standardError)}`],
    ["Dynamic rate", quantityText({ kind: "rate", value: analysis.dynamicRateNPerMm.value }, unit)],
    ["Loss factor", lossFactor ? lossFactor.value.toPrecision(3) : "not defined here"],
    [
      "Equivalent viscous damping",
      equivalentDampingNsPerMm
        ? `${fromModel(equivalentDampingNsPerMm.value, dampingUnit).toPrecision(3)} ${dampingUnit}`
        : "not defined here",
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
