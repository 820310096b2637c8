import type { Outcome } from "../physics/outcome.ts";
import { newId } from "../records/check/storedCheck.ts";
import type { SchemaHandle } from "./databaseHandle.ts";
import {
  type BegunImport,
  type DeskSchema,
  type ImportCounts,
  type InboxEntry,
  type Writing,
  writeDesk,
} from "./deskDatabase.ts";

export const nothingCounted: ImportCounts = {
  taken: 0,
  added: 0,
  present: 0,
  refusedCount: 0,
  refused: [],
};

/** Characters of entries in memory at once, but for one that is larger. */
const pageCharacters = 4_000_000;

/** Characters, or about as many. */
export function sizeOf(text: string | Blob): number {
  return typeof text === "string" ? text.length : text.size;
}

let lastMoment = 0;

/** Now, and later than any moment before: which version came after which stays known. */
export function nextMoment(): string {
  lastMoment = Math.max(Date.now(), lastMoment + 1);
  return new Date(lastMoment).toISOString();
}

function entriesOf(key: string): IDBKeyRange {
  return IDBKeyRange.bound([key, 0], [key, Number.MAX_SAFE_INTEGER]);
}

/**
 * What was chosen for an import, kept before any of it is taken in, so that the import goes on to its end
 * even if its page is closed.
 */
export class DeskInbox {
  readonly #handle: SchemaHandle<DeskSchema>;

  constructor(handle: SchemaHandle<DeskSchema>) {
    this.#handle = handle;
  }

  begin(): Promise<Outcome<BegunImport>> {
    return writeDesk(this.#handle, async (transaction) => {
      const begun: BegunImport = {
        key: newId(),
        startedAt: nextMoment(),
        stage: "reading",
        total: 0,
        counts: nothingCounted,
      };
      await transaction.objectStore("imports").put(begun);
      return begun;
    });
  }

  put(entries: readonly InboxEntry[]): Promise<Outcome<null>> {
    return writeDesk(this.#handle, async (transaction) => {
      for (const entry of entries) await transaction.objectStore("inbox").put(entry);
      return null;
    });
  }

  note(begun: BegunImport): Promise<Outcome<null>> {
    return writeDesk(this.#handle, async (transaction) => {
      await transaction.objectStore("imports").put(begun);
      return null;
    });
  }

  /** The next entries in their order: one at least, and no more than are read together. */
  next(key: string, most: number): Promise<Outcome<InboxEntry[]>> {
    return this.#handle.run(async (database) => {
      const entries: InboxEntry[] = [];
      let characters = 0;
      let cursor = await database.transaction("inbox").store.openCursor(entriesOf(key));
      while (cursor !== null) {
        entries.push(cursor.value);
        characters += sizeOf(cursor.value.text ?? "");
        if (entries.length >= most || characters >= pageCharacters) break;
        cursor = await cursor.continue();
      }
      return entries;
    });
  }

  /** Ends an import; what of it was not taken in is dropped. */
  end(key: string): Promise<Outcome<null>> {
    return writeDesk(this.#handle, async (transaction) => {
      await transaction.objectStore("inbox").delete(entriesOf(key));
      await transaction.objectStore("imports").delete(key);
      return null;
    });
  }

  begun(): Promise<Outcome<BegunImport[]>> {
    return this.#handle.run((database) => database.getAll("imports"));
  }
}

/** In the transaction that keeps what entries held, those go from the inbox. */
export async function takeOut(
  transaction: Writing,
  begun: BegunImport,
  places: readonly number[],
): Promise<void> {
  const inbox = transaction.objectStore("inbox");
  for (const place of places) await inbox.delete([begun.key, place]);
  await transaction.objectStore("imports").put(begun);
}
