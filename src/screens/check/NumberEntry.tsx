import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { definitionOf, isReadingId } from "../../physics/readings/index.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import { type Entry, parseText } from "../../records/entry/entry.ts";
import { entryOutcome } from "../../records/entry/entryPath.ts";
import type { AllowedSign } from "../../records/entry/lengthEntry.ts";
import { type EntryKind, entryUnit } from "../../records/entry/readingCatalogue.ts";
import type { EntryUnit } from "../../records/entry/units.ts";
import { setEntry } from "../../records/filling/changes.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import { unitText } from "../../saying/unitText.ts";
import * as messages from "../../words/compiled/screens/check.ts";
import type { Change } from "../guide/stepProps.ts";
import { Segmented } from "../parts/Choices.tsx";
import type { Tone } from "../parts/Notice.tsx";
import type { Preferences } from "../preferences.ts";
import { spokenEntry } from "../voice/spokenEntry.ts";
import { NumberField } from "./keypad/NumberField.tsx";
import { valueRemark } from "./remarks.ts";
import { useSettled } from "./settled.ts";

export interface NumberEntryProps {
  readonly id: string;
  readonly stored: StoredCheck;
  readonly change: Change;
  readonly preferences: Preferences;
  readonly label: string;
  readonly hint?: ComponentChildren;
  /** What is measured, where the catalogue does not know the id: a number that only helps to find another. */
  readonly kind?: EntryKind;
  /** Shown behind the field where the number has no unit of its own. */
  readonly unitWords?: string;
  readonly big?: boolean;
  /** Appears by a choice and is filled in next: entered as it appears. */
  readonly enteredAtOnce?: boolean;
  readonly placeholder?: string;
  /** The values that can be at all, where the catalogue does not know the id. */
  readonly allowed?: AllowedSign;
  readonly unitChoice?: boolean;
  readonly onEnter?: () => void;
  /** Called beside the entry's own change, with the check as it then is. */
  readonly after?: (stored: StoredCheck) => StoredCheck;
}

const unitPairs: { readonly [Kind in EntryKind]?: readonly [EntryUnit, EntryUnit] } = {
  length: ["mm", "in"],
  mass: ["kg", "lb"],
  rate: ["N/mm", "lbf/in"],
  damping: ["N·s/mm", "lbf·s/in"],
  force: ["N", "lbf"],
};

function messageOf(
  id: string,
  entry: Entry,
  kind: EntryKind,
  unit: Preferences["length"],
  allowed: AllowedSign,
): { tone: Tone; message: string } | null {
  if ((entry.texts[0] ?? "").trim() === "") return null;
  const known = isReadingId(id);
  const outcome = known
    ? entryOutcome(id, entry)
    : parseText(entry.texts[0] ?? "", kind, entry.unit, allowed);
  if (!outcome.ok) return { tone: "no", message: sentenceText(outcome.fault.sentence, unit) };
  if (!known || typeof outcome.value !== "number") return null;
  const remark = valueRemark(id, outcome.value, entry.unit);
  return remark ? { tone: remark.tone, message: sentenceText(remark.sentence, unit) } : null;
}

/** One plain number, kept as typed even where it can't be read. */
export function NumberEntry({
  id,
  stored,
  change,
  preferences,
  label,
  hint,
  kind = definitionOf(id)?.kind ?? "number",
  unitWords,
  big = false,
  enteredAtOnce = false,
  placeholder,
  allowed = "any",
  unitChoice = false,
  onEnter,
  after = (changed) => changed,
}: NumberEntryProps) {
  const usual: EntryUnit = entryUnit(kind, preferences.length);
  const entry: Entry = stored.entries[id] ?? { texts: [""], unit: usual, tol: "" };
  const settled = useSettled(`${id}|${entry.texts[0]}|${entry.unit}`);
  const input = useRef<HTMLInputElement>(null);
  useEffect(() => {
    if (enteredAtOnce && input.current?.value === "") input.current.focus({ preventScroll: true });
  }, [enteredAtOnce]);
  const said = settled ? messageOf(id, entry, kind, preferences.length, allowed) : null;
  const pair = unitPairs[kind];
  const put = (update: (old: Entry) => Entry) =>
    change((current) =>
      after(
        setEntry(current, id, update(current.entries[id] ?? { texts: [""], unit: usual, tol: "" })),
      ),
    );
  const shownUnit = unitWords ?? unitText(entry.unit);
  return (
    <div class="stack-close" data-entry>
      <NumberField
        label={label}
        {...(hint !== undefined && { hint })}
        big={big}
        inputRef={input}
        first={enteredAtOnce && (entry.texts[0] ?? "") === ""}
        {...(placeholder !== undefined && { placeholder })}
        value={entry.texts[0] ?? ""}
        onInput={(text) => put((old) => ({ ...old, texts: [text] }))}
        fractions={entry.unit === "in"}
        sign={kind === "angle" || (isReadingId(id) && definitionOf(id)?.allowed === "any")}
        said={spokenEntry(entry.texts[0] ?? "", kind, entry.unit)}
        {...(shownUnit && { unit: shownUnit })}
        {...(onEnter && { onEnter })}
        {...said}
      />
      {unitChoice && pair && (
        <Segmented
          legend={messages.unit}
          legendUnseen
          value={entry.unit === pair[1] ? pair[1] : pair[0]}
          onChange={(unit) => put((old) => ({ ...old, unit }))}
          options={pair.map((unit) => ({ value: unit, name: unitText(unit) }))}
        />
      )}
    </div>
  );
}
