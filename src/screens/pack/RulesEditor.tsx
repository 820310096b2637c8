import type { Use } from "../../physics/fitment.ts";
import { defaultRules } from "../../physics/road/index.ts";
import { catalogueEntry, type EntryKind, entryUnit } from "../../records/entry/readingCatalogue.ts";
import { fromModel, type LengthUnit } from "../../records/entry/units.ts";
import type { Pack } from "../../records/pack/pack.ts";
import { eventWords } from "../assessment/eventWords.ts";
import { uses } from "../check/UseChoice.tsx";
import { SelectField } from "../parts/Field.tsx";
import { type FieldProps, PackNumber, PackTable, PackText } from "./fields.tsx";
import { ItemScreen } from "./ItemScreen.tsx";
import { numberText, setText, textOf } from "./itemDraft.ts";
import { fieldLabel } from "./platformDraft.ts";
import {
  landingKinds,
  obstacleKinds,
  packOfRulesDraft,
  ruleNumbers,
  rulesDraft,
} from "./rulesDraft.ts";
import { useItemDraft } from "./useItemDraft.ts";

const lengths = { metric: "mm", inches: "in" } as const;
const obstacleColumns = [
  { name: "Height", ...lengths },
  { name: "Length", ...lengths },
  { name: "Speed", metric: "km/h", inches: "mph" },
];
const landingColumns = [{ name: "Landing from", ...lengths }];

/** What holds where the field is left empty, in the field's own unit. */
function usualNumber(value: number, kind: EntryKind, unit: LengthUnit): string {
  if (unit === "mm" || kind === "number") return numberText(value, kind, unit);
  return String(Number(fromModel(value, entryUnit(kind, unit)).toPrecision(2)));
}

const roads = ["A", "B", "C", "D", "E"] as const;
const unitWords: { readonly [name: string]: string } = {
  accelerationCapG: "g",
};

/** The pack's name and notes, and what the house demands of each use. */
export function RulesEditor({ pack, unit }: { pack: Pack; unit: LengthUnit }) {
  const { name, notes, edition, maker, spacersMm, rules } = pack;
  const base = JSON.stringify([name, notes, edition, maker, spacersMm, rules]);
  const editing = useItemDraft("rules", base, () => rulesDraft(pack, unit));
  const { draft, change } = editing;
  const keep = () => {
    const { pack: next, faults } = packOfRulesDraft(draft, pack);
    if (next === null) return editing.refuse(faults);
    return editing.keep(next, "Changed: name and requirements");
  };
  return (
    <ItemScreen heading="Name and requirements" editing={editing} onKeep={keep}>
      <section class="card">
        <PackText draft={draft} change={change} field="name" label="Name of the library" />
        <PackText
          draft={draft}
          change={change}
          field="edition"
          label="Edition"
          hint="Your own name of this state of the library. Every check keeps it."
        />
        <PackText
          draft={draft}
          change={change}
          field="spacers"
          label="Spacers that can be bought"
          hint="Apart by semicolons. Empty: 5 to 60 mm by 5, or 1/8 to 2 1/2 in by 1/8."
        />
        <PackText draft={draft} change={change} field="notes" label="Notes" maxLength={20_000} />
      </section>
      <section class="card" aria-labelledby="maker-heading">
        <h2 id="maker-heading">Maker</h2>
        <PackText draft={draft} change={change} field="maker.name" label="Name" />
        <PackText
          draft={draft}
          change={change}
          field="maker.code"
          label="Code on labels"
          hint="2 to 12 letters or digits. Tells your part numbers from others'."
        />
        <PackText
          draft={draft}
          change={change}
          field="maker.address"
          label="Postal address"
          maxLength={1000}
        />
        <PackText
          draft={draft}
          change={change}
          field="maker.contact"
          label="E-mail or phone"
          hint="Checks are sent there. Both: apart by a semicolon."
        />
      </section>
      <p class="small soft">
        What each use requires. A field left empty is as in Stopfit itself, shown in gray. All of it
        is common practice, none from a published source.
      </p>
      {uses.map(({ value, name }) => (
        <RulesOfUse key={value} use={value} heading={name} draft={draft} change={change} />
      ))}
    </ItemScreen>
  );
}

function RulesOfUse({ use, heading, draft, change }: FieldProps & { use: Use; heading: string }) {
  const usual = defaultRules[use];
  const events = usual.events.map((event) => eventWords(event, draft.unit)).join("; ");
  return (
    <section class="card" aria-labelledby={`rules-${use}`}>
      <h2 id={`rules-${use}`}>{heading}</h2>
      <SelectField
        label="Road class (ISO 8608)"
        value={textOf(draft, `${use}.roadClass`)}
        options={[
          { value: "", text: `As in Stopfit: ${usual.roadClass}` },
          ...roads.map((road) => ({ value: road, text: road })),
        ]}
        onChange={(road) => change((current) => setText(current, `${use}.roadClass`, road))}
      />
      {ruleNumbers.map((name) => {
        const { kind, allowed } = catalogueEntry(name);
        return (
          <PackNumber
            key={name}
            draft={draft}
            change={change}
            field={`${use}.${name}`}
            label={fieldLabel(name)}
            kind={kind}
            allowed={allowed}
            placeholder={usualNumber(usual[name], kind, draft.unit)}
            {...(unitWords[name] !== undefined && { unitWords: unitWords[name] })}
          />
        );
      })}
      <p class="small soft">Events, where none are given: {events}.</p>
      <PackTable
        draft={draft}
        change={change}
        field={`${use}.obstacles`}
        caption={`${heading}: obstacles`}
        columns={obstacleColumns}
        kinds={obstacleKinds}
      />
      <PackTable
        draft={draft}
        change={change}
        field={`${use}.landings`}
        caption={`${heading}: landings`}
        columns={landingColumns}
        kinds={landingKinds}
      />
    </section>
  );
}
