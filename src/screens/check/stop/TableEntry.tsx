import { useEffect, useRef, useState } from "preact/hooks";
import { parseText } from "../../../records/entry.ts";
import type { EntryKind } from "../../../records/readingCatalogue.ts";
import { type Entry, setEntry } from "../../../records/storedCheck.ts";
import { Button } from "../../parts/Button.tsx";
import { Segmented } from "../../parts/Choices.tsx";
import { NumberCell } from "../keypad/NumberField.tsx";
import type { StepProps } from "../stepProps.ts";
import { pastedCells } from "./pastedTable.ts";

export interface Column {
  readonly name: string;
  readonly metric: string;
  readonly inches: string;
}

/** A table typed cell by cell; rows are added and taken out, and a pasted table fills as many as it has. */
export function TableEntry({
  id,
  kind,
  columns,
  startRows,
  wrongRow = -1,
  stored,
  change,
}: Pick<StepProps, "stored" | "change"> & {
  id: string;
  /** What the columns after the first hold; the first is a depth. */
  kind: EntryKind;
  columns: readonly Column[];
  startRows: number;
  /** A row that can be read but can't be so, counted from 0. */
  wrongRow?: number;
}) {
  const width = columns.length;
  const blank: Entry = { texts: Array(startRows * width).fill(""), unit: "mm", tol: "" };
  const entry = stored.entries[id] ?? blank;
  const rows = Math.max(1, Math.ceil(entry.texts.length / width));
  const table = useRef<HTMLTableElement>(null);
  const [added, setAdded] = useState(0);
  useEffect(() => {
    if (added === 0) return;
    const inputs = table.current?.querySelectorAll("input") ?? [];
    inputs[inputs.length - width]?.focus();
  }, [added, width]);

  const put = (update: (texts: readonly string[]) => readonly string[], unit = entry.unit) =>
    change((current) => {
      const old = current.entries[id] ?? blank;
      const full = [...old.texts];
      while (full.length % width !== 0 || full.length === 0) full.push("");
      return setEntry(current, id, { ...old, unit, texts: update(full) });
    });
  const setCell = (index: number, text: string) =>
    put((texts) => texts.map((old, at) => (at === index ? text : old)));
  const paste = (index: number, text: string): boolean => {
    const cells = pastedCells(text, width);
    if (!cells) return false;
    put((texts) => {
      const start = index - (index % width);
      const end = Math.min(texts.length, start + cells.length);
      return [...texts.slice(0, start), ...cells, ...texts.slice(end)];
    });
    return true;
  };
  const inches = entry.unit === "in";
  const isWrong = (text: string, column: number) =>
    text.trim() !== "" &&
    !parseText(text, column === 0 ? "length" : kind, entry.unit, "zeroOrMore").ok;

  return (
    <div class="stack-close">
      <Segmented
        legend="Units of this table"
        value={inches ? "in" : "mm"}
        onChange={(unit) => put((texts) => texts, unit)}
        options={[
          {
            value: "mm",
            name: columns
              .map(({ metric }) => metric)
              .filter(isFirst)
              .join(" and "),
          },
          {
            value: "in",
            name: columns
              .map(({ inches: unit }) => unit)
              .filter(isFirst)
              .join(" and "),
          },
        ]}
      />
      <table ref={table} class="entry-table">
        <thead>
          <tr>
            <th scope="col">
              <span class="unseen">Row</span>
            </th>
            {columns.map((column) => (
              <th key={column.name} scope="col">
                {column.name} <span class="soft">{inches ? column.inches : column.metric}</span>
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
                const text = entry.texts[index] ?? "";
                const wrong = row === wrongRow || isWrong(text, place);
                return (
                  <td key={column.name}>
                    <NumberCell
                      label={`Row ${row + 1}, ${column.name.toLowerCase()}`}
                      value={text}
                      wrong={wrong}
                      onInput={(typed) => setCell(index, typed)}
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
                  label={`Take out row ${row + 1}`}
                  onClick={() =>
                    put((texts) => [
                      ...texts.slice(0, row * width),
                      ...texts.slice((row + 1) * width),
                    ])
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
        onClick={() => {
          put((texts) => [...texts, ...Array<string>(width).fill("")]);
          setAdded((count) => count + 1);
        }}
      >
        Another row
      </Button>
    </div>
  );
}

function isFirst(value: string, index: number, all: readonly string[]): boolean {
  return all.indexOf(value) === index;
}
