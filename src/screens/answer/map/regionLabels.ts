import type { MapCell } from "../../../physics/stiffness/index.ts";
import { foremost, type Place } from "./cellWords.ts";

export type Region = "works" | NonNullable<ReturnType<typeof foremost>>;

/** Where a region of the map is named: in the middle of its longest row of cells. */
export interface RegionLabel {
  readonly region: Region;
  readonly row: number;
  /** First column of that row's cells, and how many they are. */
  readonly column: number;
  readonly columns: number;
}

/**
 * One place for the name of each region that has a row of at least `columnsFor` cells; of equally long
 * rows the one nearest to the middle of them, but that of the stop's own mark where there is another.
 */
export function regionLabels(
  columns: number,
  rows: number,
  cellAt: (place: Place) => MapCell | undefined,
  columnsFor: (region: Region) => number,
  own: Place,
): readonly RegionLabel[] {
  const runs = new Map<Region, RegionLabel[]>();
  for (let row = 0; row < rows; row++) {
    let start = 0;
    for (let column = 1; column <= columns; column++) {
      const region = regionAt(cellAt, { column: start, row });
      const goesOn = column < columns && regionAt(cellAt, { column, row }) === region;
      if (goesOn) continue;
      if (region !== null) {
        const run = { region, row, column: start, columns: column - start };
        runs.set(region, [...(runs.get(region) ?? []), run]);
      }
      start = column;
    }
  }
  return [...runs].flatMap(([region, found]) => {
    const longest = Math.max(...found.map((run) => run.columns));
    const longestRuns = found.filter((run) => run.columns === longest);
    const unmarked = longestRuns.filter(({ row }) => row !== own.row);
    const best = unmarked.length > 0 ? unmarked : longestRuns;
    const middle = best[Math.floor((best.length - 1) / 2)];
    return middle && longest >= columnsFor(region) ? [middle] : [];
  });
}

function regionAt(cellAt: (place: Place) => MapCell | undefined, place: Place): Region | null {
  const cell = cellAt(place);
  return cell === undefined ? null : (foremost(cell.failures) ?? "works");
}
