import type { ComponentChildren } from "preact";
import type { QuantityKind } from "../../physics/sentence.ts";
import type { AllowedSign } from "../../records/entry/lengthEntry.ts";
import { type EntryKind, entryUnit } from "../../records/entry/readingCatalogue.ts";
import { quantityText } from "../../saying/quantityText.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import { unitText } from "../../saying/unitText.ts";
import * as messages from "../../words/compiled/screens/pack.ts";
import { type Caption, CellTable, type Column } from "../check/stop/CellTable.tsx";
import { TextField } from "../parts/Field.tsx";
import {
  type FieldName,
  type ItemDraft,
  readDraftNumber,
  setTable,
  setText,
  tableUnit,
  tableUnitField,
  textOf,
} from "./itemDraft.ts";

export interface FieldProps {
  readonly draft: ItemDraft;
  readonly change: (update: (draft: ItemDraft) => ItemDraft) => void;
}

function faultIn(
  text: string,
  kind: EntryKind,
  { unit }: ItemDraft,
  allowed: AllowedSign,
): string | null {
  for (const part of text.split(";")) {
    if (part.trim() === "") continue;
    const read = readDraftNumber(part, kind, unit, allowed);
    if (!read.ok) return sentenceText(read.fault.sentence, unit);
  }
  return null;
}

function unitOf(kind: EntryKind, draft: ItemDraft): string {
  return unitText(entryUnit(kind, draft.unit));
}

/** "130 mm" says itself what it is in. */
function namesUnit(text: string): boolean {
  return /[a-z°′″'"]/i.test(text);
}

/** The same in the person's unit, where it was typed in another; null where there is nothing to add. */
function inOwnUnit(text: string, kind: EntryKind, { unit }: ItemDraft): string | null {
  if (!namesUnit(text)) return null;
  const shown = shownKinds[kind];
  const texts = text.split(";").flatMap((part) => {
    const read = shown && part.trim() !== "" ? readDraftNumber(part, kind, unit, "any") : null;
    return read?.ok && shown ? [quantityText({ kind: shown, value: read.value }, unit)] : [];
  });
  return texts.length === 0 ? null : `= ${texts.join("; ")}`;
}

const shownKinds: { readonly [Kind in EntryKind]?: QuantityKind } = {
  length: "length",
  mass: "mass",
  rate: "rate",
  force: "force",
};

export function PackText({
  draft,
  change,
  field,
  label,
  hint,
  maxLength = 200,
}: FieldProps & { field: string; label: string; hint?: string; maxLength?: number }) {
  return (
    <TextField
      label={label}
      {...(hint !== undefined && { hint })}
      value={textOf(draft, field)}
      maxLength={maxLength}
      capitals
      onInput={(text) => change((current) => setText(current, field, text))}
    />
  );
}

/** One number, kept as typed; what can't be read is told at once and refused when the whole is kept. */
export function PackNumber({
  draft,
  change,
  field,
  label,
  labelUnseen = false,
  hint,
  kind,
  allowed = "aboveZero",
  unitWords,
  lead,
  placeholder,
  equalBelow = true,
}: FieldProps & {
  field: string;
  label: ComponentChildren;
  labelUnseen?: boolean;
  hint?: string;
  kind: EntryKind;
  allowed?: AllowedSign;
  unitWords?: string;
  lead?: string;
  placeholder?: string;
  /** What is typed in another unit is told in the person's below it. */
  equalBelow?: boolean;
}) {
  const text = textOf(draft, field);
  const fault = faultIn(text, kind, draft, allowed);
  const unit = unitWords ?? unitOf(kind, draft);
  const own = namesUnit(text);
  const same = equalBelow && fault === null ? inOwnUnit(text, kind, draft) : null;
  return (
    <TextField
      label={label}
      labelUnseen={labelUnseen}
      {...(hint !== undefined && { hint })}
      value={text}
      keys={kind === "length" && draft.unit === "in" ? "text" : "decimal"}
      {...(unit !== "" && !own && { unit })}
      {...(lead !== undefined && { lead })}
      {...(placeholder !== undefined && { placeholder })}
      onInput={(typed) => change((current) => setText(current, field, typed))}
      {...(fault !== null && { tone: "no" as const, message: fault })}
      {...(same !== null && { message: same })}
    />
  );
}

/** A value and its ± side by side. */
export function PackReading({
  field,
  name: { label, within },
  optional = false,
  ...rest
}: FieldProps & {
  field: string;
  name: FieldName;
  optional?: boolean;
  kind: EntryKind;
  allowed?: AllowedSign;
}) {
  const same = inOwnUnit(textOf(rest.draft, field), rest.kind, rest.draft);
  return (
    <div class="pack-reading">
      <PackNumber
        {...rest}
        equalBelow={false}
        field={field}
        label={
          <>
            {label} {optional && <span class="soft">{messages.mayBeLeftOut}</span>}
          </>
        }
      />
      <PackNumber
        {...rest}
        allowed="zeroOrMore"
        field={`${field}.tol`}
        label={messages.ofWord3({ label: within })}
        labelUnseen
        equalBelow={false}
        lead="±"
        placeholder="0"
      />
      {same && <span class="small tone-info">{same}</span>}
    </div>
  );
}

/** A table typed cell by cell; where its columns are of `kinds`, in either set of units. */
export function PackTable({
  draft,
  change,
  field,
  caption,
  columns,
  kinds,
}: FieldProps & {
  field: string;
  caption: Caption;
  columns: readonly Column[];
  kinds?: readonly EntryKind[];
}) {
  const width = columns.length;
  const whole = (cells: readonly string[]) =>
    cells.length === 0 ? Array<string>(width).fill("") : cells;
  const unit = tableUnit(draft, field);
  return (
    <CellTable
      caption={caption}
      columns={columns}
      cells={whole(draft.tables[field] ?? [])}
      inches={unit === "in"}
      isWrong={(text, column) =>
        text.trim() !== "" &&
        !readDraftNumber(text, kinds?.[column] ?? "number", unit, "zeroOrMore").ok
      }
      onCells={(update) =>
        change((current) => setTable(current, field, update(whole(current.tables[field] ?? []))))
      }
      {...(kinds && {
        onInches: (inches: boolean) =>
          change((current) => setText(current, tableUnitField(field), inches ? "in" : "mm")),
      })}
    />
  );
}
