import { type Outcome, succeed } from "../physics/outcome.ts";
import type { Photo } from "../records/check/checkRecord.ts";
import type { PersonalTexts } from "../records/exchanged/personalParts.ts";
import { type Decision, sharedDecisions } from "../records/review/decision.ts";
import type { Incoming } from "../records/review/submission.ts";
import { addOne, countChange, forgetLists } from "./addSubmission.ts";
import type { SchemaHandle } from "./databaseHandle.ts";
import {
  type DeskChange,
  type DeskSchema,
  type PersonalPart,
  type ReplyAtDesk,
  type SentBy,
  type ToShare,
  type Writing,
  writeDesk,
} from "./deskDatabase.ts";

/** One thing out of a stream, read and found sound. */
export type FromStream =
  | {
      readonly kind: "readings";
      readonly incoming: Incoming;
      readonly sender: string;
      readonly personal: string | null;
      readonly photos: readonly string[];
      readonly sequence: number;
      readonly at: string;
    }
  | {
      readonly kind: "personal";
      readonly hash: string;
      readonly checkId: string;
      readonly at: string;
      readonly texts?: PersonalTexts;
      readonly photo?: Photo;
    }
  | {
      readonly kind: "fetched";
      readonly reply: string;
      readonly sender: string;
      readonly at: string;
    }
  | { readonly kind: "decision"; readonly decision: Decision }
  | { readonly kind: "erased"; readonly checkId: string }
  | { readonly kind: "reply"; readonly reply: ReplyAtDesk };

/** This desk's copy of a shared one: what came, up to which place of each stream, and what is to be told. */
export class SharedCopy {
  readonly #handle: SchemaHandle<DeskSchema>;
  readonly #changed: (change: DeskChange) => void;
  readonly #waiting = new Set<() => void>();

  constructor(handle: SchemaHandle<DeskSchema>, changed: (change: DeskChange) => void) {
    this.#handle = handle;
    this.#changed = changed;
  }

  async position(stream: string): Promise<Outcome<number>> {
    return this.#handle.run(async (database) => {
      const kept = await database.get("shared", `position ${stream}`);
      return typeof kept?.value === "number" ? kept.value : 0;
    });
  }

  /** Keeps what a stream brought, and the place it reaches to, all or nothing. */
  async take(
    stream: string,
    reached: number,
    things: readonly FromStream[],
  ): Promise<Outcome<null>> {
    const changes = new Set<DeskChange>();
    const written = await writeDesk(this.#handle, async (transaction) => {
      const shared = transaction.objectStore("shared");
      const key = `position ${stream}`;
      const before = (await shared.get(key))?.value;
      // Another tab was faster.
      if (typeof before === "number" && before >= reached) return null;
      for (const thing of things) changes.add(await takeOne(transaction, thing));
      if (changes.has("submissions")) await countChange(transaction);
      await shared.put({ key, value: reached });
      return null;
    });
    if (written.ok) for (const change of changes) this.#changed(change);
    if (written.ok && changes.has("decisions")) this.tellWaiting();
    return written;
  }

  /** Everything kept beside the submissions. */
  async facts(): Promise<
    Outcome<{ readonly sentBy: readonly SentBy[]; readonly replies: readonly ReplyAtDesk[] }>
  > {
    return this.#handle.run(async (database) => {
      const transaction = database.transaction(["sentBy", "repliesAtDesk"]);
      const [sentBy, replies] = await Promise.all([
        transaction.objectStore("sentBy").getAll(),
        transaction.objectStore("repliesAtDesk").getAll(),
      ]);
      return { sentBy, replies };
    });
  }

  /** What is still to be told, the oldest first. */
  async toShare(): Promise<Outcome<ToShare[]>> {
    const all = await this.#handle.run((database) => database.getAll("toShare"));
    if (all.ok) all.value.sort((a, b) => Date.parse(a.at) - Date.parse(b.at));
    return all;
  }

  async share(thing: ToShare): Promise<Outcome<null>> {
    const put = await writeDesk(this.#handle, async (transaction) => {
      await transaction.objectStore("toShare").put(thing);
      return null;
    });
    this.tellWaiting();
    return put;
  }

  async told(key: string): Promise<Outcome<null>> {
    const done = await writeDesk(this.#handle, async (transaction) => {
      await transaction.objectStore("toShare").delete(key);
      return null;
    });
    this.#changed("shared");
    return done;
  }

  sentByOf(submission: string): Promise<Outcome<SentBy | null>> {
    return this.#handle.run(async (database) => (await database.get("sentBy", submission)) ?? null);
  }

  decision(key: string): Promise<Outcome<Decision | null>> {
    return this.#handle.run(async (database) => (await database.get("decisions", key)) ?? null);
  }

  /** What is personal and older than it may be, goes. */
  async forgetBefore(moment: string): Promise<Outcome<null>> {
    const forgotten = await writeDesk(this.#handle, async (transaction) => {
      const old = (await transaction.objectStore("personal").getAll()).filter(
        ({ at }) => at < moment,
      );
      for (const { hash } of old) await transaction.objectStore("personal").delete(hash);
      for (const checkId of new Set(old.map((part) => part.checkId))) {
        await showPersonal(transaction, checkId);
      }
      if (old.length > 0) await forgetLists(transaction);
      return old.length;
    });
    if (!forgotten.ok) return forgotten;
    if (forgotten.value > 0) this.#changed("submissions");
    return succeed(null);
  }

  async credential(): Promise<string | null> {
    const kept = await this.#handle.run((database) => database.get("shared", "credential"));
    return kept.ok && typeof kept.value?.value === "string" ? kept.value.value : null;
  }

  keepCredential(credential: string | null): Promise<Outcome<null>> {
    return this.#handle.run(async (database) => {
      if (credential === null) await database.delete("shared", "credential");
      else await database.put("shared", { key: "credential", value: credential });
      return null;
    });
  }

  /** Called when there may be something to tell. */
  onWaiting(listener: () => void): () => void {
    this.#waiting.add(listener);
    return () => this.#waiting.delete(listener);
  }

  tellWaiting(): void {
    for (const listener of this.#waiting) listener();
  }
}

