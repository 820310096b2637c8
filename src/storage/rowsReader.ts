import type { Outcome } from "../physics/outcome.ts";
import type { ListedCheck } from "../records/check/listedCheck.ts";
import { listedOrNull, type RowSetAside, rowSetAside } from "./checkRow.ts";
import type { Database, DatabaseHandle } from "./database.ts";

interface RowsRead {
  readonly listed: readonly ListedCheck[];
  readonly aside: readonly RowSetAside[];
}

async function readRows(database: Database): Promise<RowsRead> {
  const listed: ListedCheck[] = [];
  const aside: RowSetAside[] = [];
  for (const row of await database.getAll("checks")) {
    // As it is stored: opening a row cleans its texts.
    const key: IDBValidKey = row.id;
    const check = listedOrNull(row);
    const damaged = check === null ? rowSetAside(row, key) : null;
    if (check !== null) listed.push(check);
    if (damaged !== null) aside.push(damaged);
  }
  return { listed, aside };
}

/** All rows of checks, read and opened once for all who ask in the same turn: what is there, deleted, set aside. */
export class RowsReader {
  private reading: Promise<Outcome<RowsRead>> | null = null;

  constructor(private readonly handle: DatabaseHandle) {}

  read(): Promise<Outcome<RowsRead>> {
    // Whoever asks later may ask for what was written in between.
    queueMicrotask(() => {
      this.reading = null;
    });
    this.reading ??= this.handle.run(readRows);
    return this.reading;
  }
}
