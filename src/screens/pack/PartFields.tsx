import { quantityText } from "../../records/entry/quantityText.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { heightsOf, type Pack, type PackStop } from "../../records/pack/pack.ts";
import { SimilarStops } from "../choosing/SimilarStops.tsx";
import { Disclosure } from "../parts/Disclosure.tsx";
import { SelectField } from "../parts/Field.tsx";
import { type FieldProps, PackNumber, PackText } from "./fields.tsx";
import { setText, textOf } from "./itemDraft.ts";
import { packItemHref } from "./packRoutes.ts";
import { conditionNames } from "./partDraft.ts";

const conditionWords: { readonly [Name in (typeof conditionNames)[number]]: string } = {
  temperature: "Temperature",
  preload: "Preload",
  conditioning: "Cycles before the test",
  rest: "Rest before the test",
  specimen: "Specimen",
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
      <h2 id="part-heading">Part</h2>
      <PackText {...fields} field="partNumber" label="Part number" />
      <PackText {...fields} field="revision" label="Revision" />
      <SelectField
        label="Can it be ordered?"
        value={textOf(draft, "state")}
        options={[
          { value: "", text: "Not said (counts as offered)" },
          { value: "offered", text: "Offered" },
          { value: "discontinued", text: "Discontinued" },
        ]}
        onChange={(state) => change((current) => setText(current, "state", state))}
      />
      <PackText
        {...fields}
        field="replacedBy"
        label="Replaced by"
        hint="Part number of what took its place. It is then not advised any more."
      />
      <PackText
        {...fields}
        field="build"
        label="Build"
        hint="The same text on every height of one build."
      />
      {heights.length > 1 && (
        <p class="small">
          Offered in these heights:{" "}
          {heights.map((value) => quantityText({ kind: "length", value }, unit)).join(", ")}.
        </p>
      )}
      <PackText
        {...fields}
        field="spacers"
        label="Spacers for it"
        hint="Apart by semicolons. Empty: those of the whole library."
      />
      <PackNumber
        {...fields}
        field="usableTolMm"
        label="Batch scatter, compression ±"
        kind="length"
        allowed="zeroOrMore"
      />
      <PackNumber
        {...fields}
        field="forceTol"
        label="Batch scatter, forces ±"
        kind="number"
        allowed="zeroOrMore"
        unitWords="%"
        hint="For information: figures and verdict take the forces as tested."
      />
      <Disclosure summary="Conditions of its test">
        {conditionNames.map((name) => (
          <PackText
            key={name}
            {...fields}
            field={`conditions.${name}`}
            label={conditionWords[name]}
          />
        ))}
        <p class="small soft">Told beside the stop. No figure is changed for them.</p>
      </Disclosure>
      {base && (
        <Disclosure summary="Similar stops of this library">
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
