import type { ComponentChildren } from "preact";

export interface Column {
  readonly name: string;
  /** Left or right in words under the name, where a column is one of a pair. */
  readonly note?: string;
}

/** The numbers behind a drawing. The first cell of a row names it. */
export function DataTable({
  caption,
  columns,
  rows,
}: {
  caption: string;
  columns: readonly Column[];
  rows: readonly (readonly ComponentChildren[])[];
}) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than the phone is scrolled by keys too
    <section class="table-holder" tabIndex={0} aria-label={caption}>
      <table class="data-table">
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
    </section>
  );
}
