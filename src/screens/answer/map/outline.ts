/** Edges, as an SVG path, around the cells of a grid for which `inside` holds. Cells by column and row. */
export function outline(
  columns: number,
  rows: number,
  inside: (column: number, row: number) => boolean,
  corner: (column: number, row: number) => readonly [number, number],
): string {
  const within = (column: number, row: number) =>
    column >= 0 && row >= 0 && column < columns && row < rows && inside(column, row);
  let path = "";
  const edge = (from: readonly [number, number], to: readonly [number, number]) => {
    path += `M${from[0]} ${from[1]}L${to[0]} ${to[1]}`;
  };
  for (let column = 0; column < columns; column++) {
    for (let row = 0; row < rows; row++) {
      if (!within(column, row)) continue;
      if (!within(column - 1, row)) edge(corner(column, row), corner(column, row + 1));
      if (!within(column + 1, row)) edge(corner(column + 1, row), corner(column + 1, row + 1));
      if (!within(column, row - 1)) edge(corner(column, row), corner(column + 1, row));
      if (!within(column, row + 1)) edge(corner(column, row + 1), corner(column + 1, row + 1));
    }
  }
  return path;
}
