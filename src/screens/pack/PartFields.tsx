import type { LengthUnit } from "../../records/entry/units.ts";
import { heightsOf, type Pack, type PackStop } from "../../records/pack/pack.ts";
import { quantityText } from "../../saying/quantityText.ts";
import * as messages from "../../words/compiled/screens/pack.ts";
import { SimilarStops } from "../choosing/SimilarStops.tsx";
import { Disclosure } from "../parts/Disclosure.tsx";
import { SelectField } from "../parts/Field.tsx";
import { type FieldProps, PackNumber, PackText } from "./fields.tsx";
import { setText, textOf } from "./itemDraft.ts";
import { packItemHref } from "./packRoutes.ts";
import { conditionNames } from "./partDraft.ts";

const conditionWords: { readonly [Name in (typeof conditionNames)[number]]: string } = {
  temperature: messages.temperature,
  preload: messages.preload,
  conditioning: messages.cyclesBeforeTest,
  rest: messages.restBeforeTest,
  specimen: messages.specimen,
};

/** What makes a stop a part: its number, whether it can be ordered, in what heights, how much parts vary. */
export function PartFields({
  draft,
  change,
  pack,
  base,
  unit,
}: FieldProps & { pack: Pack; base: PackStop | null; unit: LengthUnit }) {
  const fields = { draft, change };
  const heights = base?.build === undefined ? [] : heightsOf(pack, base);
  return (
    <section class="card" aria-labelledby="part-heading">
      <h2 id="part-heading">{messages.part}</h2>
      <PackText {...fields} field="partNumber" label={messages.partNumber} />
      <PackText {...fields} field="revision" label={messages.revision} />
      <SelectField
        label={messages.canItBeOrdered}
        value={textOf(draft, "state")}
        options={[
          { value: "", text: messages.notSaidCountsAs },
          { value: "offered", text: messages.offered },
          { value: "discontinued", text: messages.discontinued },
        ]}
        onChange={(state) => change((current) => setText(current, "state", state))}
      />
      <PackText
        {...fields}
        field="replacedBy"
        label={messages.replacedBy}
        hint={messages.partNumberOfWhat}
      />
      <PackText {...fields} field="build" label={messages.build} hint={messages.sameTextOnEvery} />
      {heights.length > 1 && (
        <p class="small">
          {messages.offeredInTheseHeights({
            heights: heights
              .map((value) => quantityText({ kind: "length", value }, unit))
              .join(", "),
          })}
        </p>
      )}
      <PackText
        {...fields}
        field="spacers"
        label={messages.spacersForIt}
        hint={messages.apartBySemicolonsEmpty}
      />
      <PackNumber
        {...fields}
        field="usableTolMm"
        label={messages.batchScatterCompression}
        kind="length"
        allowed="zeroOrMore"
      />
      <PackNumber
        {...fields}
        field="forceTol"
        label={messages.batchScatterForces}
        kind="number"
        allowed="zeroOrMore"
        unitWords="%"
        hint={messages.forInformationFiguresAnd}
      />
      <Disclosure summary={messages.conditionsOfItsTest}>
        {conditionNames.map((name) => (
          <PackText
            key={name}
            {...fields}
            field={`conditions.${name}`}
            label={conditionWords[name]}
          />
        ))}
        <p class="small soft">{messages.toldBesideStopNo}</p>
      </Disclosure>
      {base && (
        <Disclosure summary={messages.similarStopsOfThis}>
          <SimilarStops
            pack={pack}
            wanted={base}
            unit={unit}
            hrefOf={({ id }) => packItemHref("stop", id)}
          />
        </Disclosure>
      )}
    </section>
  );
}
