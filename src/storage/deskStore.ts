import type { Assessment } from "../physics/fitment.ts";
import { type Outcome, succeed } from "../physics/outcome.ts";
import type { Decision, DeskCheck } from "../records/review/decision.ts";
import {
  type Listed,
  listedOf,
  listText,
  readListText,
} from "../records/review/listedSubmission.ts";
import type { Incoming, KeptComputed, Submission } from "../records/review/submission.ts";
import { addOne, countChange } from "./addSubmission.ts";
import { SchemaHandle } from "./databaseHandle.ts";
import {
  type DeskChange,
  type DeskSchema,
  deskDatabaseName,
  deskMigrations,
  type Writing,
  writeDesk,
} from "./deskDatabase.ts";
import { DeskInbox, nextMoment } from "./deskInbox.ts";
import { SharedCopy } from "./sharedCopy.ts";
import { partsIn, shareDecision, wholeText } from "./sharedParts.ts";

export interface Added {
  readonly added: number;
  /** Keys of those added. */
  readonly keys: readonly string[];
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
  readonly computed: KeptComputed;
  /** Null where it could not be computed. */
  readonly assessment: Assessment | null;
}

/** The list as it was last put together, and whether it is still so. */
export interface Snapshot {
  readonly submissions: Listed[];
  readonly fresh: boolean;
}

/** The top of the list, and how many checks there are in all. */
export interface FirstRows {
  readonly count: number;
  readonly checks: readonly DeskCheck[];
}

/**
 * The checks that came to this desk and what was decided. Submissions and decisions are only
 * added (but for a restore that is undone at once), so that tabs, imports and backups can be joined in any order and nothing is lost.
 */
export class DeskStore {
  readonly #handle: SchemaHandle<DeskSchema>;
  #channel: BroadcastChannel | null;
  readonly #listeners = new Set<(change: DeskChange) => void>();
  readonly #own = new Set<(change: DeskChange) => void>();
  /** What was chosen and is not taken in yet. */
  readonly inbox: DeskInbox;
  /** What goes between this desk and a shared one. */
  readonly shared: SharedCopy;

