/** No more rows than a record may hold. */
const mostRows = 1000;

/**
 * The cells of a table pasted from a sheet or a file, row after row, lines of words left out. Null where
 * it is not a table of this width: then it is pasted as text.
 */
export function pastedCells(text: string, width: number): string[] | null {
  const lines = text.split(/\r?\n/).filter((line) => line.trim() !== "");
  const separator = lines.some((line) => line.includes("\t"))
    ? /\t/
    : lines.some((line) => line.includes(";"))
      ? /;/
      : lines.every((line) => (line.match(/,/g)?.length ?? 0) === width - 1)
        ? /,/
        : /\s+/;
  const rows = lines
    .slice(0, mostRows)
    .map((line) =>
      line
        .trim()
        .split(separator)
        .map((cell) => cell.trim()),
    )
    .filter((cells) => cells.some((cell) => /\d/.test(cell)));
  if (rows.length === 0 || (rows.length === 1 && (rows[0]?.length ?? 0) < 2)) return null;
  if (rows.some((cells) => cells.length < width)) return null;
  return rows.flatMap((cells) => cells.slice(0, width));
}
