import type { RowsAnalysis } from "../../physics/stopTests/index.ts";
import { quantityText, sentenceText } from "../../records/entry/quantityText.ts";
import { fromModel, type LengthUnit } from "../../records/entry/units.ts";
import { Notice } from "../parts/Notice.tsx";
import { StaticCurveFound } from "./StaticCurveFound.tsx";

/** What rows of depth, speed and force gave. */
export function RowsFound({ analysis, unit }: { analysis: RowsAnalysis; unit: LengthUnit }) {
  const { staticCurve, damping } = analysis;
  const dampingUnit = unit === "in" ? ("lbf·s/in" as const) : ("N·s/mm" as const);
  const coefficient = (value: { coefficient: number; standardError: number } | null) =>
    value
      ? `${fromModel(value.coefficient, dampingUnit).toPrecision(3)} ± ${fromModel(value.standardError, dampingUnit).toPrecision(2)}`
      : "not tested";
  return (
    <>
      <StaticCurveFound staticCurve={staticCurve} unit={unit} />
      {damping.ok ? (
        <>
          {damping.value.restLoss && (
            <p>
              <strong>Lost at rest</strong>: {(100 * damping.value.restLoss.value).toFixed(1)} ±{" "}
              {(100 * damping.value.restLoss.standardError).toFixed(1)} % of the force.
            </p>
          )}
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
