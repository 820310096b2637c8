import { quantityText, sentenceText } from "../../../records/entry/quantityText.ts";
import { blockOf, withBlock } from "../../../records/filling/blockStop.ts";
import { helperInputs } from "../../../records/filling/helperInputs.ts";
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
    <Disclosure summary="A plain block of solid rubber? Estimate it">
      <p class="small">
        Press a Shore A gauge on a flat, clean face away from the edge, five times, and take the
        mean.
      </p>
      <TolerancedEntry
        {...props}
        input={helperInputs.blockHardness}
        label="Hardness"
        unitWords="Shore A"
        usual="5"
      />
      <TolerancedEntry
        {...props}
        input={helperInputs.blockDiameter}
        label="Diameter of the block"
        hint="Of a square or tapered block: of a circle with its mean area."
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
            <strong>An estimate:</strong>{" "}
            {quantityText({ kind: "rate", value: outcome.value.rateNPerMm.value }, unit)} ±{" "}
            {quantityText({ kind: "rate", value: outcome.value.rateNPerMm.tol }, unit)}, usable{" "}
            {quantityText({ kind: "length", value: outcome.value.usableCompressionMm }, unit)}. It
            is ± 25 % at best and says nothing of damping. The answer says so.
          </p>
          <div class="row">
            <Button
              icon="tick"
              onClick={() => change((now) => withBlock(now, outcome.value, unit))}
            >
              Take this estimate
            </Button>
          </div>
        </Notice>
      )}
    </Disclosure>
  );
}
