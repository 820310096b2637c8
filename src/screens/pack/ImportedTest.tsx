import { useMemo, useState } from "preact/hooks";
import type { CyclesAnalysis, RowsAnalysis } from "../../physics/stopTests/benchTest.ts";
import { quantityText, sentenceText } from "../../records/entry/quantityText.ts";
import { fromModel, type LengthUnit } from "../../records/entry/units.ts";
import type { Pack, PackStop } from "../../records/pack/pack.ts";
import type { TestImport } from "../../records/testRows/testFile.ts";
import { Button } from "../parts/Button.tsx";
import { CheckLine } from "../parts/Choices.tsx";
import { Notice } from "../parts/Notice.tsx";
import { changePack, withStop } from "./packEdits.ts";
import { packItemHref } from "./packRoutes.ts";
import { TestCharts } from "./TestCharts.tsx";
import { plotsOfCycles, plotsOfRows } from "./testPlots.ts";
import { packTestOf, remarksOf, shortOfUsable, stopWithTest } from "./testTakeOver.ts";
import { goAfter } from "./useItemDraft.ts";

/** What came out of a file: figures, faults in words, drawings, and what to take over into the stop. */
export function ImportedTest({
  pack,
  stop,
  imported,
  unit,
}: {
  pack: Pack;
  stop: PackStop;
  imported: TestImport;
  unit: LengthUnit;
}) {
  const { file, analysis } = imported;
  const rows = analysis.kind === "rows" ? analysis : null;
  const [curve, setCurve] = useState(true);
  const [damping, setDamping] = useState(true);
  const [faults, setFaults] = useState<readonly string[]>([]);
  const plots = useMemo(
    () => (analysis.kind === "rows" ? plotsOfRows(analysis) : plotsOfCycles(analysis)),
    [analysis],
  );
  const short = shortOfUsable(stop, imported);
  const length = (value: number) => quantityText({ kind: "length", value }, unit);
  const keep = async () => {
    const test = packTestOf(imported);
    const next = stopWithTest(stop, imported, test, { curve, damping });
    const result = await changePack(
      withStop(pack, next),
      `Imported: ${file.name} for ${stop.name}`,
    );
    setFaults(
      goAfter(result, packItemHref("stop", stop.id)).map(({ sentence }) =>
        sentenceText(sentence, unit),
      ),
    );
  };
  return (
    <>
      <section class="card" aria-labelledby="read-heading">
        <h2 id="read-heading">{file.name}</h2>
        <p class="small">{factsOf(file)}</p>
        {remarksOf(imported).map(({ sentence }) => {
          const text = sentenceText(sentence, unit);
          return (
            <Notice key={text} tone="care">
              <p>{text}</p>
            </Notice>
          );
        })}
        {rows ? (
          <RowsFound analysis={rows} unit={unit} />
        ) : (
          analysis.kind === "cycles" && <CyclesFound analysis={analysis} unit={unit} />
        )}
      </section>
      <TestCharts plots={plots} unit={unit} />
      <section class="card" aria-labelledby="take-heading">
        <h2 id="take-heading">Keep it with {stop.name}</h2>
        {rows?.staticCurve.ok && (
          <CheckLine
            checked={curve}
            onChange={setCurve}
            hint={`${rows.staticCurve.value.points.length} points take the place of the stop's ${stop.curve.length}.`}
          >
            Take its static curve over
          </CheckLine>
        )}
        {curve && short !== null && (
          <Notice tone="care">
            <p>
              The test ends {length(short)} before the usable compression of{" "}
              {length(stop.usableCompressionMm)}: beyond it the curve goes straight on. Test deeper,
              or lower the usable compression.
            </p>
          </Notice>
        )}
        {rows?.damping.ok && (
          <CheckLine
            checked={damping}
            onChange={setDamping}
            hint={`${rows.damping.value.rows.length} depths take the place of the stop's ${stop.damping?.length ?? 0}.`}
          >
            Take its damping over
          </CheckLine>
        )}
        {analysis.kind === "cycles" && (
          <p class="small">
            Cycles are kept as a test. The stop's curve and damping table stay as they are.
          </p>
        )}
        <Button look="main" icon="tick" onClick={keep}>
          Keep
        </Button>
        {faults.length > 0 && (
          <Notice tone="no" live>
            {faults.map((text) => (
              <p key={text}>{text}</p>
            ))}
          </Notice>
        )}
      </section>
    </>
  );
}

function factsOf({ rows, rowsLeftOut, columns, decimalMark }: TestImport["file"]): string {
  const used = columns.map(({ quantity, unit }) => `${quantity} in ${unit}`).join(", ");
  const out = rowsLeftOut > 0 ? `, ${rowsLeftOut.toLocaleString("en")} left out` : "";
  const mark = decimalMark === "," ? "comma" : "point";
  return `${rows.toLocaleString("en")} rows${out}; columns: ${used}; decimal ${mark}.`;
}

function RowsFound({ analysis, unit }: { analysis: RowsAnalysis; unit: LengthUnit }) {
  const { staticCurve, damping } = analysis;
  const forceUnit = unit === "in" ? ("lbf" as const) : ("N" as const);
  const force = (value: number) =>
    `${Number(fromModel(value, forceUnit).toPrecision(3))} ${forceUnit}`;
  const dampingUnit = unit === "in" ? ("lbf·s/in" as const) : ("N·s/mm" as const);
  const coefficient = (value: { coefficient: number; standardError: number } | null) =>
    value
      ? `${fromModel(value.coefficient, dampingUnit).toPrecision(3)} ± ${fromModel(value.standardError, dampingUnit).toPrecision(2)}`
      : "not tested";
  return (
    <>
      {staticCurve.ok ? (
        <p>
          <strong>Static curve:</strong> {staticCurve.value.points.length} points from{" "}
          {staticCurve.value.rows.toLocaleString("en")} rows; what is left of them scatters by{" "}
          {force(staticCurve.value.residuals.rmsN)}, at most{" "}
          {force(staticCurve.value.residuals.greatestN)}.
        </p>
      ) : (
        <Notice tone="unsure">
          <p>
            <strong>No static curve.</strong> {sentenceText(staticCurve.fault.sentence, unit)}
          </p>
        </Notice>
      )}
      {damping.ok ? (
        <>
          <p>
            <strong>Damping</strong> at {damping.value.rows.length} depths, with standard errors:
          </p>
          <table class="pack-differs">
            <caption class="unseen">Damping at each depth, with standard errors</caption>
            <thead>
              <tr>
                <th scope="col">Depth</th>
                <th scope="col">Pressed deeper, {dampingUnit}</th>
                <th scope="col">Coming back, {dampingUnit}</th>
              </tr>
            </thead>
            <tbody>
              {damping.value.rows.map((row) => (
                <tr key={row.depthMm}>
                  <th scope="row">{quantityText({ kind: "length", value: row.depthMm }, unit)}</th>
                  <td>{coefficient(row.compressing)}</td>
                  <td>{coefficient(row.rebounding)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </>
      ) : (
        <Notice tone="unsure">
          <p>
            <strong>No damping.</strong> {sentenceText(damping.fault.sentence, unit)}
          </p>
        </Notice>
      )}
    </>
  );
}

function CyclesFound({ analysis, unit }: { analysis: CyclesAnalysis; unit: LengthUnit }) {
  const energy = (value: number) => quantityText({ kind: "energy", value }, unit);
  const dampingUnit = unit === "in" ? ("lbf·s/in" as const) : ("N·s/mm" as const);
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
