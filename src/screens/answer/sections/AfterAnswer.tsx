import { spacer } from "../../../physics/sentence.ts";
import { dateText } from "../../../records/check/checkName.ts";
import type { StoredCheck } from "../../../records/check/storedCheck.ts";
import { quantityText } from "../../../records/entry/quantityText.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import { partText } from "../../../records/pack/stopFacts.ts";
import { explainStep, fittedStep, secondStep } from "../../guide/steps.ts";
import { Button } from "../../parts/Button.tsx";

/** What comes after the answer: telling the customer, what was fitted, a second person. */
export function AfterAnswer({
  stored,
  unit,
  go,
}: {
  stored: StoredCheck;
  unit: LengthUnit;
  go: (step: string) => void;
}) {
  const { fitted, job } = stored.record;
  return (
    <div class="stack-close">
      {fitted && (
        <p>
          <strong>Fitted:</strong> {partText(fitted)}
          {fitted.spacerMm > 0 && `, spacer ${quantityText(spacer(fitted.spacerMm), unit)}`}, by{" "}
          {fitted.by} on {dateText(fitted.at)}.
        </p>
      )}
      {job?.moment && (
        <p class="small soft">
          {job.moment === "after" ? "Checked after the change." : "Checked before the change."}
        </p>
      )}
      <div class="row">
        <Button onClick={() => go(explainStep)}>Explain to the customer</Button>
        <Button onClick={() => go(fittedStep)}>
          {fitted ? "Change what was fitted" : "Fitted"}
        </Button>
        <Button onClick={() => go(secondStep)}>A second person measures</Button>
      </div>
    </div>
  );
}
