/**
 * Solves equations f(x) = 0 in as many unknowns by Newton's method with a numerical Jacobian: nothing of the
 * formulas under test is in it. NaN where it does not settle.
 */
function solved(
  equations: (unknowns: readonly number[]) => readonly number[],
  start: readonly number[],
): number[] {
  let x = [...start];
  for (let round = 0; round < 60; round++) {
    const f = equations(x);
    const columns = x.map((_, index) => {
      const step = 1e-6;
      const shifted = (by: number) => equations(x.map((at, i) => (i === index ? at + by : at)));
      const above = shifted(step);
      const below = shifted(-step);
      return above.map((value, row) => (value - (below[row] ?? 0)) / (2 * step));
    });
    const change = eliminated(columns, f);
    x = x.map((at, index) => at - (change[index] ?? Number.NaN));
    if (Math.max(...change.map(Math.abs)) < 1e-13) return x;
  }
  const left = Math.max(...equations(x).map(Math.abs));
  return left < 1e-9 ? x : x.map(() => Number.NaN);
}

/** Solves J·x = f by Gaussian elimination with pivoting; J by columns. */
function eliminated(columns: readonly (readonly number[])[], f: readonly number[]): number[] {
  const size = f.length;
  const rows = f.map((value, row) => [...columns.map((column) => column[row] ?? 0), value]);
  const at = (row: number, column: number) => rows[row]?.[column] ?? 0;
  for (let column = 0; column < size; column++) {
    let pivot = column;
    for (let row = column + 1; row < size; row++) {
      if (Math.abs(at(row, column)) > Math.abs(at(pivot, column))) pivot = row;
    }
    const [moved] = rows.splice(pivot, 1);
    rows.splice(column, 0, moved ?? []);
    for (let row = 0; row < size; row++) {
      if (row === column) continue;
      const share = at(row, column) / at(column, column);
      rows[row] = (rows[row] ?? []).map((value, index) => value - share * at(column, index));
    }
  }
  return rows.map((row, index) => (row[size] ?? 0) / (row[index] ?? 0));
}

/** Follows a solution from ride as something is driven from 0 to its end in steps; one result an end. */
export function followed(
  equationsAt: (drive: number) => (unknowns: readonly number[]) => readonly number[],
  start: readonly number[],
  end: number,
  steps = 20,
): number[] {
  let x = [...start];
  for (let step = 1; step <= steps; step++) x = solved(equationsAt((end * step) / steps), x);
  return x;
}

export type Point = readonly [number, number];

export const plus = (a: Point, b: Point): Point => [a[0] + b[0], a[1] + b[1]];
export const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1]];
export const dot = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1];
export const turned = (point: Point, angle: number): Point => [
  point[0] * Math.cos(angle) - point[1] * Math.sin(angle),
  point[1] * Math.cos(angle) + point[0] * Math.sin(angle),
];
export const radians = (degrees: number): number => (degrees * Math.PI) / 180;
/** From a pivot outward, by a length and an angle below the horizontal in degrees. */
export const armTo = (length: number, below: number): Point => [
  length * Math.cos(radians(below)),
  -length * Math.sin(radians(below)),
];
