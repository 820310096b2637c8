import type { Outcome } from "../../physics/outcome.ts";
import type { StaticCurve } from "../../physics/stopTests/index.ts";
import { sentenceText } from "../../records/entry/quantityText.ts";
import { fromModel, type LengthUnit } from "../../records/entry/units.ts";
import { Notice } from "../parts/Notice.tsx";

export function StaticCurveFound({
  staticCurve,
  unit,
}: {
  staticCurve: Outcome<StaticCurve>;
  unit: LengthUnit;
}) {
  const forceUnit = unit === "in" ? ("lbf" as const) : ("N" as const);
  const force = (value: number) =>
    `${Number(fromModel(value, forceUnit).toPrecision(3))} ${forceUnit}`;
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
    </>
  );
}
