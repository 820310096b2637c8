import type { ComponentChildren } from "preact";
import type { AllowedSign } from "../../records/lengthEntry.ts";
import { sentenceText } from "../../records/quantityText.ts";
import { type EntryKind, entryUnit } from "../../records/readingCatalogue.ts";
import { pastedCells } from "../check/stop/pastedTable.ts";
import { Button } from "../parts/Button.tsx";
import { TextField } from "../parts/Field.tsx";
import { type ItemDraft, readDraftNumber, setTable, setText, textOf } from "./itemDraft.ts";

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
  const unit = entryUnit(kind, draft.unit);
  return unit === "deg" ? "°" : unit;
}

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
}) {
  const text = textOf(draft, field);
  const fault = faultIn(text, kind, draft, allowed);
  const unit = unitWords ?? unitOf(kind, draft);
  return (
    <TextField
      label={label}
      labelUnseen={labelUnseen}
      {...(hint !== undefined && { hint })}
      value={text}
      keys={kind === "length" && draft.unit === "in" ? "text" : "decimal"}
      {...(unit !== "" && { unit })}
      {...(lead !== undefined && { lead })}
      {...(placeholder !== undefined && { placeholder })}
      onInput={(typed) => change((current) => setText(current, field, typed))}
      {...(fault !== null && { tone: "no" as const, message: fault })}
    />
  );
}

/** A value and its ± side by side. */
export function PackReading({
  field,
  label,
  optional = false,
  ...rest
}: FieldProps & {
  field: string;
  label: string;
  optional?: boolean;
  kind: EntryKind;
  allowed?: AllowedSign;
}) {
  return (
    <div class="pack-reading">
      <PackNumber
        {...rest}
        field={field}
        label={
          <>
            {label} {optional && <span class="soft">(may be left out)</span>}
          </>
        }
      />
      <PackNumber
        {...rest}
        allowed="zeroOrMore"
        field={`${field}.tol`}
        label={`± of ${label.toLowerCase()}`}
        labelUnseen
        lead="±"
        placeholder="0"
      />
    </div>
  );
}

/** A table typed cell by cell; a pasted table fills as many rows as it has. */
export function PackTable({
  draft,
  change,
  field,
  caption,
  columns,
}: FieldProps & { field: string; caption: string; columns: readonly string[] }) {
  const width = columns.length;
  const given = draft.tables[field] ?? [];
  const cells = given.length === 0 ? Array<string>(width).fill("") : given;
  const rows = Math.ceil(cells.length / width);
  const put = (update: (cells: readonly string[]) => readonly string[]) =>
    change((current) => {
      const old = current.tables[field] ?? [];
      return setTable(current, field, update(old.length === 0 ? cells : old));
    });
  const paste = (index: number, text: string): boolean => {
    const pasted = pastedCells(text, width);
    if (pasted === null) return false;
    const start = index - (index % width);
    put((old) => [...old.slice(0, start), ...pasted, ...old.slice(start + pasted.length)]);
    return true;
  };
  return (
    <div class="stack-close">
      <table class="entry-table">
        <caption class="unseen">{caption}</caption>
        <thead>
          <tr>
            <th scope="col">
              <span class="unseen">Row</span>
            </th>
            {columns.map((column) => (
              <th key={column} scope="col">
                {column}
              </th>
            ))}
            <td />
          </tr>
        </thead>
        <tbody>
          {Array.from({ length: rows }, (_, row) => (
            <tr key={row}>
              <th scope="row">{row + 1}</th>
              {columns.map((column, place) => {
                const index = row * width + place;
                const text = cells[index] ?? "";
                const wrong = text.trim() !== "" && faultIn(text, "number", draft, "zeroOrMore");
                return (
                  <td key={column}>
                    <input
                      type="text"
                      inputMode="decimal"
                      autocomplete="off"
                      value={text}
                      aria-label={`${caption}, row ${row + 1}, ${column}`}
                      aria-invalid={wrong ? true : undefined}
                      onInput={(event) => {
                        const { value } = event.currentTarget;
                        put((old) => old.map((each, at) => (at === index ? value : each)));
                      }}
                      onPaste={(event) => {
                        const pasted = event.clipboardData?.getData("text") ?? "";
                        if (paste(index, pasted)) event.preventDefault();
                      }}
                    />
                  </td>
                );
              })}
              <td>
                <Button
                  look="quiet"
                  icon="cross"
                  label={`${caption}: take out row ${row + 1}`}
                  onClick={() =>
                    put((old) => [...old.slice(0, row * width), ...old.slice((row + 1) * width)])
                  }
                />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <Button
        wide
        icon="plus"
        onClick={() => put((old) => [...old, ...Array<string>(width).fill("")])}
      >
        Another row
      </Button>
    </div>
  );
}
