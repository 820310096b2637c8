/** Processor time of this process so far, ms: what else the machine does is not in it. */
export function processorMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/**
 * Milliseconds of processor time that a call takes: the least of many short rounds within a time to
 * spend, so that collecting garbage and warming up count least.
 */
export function millisecondsPer(work: () => void, spendMs: number, roundMs = 4): number {
  const end = processorMs() + spendMs;
  let least = Number.POSITIVE_INFINITY;
  do {
    let calls = 0;
    let spent = 0;
    const from = processorMs();
    do {
      work();
      calls++;
      spent = processorMs() - from;
    } while (spent < roundMs);
    least = Math.min(least, spent / calls);
  } while (processorMs() < end);
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
