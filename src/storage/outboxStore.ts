import { fail, type Outcome, succeed } from "../physics/outcome.ts";
import type { CheckParts, Part } from "../records/exchanged/checkMessages.ts";
import type { Sentence, Words } from "../words/message.ts";
import { SchemaHandle } from "./databaseHandle.ts";
import {
  type CameIn,
  type OutboxSchema,
  outboxDatabaseName,
  outboxMigrations,
  type SentVersion,
  type WaitingPart,
} from "./outboxDatabase.ts";
import { isSame } from "./sameContent.ts";

/** A phone's own key to the desk, as it is kept. */
export interface KeptKey {
  readonly publicKey: string;
  readonly seed: string;
}

/** Where a check stands on its way to the desk and back. */
type SentState = "waiting" | "received" | "answered";

export interface SentCheck {
  readonly state: SentState;
  /** The version given to the outbox last. */
  readonly newest: SentVersion;
  readonly versions: number;
  /** The newest reply, where one came in. */
  readonly reply: CameIn | null;
}

export type SentChecks = ReadonlyMap<string, SentCheck>;

/** A waiting piece with its place in the order. */
export type PlacedPart = WaitingPart & { readonly place: number };

/** Now, or where the clock was set back just after the last of these: what was given last is the newest. */
function laterThan(moments: readonly string[]): string {
  const last = Math.max(0, ...moments.map((moment) => Date.parse(moment)));
  return new Date(Math.max(Date.now(), last + 1)).toISOString();
}

/** What goes to the desk, kept until its engine has it, and the replies that came. */
export class OutboxStore {
  readonly #handle: SchemaHandle<OutboxSchema>;
  #channel: BroadcastChannel | null;
  readonly #listeners = new Set<() => void>();

