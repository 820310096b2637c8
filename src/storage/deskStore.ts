import type { IDBPTransaction } from "idb";
import type { Assessment } from "../physics/fitment.ts";
import { type Outcome, succeed } from "../physics/outcome.ts";
import { canonicalText } from "../records/canonicalText.ts";
import type { Decision } from "../records/decision.ts";
import { newId } from "../records/storedCheck.ts";
import type { Computed, Incoming, Submission } from "../records/submission.ts";
import { SchemaHandle } from "./databaseHandle.ts";
import {
  type BegunImport,
  type DeskSchema,
  deskDatabaseName,
  deskMigrations,
} from "./deskDatabase.ts";

export interface Added {
  readonly added: number;
  /** Versions that were here already, to the last character of their content. */
  readonly present: number;
}

/** A submission with the text that was sent. */
export interface WholeSubmission {
  readonly submission: Submission;
  readonly text: string;
}

export interface Result {
  readonly key: string;
  readonly computed: Computed;
  /** Null where it could not be computed. */
  readonly assessment: Assessment | null;
}

/** What another tab did: read again. */
export type DeskChange = "submissions" | "results" | "decisions";

const stores = [
  "submissions",
  "texts",
  "assessments",
  "decisions",
  "imports",
  "snapshots",
] as const;

type Writing = IDBPTransaction<DeskSchema, (typeof stores)[number][], "readwrite">;

/** The list as it was last put together, and whether it is still so. */
export interface Snapshot {
  readonly submissions: Submission[];
  readonly fresh: boolean;
}

/**
 * The checks that came to this desk and what was decided. Submissions and decisions are only ever
 * added, so that tabs, imports and backups can be joined in any order and nothing is lost.
 */
export class DeskStore {
  readonly #handle: SchemaHandle<DeskSchema>;
  readonly #channel: BroadcastChannel | null;
  readonly #listeners = new Set<(change: DeskChange) => void>();

  constructor(name: string = deskDatabaseName) {
    this.#handle = new SchemaHandle(name, deskMigrations);
    this.#channel = typeof BroadcastChannel === "undefined" ? null : new BroadcastChannel(name);
    if (this.#channel !== null) {
      this.#channel.onmessage = ({ data }: MessageEvent<DeskChange>) => {
        for (const listener of this.#listeners) listener(data);
      };
    }
  }

  async open(): Promise<Outcome<DeskStore>> {
    const opened = await this.#handle.open();
    return opened.ok ? succeed(this) : opened;
  }

  submissions(): Promise<Outcome<Submission[]>> {
    return this.#handle.run((database) => database.getAll("submissions"));
  }

