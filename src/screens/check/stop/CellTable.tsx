import { useEffect, useRef, useState } from "preact/hooks";
import * as messages from "../../../words/compiled/screens/check/stop.ts";
import { Button } from "../../parts/Button.tsx";
import { Segmented } from "../../parts/Choices.tsx";
import { NumberCell } from "../keypad/NumberField.tsx";
import { pastedCells } from "./pastedTable.ts";

/** A column of numbers; a unit that is the same both ways is no unit of length or force. */
export interface Column {
  readonly name: string;
  /** Its name within a sentence. */
  readonly within: string;
  readonly metric: string;
  readonly inches: string;
}

/** What a table is called, alone and within a sentence. */
export interface Caption {
  readonly name: string;
  readonly within: string;
}

type Cells = readonly string[];

/**
 * Numbers typed cell by cell, row after row; rows are added and taken out, and a pasted table fills as
 * many as it has. Choosing other units changes what the numbers mean, not the numbers.
 */
export function CellTable({
  caption,
  columns,
  cells,
  inches,
  isWrong,
  onCells,
  onInches,
}: {
  /** Before the name of each cell, where a screen has more than one table. */
  caption?: Caption;
  columns: readonly Column[];
  /** Whole rows. */
  cells: Cells;
  inches: boolean;
  isWrong: (text: string, column: number, row: number) => boolean;
  onCells: (update: (cells: Cells) => Cells) => void;
  /** Absent where the table has one set of units only. */
  onInches?: (inches: boolean) => void;
}) {
  const width = columns.length;
  const rows = Math.ceil(cells.length / width);
  const table = useRef<HTMLTableElement>(null);
  const [added, setAdded] = useState(0);
  useEffect(() => {
    if (added === 0) return;
    const inputs = table.current?.querySelectorAll("input") ?? [];
    inputs[inputs.length - width]?.focus();
  }, [added, width]);

  const paste = (index: number, text: string): boolean => {
    const pasted = pastedCells(text, width);
    if (!pasted) return false;
    const start = index - (index % width);
    onCells((old) => [...old.slice(0, start), ...pasted, ...old.slice(start + pasted.length)]);
    return true;
  };
  const captioned = { hasCaption: caption !== undefined, caption: caption?.name };
  const unitsOf = (of: (column: Column) => string) =>
    [...new Set(columns.map(of).filter((unit) => unit !== ""))].join(messages.and);

  return (
    <div class="stack-close">
      {onInches && (
        <Segmented
          legend={
            caption ? messages.unitsOfTable({ caption: caption.within }) : messages.unitsOfThisTable
          }
          value={inches ? "in" : "mm"}
          onChange={(unit) => onInches(unit === "in")}
          options={[
            { value: "mm", name: unitsOf(({ metric }) => metric) },
            { value: "in", name: unitsOf(({ inches: unit }) => unit) },
          ]}
        />
      )}
      <table ref={table} class="entry-table">
        {caption && <caption class="unseen">{caption.name}</caption>}
        <thead>
          <tr>
            <th scope="col">
              <span class="unseen">{messages.row}</span>
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
                const text = cells[index] ?? "";
                return (
                  <td key={column.name}>
                    <NumberCell
                      label={messages.row2({
                        ...captioned,
                        row: row + 1,
                        column: column.within,
                      })}
                      value={text}
                      wrong={isWrong(text, place, row)}
                      onInput={(typed) =>
                        onCells((old) => old.map((each, at) => (at === index ? typed : each)))
                      }
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
                  label={messages.removeRow({ ...captioned, row: row + 1 })}
                  onClick={() =>
                    onCells((old) => [
                      ...old.slice(0, row * width),
                      ...old.slice((row + 1) * width),
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
        {...(caption && { label: messages.addRowTo({ caption: caption.name }) })}
        onClick={() => {
          onCells((old) => [...old, ...Array<string>(width).fill("")]);
          setAdded((count) => count + 1);
        }}
      >
        {messages.addRow}
      </Button>
    </div>
  );
}