  constructor(name: string = outboxDatabaseName) {
    this.#handle = new SchemaHandle(name, outboxMigrations);
    this.#channel = typeof BroadcastChannel === "undefined" ? null : new BroadcastChannel(name);
    if (this.#channel) this.#channel.onmessage = () => this.#tell();
  }

  /**
   * Puts one version of a check into the outbox, all its pieces or none: names and photos first, so that the
   * readings arrive last. The same version once more is no other.
   */
  async queue(
    checkId: string,
    { readings, personal, photos }: CheckParts,
    { digest, whole }: { readonly digest: string; readonly whole: string },
  ): Promise<Outcome<"queued" | "present">> {
    const outcome = await this.#handle.run(async (database) => {
      const transaction = database.transaction(["waiting", "versions"], "readwrite");
      const versions = transaction.objectStore("versions");
      if ((await versions.get(readings.hash)) !== undefined) {
        await transaction.done;
        return "present" as const;
      }
      const before = await versions.index("checkId").getAll(checkId);
      const waiting = transaction.objectStore("waiting");
      const put = (kind: WaitingPart["kind"], { hash, body }: Part) =>
        waiting.add({ kind, checkId, hash, body, version: readings.hash });
      for (const photo of photos) await put("photo", photo);
      if (personal) await put("personal", personal);
      await put("readings", readings);
      await versions.put({
        hash: readings.hash,
        checkId,
        queuedAt: laterThan(before.map(({ queuedAt }) => queuedAt)),
        left: photos.length + (personal ? 1 : 0) + 1,
        digest,
        whole,
      });
      await transaction.done;
      return "queued" as const;
    });
    if (outcome.ok && outcome.value === "queued") this.#announce();
    return outcome;
  }

  /** Notes that a reply was fetched, for the desk to know. */
  async queueFetched(checkId: string, reply: string, body: string): Promise<Outcome<null>> {
    return this.#handle.run(async (database) => {
      await database.add("waiting", { kind: "fetched", checkId, hash: reply, body });
      return null;
    });
  }

  /** The next pieces in their order, after one of them. */
  waiting(after = 0, most = 1): Promise<Outcome<PlacedPart[]>> {
    return this.#handle.run(
      async (database) =>
        (await database.getAll(
          "waiting",
          IDBKeyRange.lowerBound(after, true),
          most,
        )) as PlacedPart[],
    );
  }

  /** The engine has this piece. The last one of a version: the version is received. */
  async acknowledged(part: PlacedPart): Promise<Outcome<null>> {
    const done = await this.#handle.run(async (database) => {
      const transaction = database.transaction(["waiting", "versions"], "readwrite");
      const waiting = transaction.objectStore("waiting");
      const versions = transaction.objectStore("versions");
      const there = (await waiting.getKey(part.place)) !== undefined;
      const version = there && part.version ? await versions.get(part.version) : undefined;
      if (version) {
        const left = version.left - 1;
        await versions.put({
          ...version,
          left,
          ...(left === 0 && { receivedAt: new Date().toISOString() }),
        });
      }
      await waiting.delete(part.place);
      await transaction.done;
      return null;
    });
    this.#announce();
    return done;
  }

  /** Keeps a reply that came in; false: it was here. */
  async keepReply(reply: CameIn): Promise<Outcome<boolean>> {
    const kept = await this.#handle.run(async (database) => {
      const transaction = database.transaction("replies", "readwrite");
      const present = await transaction.store.get(reply.id);
      if (present === undefined) await transaction.store.put(reply);
      await transaction.done;
      return present === undefined;
    });
    if (kept.ok && kept.value) this.#announce();
    return kept;
  }

  async markSeen(id: string): Promise<Outcome<null>> {
    const marked = await this.#handle.run(async (database) => {
      const transaction = database.transaction("replies", "readwrite");
      const present = await transaction.store.get(id);
      if (present) await transaction.store.put({ ...present, seen: 1 });
      await transaction.done;
      return null;
    });
    this.#announce();
    return marked;
  }

  /** Every check that was given to the outbox, by its id. */
  async sent(): Promise<Outcome<SentChecks>> {
    return this.#handle.run(async (database) => {
      const transaction = database.transaction(["versions", "replies"]);
      const [versions, replies] = await Promise.all([
        transaction.objectStore("versions").getAll(),
        transaction.objectStore("replies").getAll(),
      ]);
      versions.sort((a, b) => (a.queuedAt < b.queuedAt ? -1 : 1));
      replies.sort((a, b) => (a.at < b.at ? -1 : 1));
      const newestReply = new Map(replies.map((reply) => [reply.checkId, reply]));
      const sent = new Map<string, SentCheck>();
      for (const newest of versions) {
        const reply = newestReply.get(newest.checkId) ?? null;
        const answered = reply !== null && reply.at > newest.queuedAt;
        sent.set(newest.checkId, {
          state: newest.left > 0 ? "waiting" : answered ? "answered" : "received",
          newest,
          versions: (sent.get(newest.checkId)?.versions ?? 0) + 1,
          reply,
        });
      }
      return sent;
    });
  }

  /** This phone's key to the desk; `make` gives one where there is none yet. */
  async phoneKey(make: () => KeptKey): Promise<Outcome<KeptKey>> {
    return this.#handle.run(async (database) => {
      const transaction = database.transaction("settings", "readwrite");
      const kept = (await transaction.store.get("phone"))?.value as KeptKey | undefined;
      const key = kept ?? make();
      if (kept === undefined) await transaction.store.put({ key: "phone", value: key });
      await transaction.done;
      return key;
    });
  }

  /** What keeps the outbox from being sent, in a sentence; null: nothing. */
  async trouble(): Promise<Words | Sentence | null> {
    const kept = await this.#handle.run((database) => database.get("settings", "trouble"));
    const value = kept.ok ? kept.value?.value : null;
    // An earlier version kept it in words.
    if (typeof value === "string") return value;
    return Array.isArray(value) ? value : null;
  }

  async noteTrouble(sentence: Sentence | null): Promise<void> {
    if (isSame(await this.trouble(), sentence)) return;
    await this.#handle.run(async (database) => {
      if (sentence === null) await database.delete("settings", "trouble");
      else await database.put("settings", { key: "trouble", value: sentence });
    });
    this.#announce();
  }

  /** Called after every change, by this page or another. */
  subscribe(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  close(): void {
    this.#handle.close();
    this.#channel?.close();
    this.#channel = null;
    this.#listeners.clear();
  }

  #announce(): void {
    this.#channel?.postMessage("changed");
    this.#tell();
  }

  #tell(): void {
    for (const listener of this.#listeners) listener();
  }
}

/** An outbox that can be written to, or why there is none. */
export async function openOutbox(name?: string): Promise<Outcome<OutboxStore>> {
  const store = new OutboxStore(name);
  const read = await store.waiting();
  if (read.ok) return succeed(store);
  store.close();
  return fail(read.fault.code, read.fault.sentence);
}
