import { spacer } from "../../../physics/sentence.ts";
import { dateText } from "../../../records/check/checkName.ts";
import type { StoredCheck } from "../../../records/check/storedCheck.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import { partText } from "../../../records/pack/stopFacts.ts";
import { quantityText } from "../../../saying/quantityText.ts";
import { said } from "../../../saying/texts.ts";
import * as messages from "../../../words/compiled/screens/answer/sections.ts";
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
          <strong>{messages.fitted}</strong>{" "}
          {messages.hasSpacerMmSelectTrueSpacer({
            part: said(partText(fitted)),
            hasSpacerMm: fitted.spacerMm > 0,
            spacerMm: quantityText(spacer(fitted.spacerMm), unit),
            by: fitted.by,
            at: dateText(fitted.at),
          })}
        </p>
      )}
      {job?.moment && (
        <p class="small soft">
          {job.moment === "after" ? messages.checkedAfterChange : messages.checkedBeforeChange}
        </p>
      )}
      <div class="row">
        <Button onClick={() => go(explainStep)}>{messages.explainToCustomer}</Button>
        <Button onClick={() => go(fittedStep)}>
          {fitted ? messages.changeWhatWasFitted : messages.fitted2}
        </Button>
        <Button onClick={() => go(secondStep)}>{messages.secondPersonMeasures}</Button>
      </div>
    </div>
  );
}
