/** Milliseconds a call takes: the least of several rounds, so that what else the machine does counts least. */
export function millisecondsPer(work: () => void, roundMs = 150, rounds = 5): number {
  work();
  let least = Number.POSITIVE_INFINITY;
  for (let round = 0; round < rounds; round++) {
    let calls = 0;
    const from = performance.now();
    let spent = 0;
    do {
      work();
      calls++;
      spent = performance.now() - from;
    } while (spent < roundMs);
    least = Math.min(least, spent / calls);
  }
  return least;
}

export type Row = readonly (string | number)[];

/** A plain table; numbers to three digits. */
export function printTable(title: string, header: readonly string[], rows: readonly Row[]): void {
  const text = [header, ...rows].map((row) =>
    row.map((cell) => (typeof cell === "number" ? threeDigits(cell) : cell)),
  );
  const widths = header.map((_, at) => Math.max(...text.map((row) => row[at]?.length ?? 0)));
  console.log(`\n${title}`);
  for (const row of text) {
    console.log(
      row
        .map((cell, at) =>
          at === 0 ? cell.padEnd(widths[at] ?? 0) : cell.padStart(widths[at] ?? 0),
        )
        .join("  "),
    );
  }
}

function threeDigits(value: number): string {
  if (value !== 0 && (Math.abs(value) < 1e-3 || Math.abs(value) >= 1e6)) {
    return value.toExponential(1);
  }
  return String(Number(value.toPrecision(3)));
}
