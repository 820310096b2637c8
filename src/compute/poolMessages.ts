import type { Assessment } from "../physics/fitment.ts";
import type { Fault, Outcome } from "../physics/outcome.ts";
import type { BackupEntry } from "../records/backup/backupLine.ts";
import type { StoredCheck } from "../records/check/storedCheck.ts";
import type { SentPart } from "../records/exchanged/checkMessages.ts";
import type { Served } from "../records/findings/coverage.ts";
import type { Pack, PackPlatforms } from "../records/pack/pack.ts";
import type { ReadPack } from "../records/pack/readPack.ts";
import type { Computed, Incoming, Way } from "../records/review/submission.ts";
import type { Opened } from "../sharing/openText.ts";
import type { Words } from "../words/message.ts";

/** Work for the pool: to read what came in, or to compute the answer to what was kept. */
export type PoolTask =
  | {
      readonly kind: "read";
      readonly text: string | Blob;
      readonly what: Words;
      readonly way: Way;
    }
  /** What a text or a link's payload holds that comes to a phone. */
  | { readonly kind: "open"; readonly text: string | Blob; readonly what: Words }
  | { readonly kind: "openPayload"; readonly payload: string }
  /** A check that is not complete. */
  | { readonly kind: "draft"; readonly text: string | Blob }
  /** A piece of a check out of a shared desk's stream. */
  | { readonly kind: "sent"; readonly body: string }
  | { readonly kind: "readPack"; readonly text: string }
  /** Lines of a backup, a part of its file; `first` is the number of the first of them. */
  | { readonly kind: "backupLines"; readonly lines: Blob; readonly first: number }
  | { readonly kind: "compute"; readonly text: string }
  /** Which stops of the pack would serve the vehicle of this check. */
  | { readonly kind: "served"; readonly key: string; readonly text: string; readonly pack: Pack };

export type ReadItem =
  | { readonly ok: true; readonly value: Incoming }
  | { readonly ok: false; readonly fault: Fault };

export type PoolResult =
  /** A text may hold several links, and so several checks. */
  | { readonly kind: "read"; readonly items: readonly ReadItem[] }
  | { readonly kind: "opened"; readonly items: readonly Outcome<Opened>[] }
  /** What was estimated in it is yet to be made anew. */
  | { readonly kind: "draft"; readonly draft: StoredCheck | null }
  | { readonly kind: "sent"; readonly part: Outcome<SentPart>; readonly incoming: Incoming | null }
  | { readonly kind: "pack"; readonly read: ReadPack }
  | { readonly kind: "backupLines"; readonly entries: readonly Outcome<BackupEntry>[] }
  | {
      readonly kind: "computed";
      readonly computed: Computed;
      readonly assessment: Assessment | null;
    }
  | { readonly kind: "served"; readonly served: Served }
  | { readonly kind: "failed"; readonly fault: Fault };

type WithTexts<Task> = Task extends PoolTask
  ? { readonly [Part in keyof Task]: Blob extends Task[Part] ? string : Task[Part] }
  : never;

/** A task as it is worked on: files and parts of them have become texts. */
export type ReadTask = WithTexts<PoolTask>;

export type TaskOf<Kind extends PoolTask["kind"]> = Extract<ReadTask, { kind: Kind }>;

/** Before its first task a worker is told which pack its readings are held against. */
export type PoolRequest =
  | { readonly kind: "pack"; readonly pack: PackPlatforms }
  | { readonly kind: "task"; readonly ticket: number; readonly task: PoolTask };

export interface PoolReply {
  readonly ticket: number;
  readonly result: PoolResult;
}
