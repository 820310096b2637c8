import { blockOf, withBlock } from "../../../records/filling/blockStop.ts";
import { helperInputs } from "../../../records/filling/helperInputs.ts";
import { inModelUnits } from "../../../saying/modelUnits.ts";
import { quantityText } from "../../../saying/quantityText.ts";
import { sentenceText } from "../../../saying/sentenceText.ts";
import * as messages from "../../../words/compiled/screens/check/stop.ts";
import type { StepProps } from "../../guide/stepProps.ts";
import { Button } from "../../parts/Button.tsx";
import { Disclosure } from "../../parts/Disclosure.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { TolerancedEntry } from "../ride/TolerancedEntry.tsx";

/** Without a test sheet: the forces of a plain block of solid rubber from its hardness and size. */
export function BlockForces({
  stored,
  change,
  preferences,
}: Pick<StepProps, "stored" | "change" | "preferences">) {
  const { stop = {} } = stored.record;
  if (stop.curve !== undefined || stop.freeHeight === undefined) return null;
  const outcome = blockOf(stored);
  const props = { stored, change, preferences };
  const unit = preferences.length;
  return (
    <Disclosure summary={messages.plainBlockOfSolid}>
      <p class="small">{messages.pressShoreGaugeOn}</p>
      <TolerancedEntry
        {...props}
        input={helperInputs.blockHardness}
        label={messages.hardness}
        unitWords={messages.shore}
        usual="5"
      />
      <TolerancedEntry
        {...props}
        input={helperInputs.blockDiameter}
        label={messages.diameterOfBlock}
        hint={messages.ofSquareOrTapered}
        usual={unit === "in" ? "3/32" : "2"}
      />
      {outcome && !outcome.ok && (
        <Notice tone="no" live>
          <p>{sentenceText(outcome.fault.sentence, unit)}</p>
        </Notice>
      )}
      {outcome?.ok && (
        <Notice tone="care" live>
          <p>
            <strong>{messages.estimate}</strong>{" "}
            {messages.usableItIs25({
              rateNPerMm: quantityText(
                { kind: "rate", value: outcome.value.rateNPerMm.value },
                unit,
              ),
              tol: quantityText({ kind: "rate", value: outcome.value.rateNPerMm.tol }, unit),
              usableCompressionMm: quantityText(
                { kind: "length", value: outcome.value.usableCompressionMm },
                unit,
              ),
            })}
          </p>
          <div class="row">
            <Button
              icon="tick"
              onClick={() => change((now) => withBlock(now, outcome.value, unit, inModelUnits))}
            >
              {messages.takeThisEstimate}
            </Button>
          </div>
        </Notice>
      )}
    </Disclosure>
  );
}