async function takeOne(transaction: Writing, thing: FromStream): Promise<DeskChange> {
  switch (thing.kind) {
    case "readings":
      await takeReadings(transaction, thing);
      return "submissions";
    case "personal": {
      const { kind: _, ...part } = thing;
      await transaction.objectStore("personal").put(part satisfies PersonalPart);
      await showPersonal(transaction, thing.checkId);
      return "submissions";
    }
    case "erased": {
      const personal = transaction.objectStore("personal");
      for (const hash of await personal.index("checkId").getAllKeys(thing.checkId)) {
        await personal.delete(hash);
      }
      await showPersonal(transaction, thing.checkId);
      await forgetLists(transaction);
      return "submissions";
    }
    case "decision":
      await takeDecision(transaction, thing.decision);
      return "decisions";
    case "reply":
      await transaction.objectStore("repliesAtDesk").put({
        ...(await transaction.objectStore("repliesAtDesk").get(thing.reply.id)),
        ...thing.reply,
      });
      return "shared";
    case "fetched": {
      const replies = transaction.objectStore("repliesAtDesk");
      const reply = await replies.get(thing.reply);
      // The streams come side by side: the reply may be still on its way here.
      const known = reply ?? {
        id: thing.reply,
        checkId: "",
        sender: thing.sender,
        from: "",
        at: "",
      };
      if (known.sender === thing.sender) await replies.put({ ...known, fetchedAt: thing.at });
      return "shared";
    }
  }
}

async function takeReadings(
  transaction: Writing,
  thing: Extract<FromStream, { kind: "readings" }>,
): Promise<void> {
  const { incoming, sender, personal, photos, sequence, at } = thing;
  const { checkId, digest } = incoming.facts;
  const added = await addOne(transaction, incoming, at);
  const sentBy = transaction.objectStore("sentBy");
  const key = added ?? `${checkId} ${digest}`;
  const before = await sentBy.get(key);
  // A version belongs to the phone that sent it first: nobody else takes its replies over.
  if (before !== undefined && before.sender !== sender) return;
  await sentBy.put({ key, checkId, sender, personal, photos, sequence });
  await showPersonal(transaction, checkId);
}

/** The list's own copy of a name and a contact follows what is kept. */
async function showPersonal(transaction: Writing, checkId: string): Promise<void> {
  const submissions = transaction.objectStore("submissions");
  const personal = transaction.objectStore("personal");
  for (const sent of await transaction.objectStore("sentBy").index("checkId").getAll(checkId)) {
    const submission = await submissions.get(sent.key);
    if (submission === undefined) continue;
    const texts = (sent.personal === null ? undefined : await personal.get(sent.personal))?.texts;
    const here = await Promise.all(sent.photos.map((hash) => personal.getKey(hash)));
    const photos = here.filter((hash) => hash !== undefined).length;
    await submissions.put({
      ...submission,
      who: texts?.["/author/name"]?.trim() ?? "",
      contact: texts?.["/author/contact"]?.trim() ?? "",
      photos,
      photosLeftOut: sent.photos.length - photos,
    });
  }
}

async function takeDecision(transaction: Writing, decision: Decision): Promise<void> {
  const decisions = transaction.objectStore("decisions");
  const own = (await decisions.getKey(decision.key)) !== undefined;
  await decisions.put(decision);
  if (!own || decision.reply === undefined) return;
  // Made at this desk, and now it has its place: if it stands, its reply goes.
  const all = await decisions.index("checkId").getAll(decision.checkId);
  if (sharedDecisions(all, decision.submission).standing?.key !== decision.key) return;
  await transaction.objectStore("toShare").put({
    key: `reply ${decision.key}`,
    kind: "reply",
    checkId: decision.checkId,
    id: decision.key,
    at: decision.at,
  });
}
