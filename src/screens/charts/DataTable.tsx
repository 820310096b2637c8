import type { ComponentChildren } from "preact";

interface Column {
  readonly name: string;
  /** Left or right in words under the name, where a column is one of a pair. */
  readonly note?: string;
}

interface TableOf {
  readonly caption: string;
  readonly columns: readonly Column[];
  /** The first cell of a row names it. */
  readonly rows: readonly (readonly ComponentChildren[])[];
}

/** The numbers behind a drawing. */
export function DataTable(table: TableOf) {
  return <ScrolledTable look="data-table" box="table-holder" {...table} />;
}

/** A table in a box of this class. */
export function ScrolledTable({
  box,
  ...table
}: TableOf & { box: string; look: "data-table" | "report-table" }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than the phone is scrolled by keys too
    <section class={box} tabIndex={0} aria-label={table.caption}>
      <CaptionedTable {...table} />
    </section>
  );
}

/** A table under its caption; `look` is its class. */
export function CaptionedTable({
  caption,
  columns,
  rows,
  look,
}: TableOf & { look: "data-table" | "report-table" }) {
  return (
    <table class={look}>
      <caption>{caption}</caption>
      <thead>
        <tr>
          {columns.map(({ name, note }) => (
            <th key={`${name} ${note ?? ""}`} scope="col">
              {name}
              {note && <small> {note}</small>}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(([head, ...cells], row) => (
          <tr key={row}>
            <th scope="row">{head}</th>
            {cells.map((cell, column) => (
              <td key={column}>{cell}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
