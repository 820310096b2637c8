import { type Fault, fail, type Outcome } from "../../physics/outcome.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import { readDraftText } from "../../records/filling/readDraft.ts";
import type { Reply } from "../../records/review/reply.ts";
import { isBackup, readFileText, sharedOfText } from "../../sharing/receivedFile.ts";
import { type Shared, type SharedCheck, sharedOfPayload } from "../../sharing/sharedCheck.ts";
import { findPayloads } from "../../sharing/shareLink.ts";
import { loadReferencePack, referencePack } from "../referencePack.ts";

/** What files, links or a message brought, told apart. Nothing of it is kept yet. */
export interface Received {
  readonly checks: readonly SharedCheck[];
  /** Checks that are not complete. */
  readonly drafts: readonly StoredCheck[];
  readonly replies: readonly Reply[];
  readonly backups: readonly File[];
  /** What is none of these, and why. */
  readonly refused: readonly { readonly name: string; readonly fault: Fault }[];
}

type Found = Shared | { readonly kind: "draft"; readonly draft: StoredCheck };

interface Named {
  readonly name: string;
  readonly found: Outcome<Found>;
}

/** Links opened from one text; what more of them there are is said. */
const linksAtOnce = 50;
const filesAtOnce = 200;

const tooManyFiles: Outcome<never> = fail("tooManyFiles", [
  `Only ${filesAtOnce} files are opened at a time. Open the rest after these.`,
]);

function gathered(all: readonly Named[], backups: readonly File[]): Received {
  const found = all.flatMap(({ found: one }) => (one.ok ? [one.value] : []));
  return {
    checks: found.flatMap((one) => (one.kind === "check" ? [one.check] : [])),
    drafts: found.flatMap((one) => (one.kind === "draft" ? [one.draft] : [])),
    replies: found.flatMap((one) => (one.kind === "reply" ? [one.reply] : [])),
    backups,
    refused: all.flatMap(({ name, found: one }) => (one.ok ? [] : [{ name, fault: one.fault }])),
  };
}

async function foundIn(text: string, what: string): Promise<Outcome<Found>[]> {
  const payloads = /^\ufeff?\s*[{[]/.test(text) ? [] : findPayloads(text);
  if (payloads.length > 1) {
    const found: Outcome<Found>[] = payloads
      .slice(0, linksAtOnce)
      .map((payload) => sharedOfPayload(payload));
    if (payloads.length > linksAtOnce) {
      found.push(
        fail("tooManyLinks", [
          `Only ${linksAtOnce} links are opened at a time. Paste the rest after these.`,
        ]),
      );
    }
    return found;
  }
  const shared = sharedOfText({ text, what });
  if (shared.ok || shared.fault.code !== "checkNotComplete") return [shared];
  await loadReferencePack();
  const draft = readDraftText(text, referencePack());
  return [draft === null ? shared : { ok: true, value: { kind: "draft", draft } }];
}

export async function receivedOfText(text: string, what: string): Promise<Received> {
  const found = await foundIn(text, what);
  return gathered(
    found.map((one) => ({ name: what, found: one })),
    [],
  );
}

export async function receivedOfFiles(files: readonly File[]): Promise<Received> {
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
    const text = await readFileText(file);
    const found = text.ok ? await foundIn(text.value.text, text.value.what) : [text];
    all.push(...found.map((one) => ({ name, found: one })));
  }
  return gathered(all, backups);
}