  constructor(name: string = deskDatabaseName) {
    this.#handle = new SchemaHandle(name, deskMigrations);
    this.inbox = new DeskInbox(this.#handle);
    this.shared = new SharedCopy(this.#handle, (change) => {
      this.#announce(change);
      for (const listener of this.#own) listener(change);
    });
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
      const [rows, revision] = await Promise.all([store.get("rows"), store.get("revision")]);
      if (rows === undefined) return null;
      return {
        submissions: readListText(rows.text),
        fresh: rows.revision === (revision?.revision ?? 0),
      };
    });
  }

  /** All submissions, kept in one piece for the next time as well. */
  async renewSnapshot(): Promise<Outcome<Listed[]>> {
    const read = await this.#handle.run(async (database) => {
      const transaction = database.transaction(["submissions", "snapshots"]);
      const [submissions, revision] = await Promise.all([
        transaction.objectStore("submissions").getAll(),
        transaction.objectStore("snapshots").get("revision"),
      ]);
      return { listed: submissions.map(listedOf), revision: revision?.revision ?? 0 };
    });
    if (!read.ok) return read;
    const { listed, revision } = read.value;
    const text = listText(listed);
    await this.#handle.run((database) =>
      database.put("snapshots", { key: "rows", revision, text }),
    );
    return succeed(listed);
  }

  /** The top of the list as it was seen last; null where it never was. */
  first(): Promise<Outcome<FirstRows | null>> {
    return this.#handle.run(async (database) => {
      const kept = await database.get("snapshots", "first");
      return kept === undefined ? null : (JSON.parse(kept.text) as FirstRows);
    });
  }

  keepFirst(first: FirstRows): Promise<Outcome<unknown>> {
    const text = JSON.stringify(first);
    return this.#handle.run((database) =>
      database.put("snapshots", { key: "first", revision: 0, text }),
    );
  }

  versions(checkId: string): Promise<Outcome<Submission[]>> {
    return this.#handle.run((database) =>
      database.getAllFromIndex("submissions", "checkId", checkId),
    );
  }

  submission(key: string): Promise<Outcome<Submission | null>> {
    return this.#handle.run(async (database) => (await database.get("submissions", key)) ?? null);
  }

  /** What was sent; of a shared desk with the names and photos that are still kept. */
  text(key: string): Promise<Outcome<string | null>> {
    return this.#handle.run(async (database) => {
      const transaction = database.transaction(["texts", "sentBy", "personal"]);
      const text = (await transaction.objectStore("texts").get(key))?.text ?? null;
      return text === null ? null : wholeText(partsIn(transaction), key, text);
    });
  }

  assessment(key: string): Promise<Outcome<Assessment | null>> {
    return this.#handle.run(
      async (database) => (await database.get("assessments", key))?.assessment ?? null,
    );
  }

  /** Texts and answers of several versions at once, in their order. */
  judged(
    keys: readonly string[],
  ): Promise<Outcome<{ readonly text: string; readonly assessment: Assessment | null }[]>> {
    return this.#handle.run((database) => {
      const transaction = database.transaction(["texts", "assessments", "sentBy", "personal"]);
      const texts = transaction.objectStore("texts");
      const assessments = transaction.objectStore("assessments");
      return Promise.all(
        keys.map(async (key) => {
          const [text, kept] = await Promise.all([texts.get(key), assessments.get(key)]);
          return {
            text: await wholeText(partsIn(transaction), key, text?.text ?? ""),
            assessment: kept?.assessment ?? null,
          };
        }),
      );
    });
  }

  /**
   * Keeps a batch in one transaction: all of it, or where that fails none. `alongside` happens in the very
   * same transaction.
   */
  async add(
    incoming: readonly Incoming[],
    alongside?: (transaction: Writing, added: Added) => Promise<void>,
  ): Promise<Outcome<Added>> {
    const written = await writeDesk(this.#handle, async (transaction) => {
      const keys: string[] = [];
      for (const each of incoming) {
        const key = await addOne(transaction, each, each.receivedAt ?? nextMoment());
        if (key !== null) keys.push(key);
      }
      const added = keys.length;
      if (added > 0) await countChange(transaction);
      const counts = { added, keys, present: incoming.length - added };
      await alongside?.(transaction, counts);
      return counts;
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
    const written = await writeDesk(this.#handle, async (transaction) => {
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

  /**
   * Has every result computed anew where it was computed by other demands than these; true: it was. What
   * was computed before a desk had demands of its own is among them.
   */
  judgeBy(demands: string): Promise<Outcome<boolean>> {
    return writeDesk(this.#handle, async (transaction) => {
      const snapshots = transaction.objectStore("snapshots");
      if ((await snapshots.get("demands"))?.text === demands) return false;
      await snapshots.put({ key: "demands", revision: 0, text: demands });
      await transaction.objectStore("assessments").clear();
      for await (const cursor of transaction.objectStore("submissions")) {
        const { computed: _, ...submission } = cursor.value;
        if (submission.isComputed === 1) await cursor.update({ ...submission, isComputed: 0 });
      }
      await countChange(transaction);
      return true;
    });
  }

  decisions(): Promise<Outcome<Decision[]>> {
    return this.#handle.run((database) => database.getAll("decisions"));
  }

  decisionsOf(checkId: string): Promise<Outcome<Decision[]>> {
    return this.#handle.run((database) =>
      database.getAllFromIndex("decisions", "checkId", checkId),
    );
  }

  /** Adds decisions; one that is here already stays as it is. The keys of those that were new. */
  async decide(decisions: readonly Decision[]): Promise<Outcome<readonly string[]>> {
    const written = await writeDesk(this.#handle, async (transaction) => {
      const kept = transaction.objectStore("decisions");
      const added: string[] = [];
      for (const decision of decisions) {
        if ((await kept.getKey(decision.key)) !== undefined) continue;
        await kept.put(decision);
        await shareDecision(transaction, decision);
        added.push(decision.key);
      }
      return added;
    });
    if (written.ok && written.value.length > 0) {
      this.#announce("decisions");
      this.shared.tellWaiting();
    }
    return written;
  }

  /** The keys of everything here. */
  keys(): Promise<
    Outcome<{ readonly submissions: ReadonlySet<string>; readonly decisions: ReadonlySet<string> }>
  > {
    return this.#handle.run(async (database) => {
      const [submissions, decisions] = await Promise.all([
        database.getAllKeys("submissions"),
        database.getAllKeys("decisions"),
      ]);
      return { submissions: new Set(submissions), decisions: new Set(decisions) };
    });
  }

  /** Takes out what a restore had just added: the one case in which anything goes from a desk. */
  async takeOut({
    submissions,
    decisions,
  }: {
    readonly submissions: readonly string[];
    readonly decisions: readonly string[];
  }): Promise<Outcome<null>> {
    const written = await writeDesk(this.#handle, async (transaction) => {
      for (const key of submissions) {
        await transaction.objectStore("submissions").delete(key);
        await transaction.objectStore("texts").delete(key);
        await transaction.objectStore("assessments").delete(key);
      }
      for (const key of decisions) await transaction.objectStore("decisions").delete(key);
      if (submissions.length > 0) await countChange(transaction);
      return null;
    });
    if (written.ok) {
      this.#announce("submissions");
      this.#announce("decisions");
    }
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
      const transaction = database.transaction(["submissions", "texts", "sentBy", "personal"]);
      const [submissions, texts] = await Promise.all([
        transaction.objectStore("submissions").getAll(range, size),
        transaction.objectStore("texts").getAll(range, size),
      ]);
      const byKey = new Map(texts.map(({ key, text }) => [key, text]));
      const whole: WholeSubmission[] = [];
      for (const submission of submissions) {
        const text = byKey.get(submission.key) ?? "";
        const joined =
          submission.way === "desk"
            ? await wholeText(partsIn(transaction), submission.key, text)
            : text;
        whole.push({ submission, text: joined });
      }
      return whole;
    });
  }

  /** Called for changes made by other tabs, not by this one. */
  subscribe(listener: (change: DeskChange) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Called for what came from the shared desk by this tab. */
  onShared(listener: (change: DeskChange) => void): () => void {
    this.#own.add(listener);
    return () => this.#own.delete(listener);
  }

  close(): void {
    this.#handle.close();
    this.#channel?.close();
    this.#channel = null;
    this.#listeners.clear();
  }

  #announce(change: DeskChange): void {
    this.#channel?.postMessage(change);
  }
}

export function openDeskStore(name?: string): Promise<Outcome<DeskStore>> {
  return new DeskStore(name).open();
}
