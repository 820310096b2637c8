import { type Outcome, succeed } from "../physics/outcome.ts";
import { SchemaHandle } from "./databaseHandle.ts";
import {
  type DeskSchema,
  deskDatabaseName,
  deskMigrations,
  type StoredReply,
} from "./deskDatabase.ts";

function keptMoment({ keptAt = "", reply }: StoredReply): string {
  return `${keptAt} ${reply.createdAt}`;
}

/** Replies that reached this device. */
export class ReplyStore {
  readonly #handle: SchemaHandle<DeskSchema>;

  constructor(name: string = deskDatabaseName) {
    this.#handle = new SchemaHandle(name, deskMigrations);
  }

  /** Keeps a reply; one that was opened before stays as it is. */
  async add(reply: StoredReply): Promise<Outcome<StoredReply>> {
    return this.#handle.run(async (database) => {
      const transaction = database.transaction("replies", "readwrite");
      const present = await transaction.store.get(reply.id);
      if (present === undefined) await transaction.store.put(reply);
      await transaction.done;
      return present ?? reply;
    });
  }

  /** The reply to a check that was kept last and is not closed; null: none. */
  async openFor(storedId: string): Promise<Outcome<StoredReply | null>> {
    const found = await this.#handle.run((database) =>
      database.getAllFromIndex("replies", "storedId", storedId),
    );
    if (!found.ok) return found;
    const open = found.value.filter(({ closed }) => closed === 0);
    // By this device's clock: what date a reply has, its sender chose.
    open.sort((a, b) => (keptMoment(a) < keptMoment(b) ? 1 : -1));
    return succeed(open[0] ?? null);
  }

  /** Nothing more is to be done for it. */
  close(id: string): Promise<Outcome<null>> {
    return this.#change(id, (kept) => ({ ...kept, closed: 1 }));
  }

  markSame(id: string, reading: string): Promise<Outcome<null>> {
    return this.#change(id, (kept) => ({ ...kept, same: [...new Set([...kept.same, reading])] }));
  }

  #change(id: string, change: (kept: StoredReply) => StoredReply): Promise<Outcome<null>> {
    return this.#handle.run(async (database) => {
      const transaction = database.transaction("replies", "readwrite");
      const present = await transaction.store.get(id);
      if (present !== undefined) await transaction.store.put(change(present));
      await transaction.done;
      return null;
    });
  }

  dispose(): void {
    this.#handle.close();
  }
}
