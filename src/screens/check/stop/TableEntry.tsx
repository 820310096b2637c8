import { type Entry, parseText } from "../../../records/entry/entry.ts";
import type { EntryKind } from "../../../records/entry/readingCatalogue.ts";
import { setEntry } from "../../../records/filling/changes.ts";
import type { StepProps } from "../../guide/stepProps.ts";
import { type Caption, CellTable, type Column } from "./CellTable.tsx";

/** A table of the check, kept as it was typed. */
export function TableEntry({
  id,
  kind,
  columns,
  caption,
  startRows,
  wrongRow = -1,
  stored,
  change,
  preferences,
}: Pick<StepProps, "stored" | "change" | "preferences"> & {
  id: string;
  /** What the columns after the first hold; the first is a depth. */
  kind: EntryKind;
  columns: readonly Column[];
  /** Before the name of each cell, where the screen has more than one table. */
  caption?: Caption;
  startRows: number;
  /** A row that can be read but can't be so, counted from 0. */
  wrongRow?: number;
}) {
  const width = columns.length;
  const blank: Entry = {
    texts: Array(startRows * width).fill(""),
    unit: preferences.length,
    tol: "",
  };
  const entry = stored.entries[id] ?? blank;
  const whole = (texts: readonly string[]) => {
    const missing = texts.length === 0 ? width : (width - (texts.length % width)) % width;
    return [...texts, ...Array<string>(missing).fill("")];
  };
  const put = (update: (texts: readonly string[]) => readonly string[], unit?: "mm" | "in") =>
    change((current) => {
      const old = current.entries[id] ?? blank;
      return setEntry(current, id, {
        ...old,
        ...(unit && { unit }),
        texts: update(whole(old.texts)),
      });
    });
  return (
    <CellTable
      {...(caption !== undefined && { caption })}
      columns={columns}
      cells={whole(entry.texts)}
      inches={entry.unit === "in"}
      isWrong={(text, column, row) =>
        row === wrongRow ||
        (text.trim() !== "" &&
          !parseText(text, column === 0 ? "length" : kind, entry.unit, "zeroOrMore").ok)
      }
      onCells={put}
      onInches={(inches) => put((texts) => texts, inches ? "in" : "mm")}
    />
  );
}
