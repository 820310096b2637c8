import type { Outcome } from "../../physics/outcome.ts";
import type { StaticCurve } from "../../physics/stopTests/index.ts";
import { fromModel, type LengthUnit } from "../../records/entry/units.ts";
import { unbroken } from "../../saying/quantityText.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import * as messages from "../../words/compiled/screens/pack.ts";
import { language } from "../../words/language.ts";
import { Notice } from "../parts/Notice.tsx";

/** A scatter of force in three digits, its unit on the same line. */
export function scatterText(newtons: number, unit: LengthUnit): string {
  const forceUnit = unit === "in" ? "lbf" : "N";
  return unbroken(`${Number(fromModel(newtons, forceUnit).toPrecision(3))} ${forceUnit}`);
}

export function StaticCurveFound({
  staticCurve,
  unit,
}: {
  staticCurve: Outcome<StaticCurve>;
  unit: LengthUnit;
}) {
  return (
    <>
      {staticCurve.ok ? (
        <p>
          <strong>{messages.staticCurve}</strong>{" "}
          {messages.pointsFromRowsWhat({
            points: staticCurve.value.points.length,
            rows: staticCurve.value.rows.toLocaleString(language),
            scatter: scatterText(staticCurve.value.residuals.rmsN, unit),
            scatter2: scatterText(staticCurve.value.residuals.greatestN, unit),
          })}
        </p>
      ) : (
        <Notice tone="unsure">
          <p>
            <strong>{messages.noStaticCurve}</strong>{" "}
            {sentenceText(staticCurve.fault.sentence, unit)}
          </p>
        </Notice>
      )}
    </>
  );
}
