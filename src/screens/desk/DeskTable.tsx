import type { ComponentChildren } from "preact";
import { useEffect, useState } from "preact/hooks";
import * as messages from "../../words/compiled/screens/desk.ts";
import "./deskTable.css";

export interface DeskColumn {
  readonly name: string;
  /** What stands over it, where that is more than its name. */
  readonly heading?: ComponentChildren;
}

export interface DeskTableRow {
  readonly key: string;
  /** The first one names the row; null or false: nothing to say there. */
  readonly cells: readonly ComponentChildren[];
}

/** Below this width so many columns have no room, px; null: they always have. */
function leastWidth(columns: number): number | null {
  if (columns <= 3) return null;
  return columns <= 7 ? 760 : 1100;
}

/** Whether the window is narrower; on paper there is always room. */
function useNarrower(width: number | null): boolean {
  const query = width === null ? messages.notAll : `screen and (max-width: ${width - 0.1}px)`;
  const [is, setIs] = useState(() => matchMedia(query).matches);
  useEffect(() => {
    const list = matchMedia(query);
    const look = () => setIs(list.matches);
    look();
    list.addEventListener("change", look);
    return () => list.removeEventListener("change", look);
  }, [query]);
  return is;
}

/** A table of the desk. Where its columns have no room beside each other, each row is a list of them. */
export function DeskTable({
  caption,
  columns,
  rows,
}: {
  /** Read out before it. */
  caption: string;
  columns: readonly (DeskColumn | string)[];
  rows: readonly DeskTableRow[];
}) {
  const named = columns.map((each) => (typeof each === "string" ? { name: each } : each));
  const least = leastWidth(columns.length);
  const stacked = useNarrower(least);
  const looks = least === null ? "desk-table-narrow" : stacked ? "desk-table-stacked" : "";
  return (
    <table class={`desk-table ${looks}`}>
      <caption class="unseen">{caption}</caption>
      <thead>
        <tr>
          {named.map(({ name, heading }) => (
            <th key={name} scope="col">
              {heading ?? name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(({ key, cells: [first, ...rest] }) => (
          <tr key={key}>
            <th scope="row">{first}</th>
            {rest.map((cell, place) =>
              cell === null || cell === false ? (
                <td key={place} class="desk-table-none" />
              ) : (
                <td key={place} data-column={named[place + 1]?.name}>
                  <span>{cell}</span>
                </td>
              ),
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