  /** The list in one piece, perhaps not the newest; null where there is none yet. */
  snapshot(): Promise<Outcome<Snapshot | null>> {
    return this.#handle.run(async (database) => {
      const { store } = database.transaction("snapshots");
      const [list, revision] = await Promise.all([store.get("list"), store.get("revision")]);
      if (list === undefined) return null;
      return {
        submissions: JSON.parse(list.text) as Submission[],
        fresh: list.revision === (revision?.revision ?? 0),
      };
    });
  }

  /** All submissions, kept in one piece for the next time as well. */
  async renewSnapshot(): Promise<Outcome<Submission[]>> {
    const read = await this.#handle.run(async (database) => {
      const transaction = database.transaction(["submissions", "snapshots"]);
      const [submissions, revision] = await Promise.all([
        transaction.objectStore("submissions").getAll(),
        transaction.objectStore("snapshots").get("revision"),
      ]);
      return { submissions, revision: revision?.revision ?? 0 };
    });
    if (!read.ok) return read;
    const { submissions, revision } = read.value;
    const text = JSON.stringify(submissions);
    await this.#handle.run((database) =>
      database.put("snapshots", { key: "list", revision, text }),
    );
    return succeed(submissions);
  }

  versions(checkId: string): Promise<Outcome<Submission[]>> {
    return this.#handle.run((database) =>
      database.getAllFromIndex("submissions", "checkId", checkId),
    );
  }

  submission(key: string): Promise<Outcome<Submission | null>> {
    return this.#handle.run(async (database) => (await database.get("submissions", key)) ?? null);
  }

  text(key: string): Promise<Outcome<string | null>> {
    return this.#handle.run(async (database) => (await database.get("texts", key))?.text ?? null);
  }

  assessment(key: string): Promise<Outcome<Assessment | null>> {
    return this.#handle.run(
      async (database) => (await database.get("assessments", key))?.assessment ?? null,
    );
  }

  /** Keeps a batch in one transaction: all of it, or where that fails none. */
  async add(
    incoming: readonly (Incoming & { readonly receivedAt?: string })[],
  ): Promise<Outcome<Added>> {
    const written = await this.#write(async (transaction) => {
      let added = 0;
      for (const each of incoming) {
        if (await addOne(transaction, each, each.receivedAt ?? nextMoment())) added += 1;
      }
      if (added > 0) await countChange(transaction);
      return { added, present: incoming.length - added };
    });
    if (written.ok && written.value.added > 0) this.#announce("submissions");
    return written;
  }

  /** Keys of submissions whose answer is still to be computed. */
  uncomputed(most: number): Promise<Outcome<string[]>> {
    return this.#handle.run((database) =>
      database.getAllKeysFromIndex("submissions", "isComputed", 0, most),
    );
  }

  countUncomputed(): Promise<Outcome<number>> {
    return this.#handle.run((database) => database.countFromIndex("submissions", "isComputed", 0));
  }

  async keepResults(results: readonly Result[]): Promise<Outcome<null>> {
    const written = await this.#write(async (transaction) => {
      const submissions = transaction.objectStore("submissions");
      const assessments = transaction.objectStore("assessments");
      for (const { key, computed, assessment } of results) {
        const submission = await submissions.get(key);
        if (submission === undefined) continue;
        await submissions.put({ ...submission, computed, isComputed: 1 });
        if (assessment !== null) await assessments.put({ key, assessment });
      }
      await countChange(transaction);
      return null;
    });
    if (written.ok) this.#announce("results");
    return written;
  }

  decisions(): Promise<Outcome<Decision[]>> {
    return this.#handle.run((database) => database.getAll("decisions"));
  }

  decisionsOf(checkId: string): Promise<Outcome<Decision[]>> {
    return this.#handle.run((database) =>
      database.getAllFromIndex("decisions", "checkId", checkId),
    );
  }

  /** Adds decisions; one that is here already stays as it is. How many were new. */
  async decide(decisions: readonly Decision[]): Promise<Outcome<number>> {
    const written = await this.#write(async (transaction) => {
      const kept = transaction.objectStore("decisions");
      let added = 0;
      for (const decision of decisions) {
        if ((await kept.getKey(decision.key)) !== undefined) continue;
        await kept.put(decision);
        added += 1;
      }
      return added;
    });
    if (written.ok && written.value > 0) this.#announce("decisions");
    return written;
  }

  /** Submissions with their texts, `size` at a time, so that memory holds no more than that. */
  async *wholeSubmissions(size: number): AsyncGenerator<Outcome<WholeSubmission[]>> {
    let after: string | null = null;
    do {
      const page: Outcome<WholeSubmission[]> = await this.#page(after, size);
      after = page.ok ? (page.value.at(-1)?.submission.key ?? null) : null;
      if (!page.ok || page.value.length > 0) yield page;
    } while (after !== null);
  }

  #page(after: string | null, size: number): Promise<Outcome<WholeSubmission[]>> {
    const range = after === null ? null : IDBKeyRange.lowerBound(after, true);
    return this.#handle.run(async (database) => {
      const transaction = database.transaction(["submissions", "texts"]);
      const [submissions, texts] = await Promise.all([
        transaction.objectStore("submissions").getAll(range, size),
        transaction.objectStore("texts").getAll(range, size),
      ]);
      const byKey = new Map(texts.map(({ key, text }) => [key, text]));
      return submissions.map((submission) => ({
        submission,
        text: byKey.get(submission.key) ?? "",
      }));
    });
  }

  beginImport(startedAt: string): Promise<Outcome<BegunImport>> {
    return this.#write(async (transaction) => {
      const begun = { key: newId(), startedAt, taken: 0 };
      await transaction.objectStore("imports").put(begun);
      return begun;
    });
  }

  endImport(key: string): Promise<Outcome<null>> {
    return this.#write(async (transaction) => {
      await transaction.objectStore("imports").delete(key);
      return null;
    });
  }

  noteImport(begun: BegunImport): Promise<Outcome<null>> {
    return this.#write(async (transaction) => {
      await transaction.objectStore("imports").put(begun);
      return null;
    });
  }

  begunImports(): Promise<Outcome<BegunImport[]>> {
    return this.#handle.run((database) => database.getAll("imports"));
  }

  /** Called for changes made by other tabs, not by this one. */
  subscribe(listener: (change: DeskChange) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  close(): void {
    this.#handle.close();
    this.#channel?.close();
    this.#listeners.clear();
  }

  #announce(change: DeskChange): void {
    this.#channel?.postMessage(change);
  }

  #write<Value>(work: (transaction: Writing) => Promise<Value>): Promise<Outcome<Value>> {
    return this.#handle.run(async (database) => {
      const transaction = database.transaction([...stores], "readwrite");
      const ended = transaction.done.then(
        () => null,
        (error: unknown) => ({ error }),
      );
      try {
        const value = await work(transaction);
        const end = await ended;
        if (end !== null) throw end.error;
        return value;
      } catch (error) {
        try {
          transaction.abort();
        } catch {
          // It had ended already.
        }
        await ended;
        throw transaction.error ?? error;
      }
    });
  }
}

async function countChange(transaction: Writing): Promise<void> {
  const snapshots = transaction.objectStore("snapshots");
  const revision = (await snapshots.get("revision"))?.revision ?? 0;
  await snapshots.put({ key: "revision", revision: revision + 1, text: "" });
}

let lastMoment = 0;

/** Now, and later than any moment before: which version came after which stays known. */
function nextMoment(): string {
  lastMoment = Math.max(Date.now(), lastMoment + 1);
  return new Date(lastMoment).toISOString();
}

function isSameContent(one: string, other: string): boolean {
  return one === other || canonicalText(JSON.parse(one)) === canonicalText(JSON.parse(other));
}

/** Adds one version, where this very content is not here yet. */
async function addOne(
  transaction: Writing,
  { facts, text, way, photosLeftOut }: Incoming,
  receivedAt: string,
): Promise<boolean> {
  const submissions = transaction.objectStore("submissions");
  const texts = transaction.objectStore("texts");
  let key = `${facts.checkId} ${facts.digest}`;
  // Two contents with one digest are not worth more than that they are both kept.
  for (;;) {
    const known = await texts.get(key);
    if (known === undefined) break;
    if (isSameContent(known.text, text)) return false;
    key = `${key}+`;
  }
  await texts.put({ key, text });
  await submissions.put({ ...facts, key, receivedAt, way, photosLeftOut, isComputed: 0 });
  return true;
}

export function openDeskStore(name?: string): Promise<Outcome<DeskStore>> {
  return new DeskStore(name).open();
}
