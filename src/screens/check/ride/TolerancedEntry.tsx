import type { ComponentChildren } from "preact";
import { useId } from "preact/hooks";
import type { StoredCheck } from "../../../records/check/storedCheck.ts";
import { type Entry, parseText } from "../../../records/entry/entry.ts";
import { entryUnit } from "../../../records/entry/readingCatalogue.ts";
import { type EntryUnit, mmPerInch } from "../../../records/entry/units.ts";
import { setEntry } from "../../../records/filling/changes.ts";
import type { HelperInput } from "../../../records/filling/helperInputs.ts";
import { sentenceText } from "../../../saying/sentenceText.ts";
import { unitText } from "../../../saying/unitText.ts";
import * as messages from "../../../words/compiled/screens/check/ride.ts";
import type { Change } from "../../guide/stepProps.ts";
import { Segmented } from "../../parts/Choices.tsx";
import type { Preferences } from "../../preferences.ts";
import { spokenEntry } from "../../voice/spokenEntry.ts";
import { NumberField } from "../keypad/NumberField.tsx";
import { useSettled } from "../settled.ts";

const unitPairs: { readonly [kind: string]: readonly [EntryUnit, EntryUnit] } = {
  length: ["mm", "in"],
  mass: ["kg", "lb"],
  rate: ["N/mm", "lbf/in"],
  damping: ["N·s/mm", "lbf·s/in"],
};

/** A value and its ± side by side. An empty ± is the one shown in grey. */
export function TolerancedEntry({
  input,
  stored,
  change,
  preferences,
  label,
  hint,
  unitWords,
  usual,
}: {
  input: HelperInput;
  stored: StoredCheck;
  change: Change;
  preferences: Preferences;
  label: ComponentChildren;
  hint?: ComponentChildren;
  unitWords?: string;
  /** Shown in the ± field while it is empty; a length in the unit that is typed. */
  usual: string | { readonly mm: number };
}) {
  const { id, kind } = input;
  const name = useId();
  const first: EntryUnit = entryUnit(kind, preferences.length);
  const blank: Entry = { texts: [""], unit: first, tol: "" };
  const entry = stored.entries[id] ?? blank;
  const text = entry.texts[0] ?? "";
  const settled = useSettled(`${id}|${text}|${entry.tol}|${entry.unit}`);
  const put = (part: Partial<Entry>) =>
    change((current) => setEntry(current, id, { ...(current.entries[id] ?? blank), ...part }));
  const valueFault =
    settled && text.trim() !== "" ? faultOf(text, entry.unit, input, "aboveZero") : null;
  const tolFault =
    settled && entry.tol.trim() !== "" ? faultOf(entry.tol, entry.unit, input, "zeroOrMore") : null;
  const pair = unitPairs[kind];
  const unit = unitWords ?? unitText(entry.unit);
  return (
    <fieldset class="field toleranced" aria-labelledby={name}>
      <legend id={name} class="field-label">
        {label}
      </legend>
      {hint && <span class="field-hint">{hint}</span>}
      <div class="toleranced-row">
        <NumberField
          label={messages.value}
          labelUnseen
          value={text}
          fractions={entry.unit === "in"}
          said={spokenEntry(text, kind, entry.unit)}
          onInput={(typed) => put({ texts: [typed] })}
          {...(unit && { unit })}
          {...(valueFault && { tone: "no" as const, message: valueFault })}
        />
        <NumberField
          label={messages.plusOrMinus}
          labelUnseen
          value={entry.tol}
          fractions={entry.unit === "in"}
          said={spokenEntry(entry.tol, kind, entry.unit)}
          placeholder={typeof usual === "string" ? usual : lengthOf(usual.mm, entry.unit)}
          lead="±"
          onInput={(tol) => put({ tol })}
          {...(tolFault && { tone: "no" as const, message: tolFault })}
        />
      </div>
      {pair && (
        <Segmented
          legend={messages.unit}
          legendUnseen
          value={entry.unit === pair[1] ? pair[1] : pair[0]}
          onChange={(chosen) => put({ unit: chosen })}
          options={pair.map((each) => ({ value: each, name: unitText(each) }))}
        />
      )}
    </fieldset>
  );
}

function lengthOf(mm: number, unit: EntryUnit): string {
  return unit === "in" ? `${Number((mm / mmPerInch).toPrecision(1))} in` : `${mm} mm`;
}

function faultOf(
  text: string,
  unit: EntryUnit,
  { kind }: HelperInput,
  allowed: "aboveZero" | "zeroOrMore",
): string | null {
  const parsed = parseText(text, kind, unit, allowed);
  return parsed.ok ? null : sentenceText(parsed.fault.sentence, "mm");
}
