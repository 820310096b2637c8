import type { Pool } from "../../compute/pool.ts";
import type { PoolTask } from "../../compute/poolMessages.ts";
import { createReadingPool } from "../../compute/readingPool.ts";
import { type Fault, fail, type Outcome } from "../../physics/outcome.ts";
import type { Words } from "../../physics/sentence.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import { withEstimates } from "../../records/filling/withEstimates.ts";
import type { Pack } from "../../records/pack/pack.ts";
import type { Reply } from "../../records/review/reply.ts";
import { inModelUnits } from "../../saying/modelUnits.ts";
import type { Frame } from "../../sharing/frame.ts";
import type { Opened } from "../../sharing/openText.ts";
import { isBackup, readFileContent } from "../../sharing/receivedFile.ts";
import type { SharedCheck } from "../../sharing/sharedCheck.ts";
import * as messages from "../../words/compiled/screens/exchange.ts";
import { loadReferencePack, referencePack } from "../referencePack.ts";

/** What files, links or a message brought, told apart. Nothing of it is kept yet. */
export interface Received {
  readonly checks: readonly SharedCheck[];
  /** Checks that are not complete. */
  readonly drafts: readonly StoredCheck[];
  readonly replies: readonly Reply[];
  readonly backups: readonly File[];
  readonly packs: readonly Pack[];
  /** Codes of which others are still to be scanned. */
  readonly parts: readonly Frame[];
  /** What is none of these, and why. */
  readonly refused: readonly { readonly name: string; readonly fault: Fault }[];
}

type Found = Opened | { readonly kind: "draft"; readonly draft: StoredCheck };

interface Named {
  readonly name: string;
  readonly found: Outcome<Found>;
}

const filesAtOnce = 200;

const tooManyFiles: Outcome<never> = fail("tooManyFiles", [
  messages.onlyFilesAreOpened({ filesAtOnce }),
]);

function gathered(all: readonly Named[], backups: readonly File[]): Received {
  const found = all.flatMap(({ found: one }) => (one.ok ? [one.value] : []));
  return {
    checks: found.flatMap((one) => (one.kind === "check" ? [one.check] : [])),
    drafts: found.flatMap((one) => (one.kind === "draft" ? [one.draft] : [])),
    replies: found.flatMap((one) => (one.kind === "reply" ? [one.reply] : [])),
    packs: found.flatMap((one) => (one.kind === "pack" ? [one.pack] : [])),
    parts: found.flatMap((one) => (one.kind === "part" ? [one.frame] : [])),
    backups,
    refused: all.flatMap(({ name, found: one }) => (one.ok ? [] : [{ name, fault: one.fault }])),
  };
}

async function opened(pool: Pool, task: PoolTask): Promise<readonly Outcome<Opened>[]> {
  const done = await pool.run(task);
  if (done.kind === "opened") return done.items;
  return done.kind === "failed" ? [{ ok: false, fault: done.fault }] : [];
}

/** All that is parsed is parsed beside the screen. */
async function foundIn(
  pool: Pool,
  text: string | Blob,
  what: Words,
): Promise<readonly Outcome<Found>[]> {
  const items = await opened(pool, { kind: "open", text, what });
  const [only] = items;
  if (!only || only.ok || only.fault.code !== "checkNotComplete") return items;
  await loadReferencePack();
  const done = await pool.run({ kind: "draft", text });
  if (done.kind !== "draft" || done.draft === null) return items;
  const draft = withEstimates(done.draft, "mm", referencePack(), inModelUnits);
  return [{ ok: true, value: { kind: "draft", draft } }];
}

async function withPool<Value>(work: (pool: Pool) => Promise<Value>): Promise<Value> {
  const pool = createReadingPool();
  try {
    return await work(pool);
  } finally {
    pool.dispose();
  }
}

export function receivedOfText(text: string, what: string): Promise<Received> {
  return withPool(async (pool) => {
    const found = await foundIn(pool, text, what);
    return gathered(
      found.map((one) => ({ name: what, found: one })),
      [],
    );
  });
}

/** What the address of a link holds. */
export function receivedOfPayload(payload: string): Promise<Received> {
  return withPool(async (pool) => {
    const found = await opened(pool, { kind: "openPayload", payload });
    return gathered(
      found.map((one) => ({ name: messages.link2, found: one })),
      [],
    );
  });
}

export function receivedOfFiles(files: readonly File[]): Promise<Received> {
  return withPool(async (pool) => {
    const all: Named[] = [];
    const backups: File[] = [];
    for (const [index, file] of files.entries()) {
      const { name } = file;
      if (index >= filesAtOnce) {
        all.push({ name, found: tooManyFiles });
        break;
      }
      if (await isBackup(file)) {
        backups.push(file);
        continue;
      }
      const content = await readFileContent(file);
      const found = content.ok
        ? await foundIn(pool, content.value.text, content.value.what)
        : [content];
      all.push(...found.map((one) => ({ name, found: one })));
    }
    return gathered(all, backups);
  });
}
