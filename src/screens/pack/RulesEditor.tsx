import { roadClasses } from "../../physics/choices.ts";
import type { Use } from "../../physics/fitment.ts";
import { ruleValueNames } from "../../physics/readings/index.ts";
import { defaultRules } from "../../physics/road/index.ts";
import { catalogueEntry, type EntryKind, entryUnit } from "../../records/entry/readingCatalogue.ts";
import { fromModel, type LengthUnit } from "../../records/entry/units.ts";
import type { Pack } from "../../records/pack/pack.ts";
import * as messages from "../../words/compiled/screens/pack.ts";
import { eventWords } from "../assessment/eventWords.ts";
import { uses } from "../check/UseChoice.tsx";
import { SelectField } from "../parts/Field.tsx";
import { type FieldProps, PackNumber, PackTable, PackText } from "./fields.tsx";
import { ItemScreen } from "./ItemScreen.tsx";
import { numberText, setText, textOf } from "./itemDraft.ts";
import { fieldLabel } from "./platformDraft.ts";
import { landingKinds, obstacleKinds, packOfRulesDraft, rulesDraft } from "./rulesDraft.ts";
import { useItemDraft } from "./useItemDraft.ts";

const lengths = { metric: "mm", inches: "in" } as const;
const obstacleColumns = [
  { name: messages.height, within: messages.heightWithin, ...lengths },
  { name: messages.lengthWord, within: messages.lengthWithin, ...lengths },
  { name: messages.speed, within: messages.speedWithin, metric: "km/h", inches: "mph" },
];
const landingColumns = [
  { name: messages.landingFrom, within: messages.landingFromWithin, ...lengths },
];

/** What holds where the field is left empty, in the field's own unit. */
function usualNumber(value: number, kind: EntryKind, unit: LengthUnit): string {
  if (unit === "mm" || kind === "number") return numberText(value, kind, unit);
  return String(Number(fromModel(value, entryUnit(kind, unit)).toPrecision(2)));
}

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
    return editing.keep(next, messages.changedNameAndRequirements);
  };
  return (
    <ItemScreen heading={messages.nameAndRequirements} editing={editing} onKeep={keep}>
      <section class="card">
        <PackText draft={draft} change={change} field="name" label={messages.nameOfLibrary} />
        <PackText
          draft={draft}
          change={change}
          field="edition"
          label={messages.edition}
          hint={messages.yourOwnNameOf}
        />
        <PackText
          draft={draft}
          change={change}
          field="spacers"
          label={messages.spacersThatCanBe}
          hint={messages.apartBySemicolonsEmpty5}
        />
        <PackText
          draft={draft}
          change={change}
          field="notes"
          label={messages.notes}
          maxLength={20_000}
        />
      </section>
      <section class="card" aria-labelledby="maker-heading">
        <h2 id="maker-heading">{messages.maker}</h2>
        <PackText draft={draft} change={change} field="maker.name" label={messages.nameWord} />
        <PackText
          draft={draft}
          change={change}
          field="maker.code"
          label={messages.codeOnLabels}
          hint={messages.n2To12Letters}
        />
        <PackText
          draft={draft}
          change={change}
          field="maker.address"
          label={messages.postalAddress}
          maxLength={1000}
        />
        <PackText
          draft={draft}
          change={change}
          field="maker.contact"
          label={messages.eMailOrPhone}
          hint={messages.checksAreSentThere}
        />
      </section>
      <p class="small soft">{messages.whatEachUseRequires}</p>
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
        label={messages.roadClassIso8608}
        value={textOf(draft, `${use}.roadClass`)}
        options={[
          { value: "", text: messages.asInStopfit({ roadClass: usual.roadClass }) },
          ...roadClasses.map((road) => ({ value: road, text: road })),
        ]}
        onChange={(road) => change((current) => setText(current, `${use}.roadClass`, road))}
      />
      {ruleValueNames.map((name) => {
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
      <p class="small soft">{messages.eventsWhereNoneAre({ events })}</p>
      <PackTable
        draft={draft}
        change={change}
        field={`${use}.obstacles`}
        caption={{
          name: messages.obstacles({ heading }),
          within: messages.obstaclesWithin({ use }),
        }}
        columns={obstacleColumns}
        kinds={obstacleKinds}
      />
      <PackTable
        draft={draft}
        change={change}
        field={`${use}.landings`}
        caption={{ name: messages.landings({ heading }), within: messages.landingsWithin({ use }) }}
        columns={landingColumns}
        kinds={landingKinds}
      />
    </section>
  );
}
