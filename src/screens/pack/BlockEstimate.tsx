import { useState } from "preact/hooks";
import { rubberBlockCurve } from "../../physics/estimates/index.ts";
import { plainDecimal } from "../../records/entry/units.ts";
import { inModelUnits } from "../../saying/modelUnits.ts";
import { quantityText } from "../../saying/quantityText.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import * as messages from "../../words/compiled/screens/pack.ts";
import { Button } from "../parts/Button.tsx";
import { Notice } from "../parts/Notice.tsx";
import { type FieldProps, PackNumber } from "./fields.tsx";
import { DraftReader, type ItemDraft, numberText, tableUnitField } from "./itemDraft.ts";

/** The curve of an old solid block from its hardness and size, marked as an estimate wherever it goes. */
export function BlockEstimate({ draft, change }: FieldProps) {
  const [own, setOwn] = useState<ItemDraft>({
    unit: draft.unit,
    texts: { "hardness.tol": "5" },
    tables: {},
  });
  const fields = {
    draft: own,
    change: (update: (draft: ItemDraft) => ItemDraft) => setOwn(update),
  };
  const reader = new DraftReader(own);
  const value = (field: string, label: string, kind: "length" | "number") => {
    const read = reader.number(field, label, kind);
    const tol = reader.number(`${field}.tol`, label, kind, "zeroOrMore") ?? 0;
    return read === undefined ? null : { value: read, tol };
  };
  const shoreA = value("hardness", messages.hardness, "number");
  const diameter = value("diameter", messages.diameter, "length");
  const height = value("height", messages.height, "length");
  const outcome =
    shoreA && diameter && height ? rubberBlockCurve({ shoreA, diameter, height }) : null;
  const length = (mm: number) => quantityText({ kind: "length", value: mm }, draft.unit);

  const take = () => {
    if (!outcome?.ok || !diameter || !height) return;
    const estimate = outcome.value;
    change((current) => ({
      ...current,
      texts: {
        ...current.texts,
        freeHeight: numberText(height.value, "length", current.unit),
        "freeHeight.tol": numberText(height.tol, "length", current.unit),
        outerDiameterMm: numberText(diameter.value, "length", current.unit),
        usableCompressionMm: numberText(
          Number(estimate.usableCompressionMm.toFixed(2)),
          "length",
          current.unit,
        ),
        testedAtSpeed: "no",
        [tableUnitField("curve")]: "mm",
        estimatedHow: inModelUnits(estimate.how),
        estimatedShare: plainDecimal(Math.ceil(1000 * estimate.forceShare) / 10),
      },
      tables: {
        ...current.tables,
        damping: [],
        curve: estimate.curve.flatMap(([mm, newtons]) => [
          plainDecimal(Number(mm.toFixed(3))),
          plainDecimal(Number(newtons.toFixed(2))),
        ]),
      },
    }));
  };
  return (
    <>
      <p class="small">{messages.forOldSolidRubber}</p>
      <div class="pack-reading">
        <PackNumber
          {...fields}
          field="hardness"
          label={messages.hardness}
          kind="number"
          unitWords={messages.shore}
        />
        <PackNumber
          {...fields}
          field="hardness.tol"
          label={messages.ofHardness}
          labelUnseen
          lead="±"
          kind="number"
          allowed="zeroOrMore"
        />
      </div>
      {(["diameter", "height"] as const).map((field) => (
        <div key={field} class="pack-reading">
          <PackNumber
            {...fields}
            field={field}
            label={field === "diameter" ? messages.diameterOfBlock : messages.heightOfBlock}
            kind="length"
          />
          <PackNumber
            {...fields}
            field={`${field}.tol`}
            label={field === "diameter" ? messages.ofDiameter : messages.ofHeight}
            labelUnseen
            lead="±"
            kind="length"
            allowed="zeroOrMore"
            placeholder="0"
          />
        </div>
      ))}
      {outcome && !outcome.ok && (
        <Notice tone="no" live>
          <p>{sentenceText(outcome.fault.sentence, draft.unit)}</p>
        </Notice>
      )}
      {outcome?.ok && (
        <Notice tone="care" live>
          <p>
            <strong>{messages.estimate}</strong>{" "}
            {messages.atSmallCompressionShape({
              rateNPerMm: quantityText(
                { kind: "rate", value: outcome.value.rateNPerMm.value },
                draft.unit,
              ),
              tol: quantityText({ kind: "rate", value: outcome.value.rateNPerMm.tol }, draft.unit),
              shapeFactor: outcome.value.shapeFactor.toFixed(2),
              usableCompressionMm: length(outcome.value.usableCompressionMm),
            })}
          </p>
          <p class="small">{messages.estimateFromHardnessIs}</p>
          <div class="row">
            <Button icon="tick" onClick={take}>
              {messages.takeItOver}
            </Button>
          </div>
        </Notice>
      )}
    </>
  );
}
