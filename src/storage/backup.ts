import { type Outcome, succeed } from "../physics/outcome.ts";
import { type BackupLine, backupLineText } from "../records/backup/backupLine.ts";
import { type ListedCheck, listedCheck } from "../records/check/listedCheck.ts";
import type { CheckStore } from "./checkStore.ts";
import type { DeskStore } from "./deskStore.ts";
import { MarkStore } from "./markStore.ts";

const pageSize = 100;

/** What a backup takes from the desk. */
type FromDesk = Pick<DeskStore, "wholeSubmissions" | "decisions">;

/** A backup, and the checks that are in it. */
export interface Backup {
  readonly file: File;
  readonly createdAt: string;
  readonly checks: readonly ListedCheck[];
}

/** Everything kept here, the desk's and the phone's, as one file. */
export async function makeBackup(desk: FromDesk, checks: CheckStore): Promise<Outcome<Backup>> {
  const createdAt = new Date().toISOString();
  const marks = new MarkStore();
  const phone = await marks.phone();
  marks.close();
  if (!phone.ok) return phone;
  const parts: BlobPart[] = [backupLineText({ kind: "header", createdAt, phone: phone.value })];
  let lines = 0;
  const add = (page: readonly BackupLine[]): void => {
    lines += page.length;
    // A Blob of each page lets the browser put it on disk.
    parts.push(new Blob(page.map(backupLineText)));
  };
  for await (const page of desk.wholeSubmissions(pageSize)) {
    if (!page.ok) return page;
    add(
      page.value.map(({ text, submission }) => {
        const { receivedAt, sentAt, from, place, way, photosLeftOut } = submission;
        return {
          kind: "submission",
          text,
          receivedAt,
          ...(sentAt !== undefined && { sentAt }),
          ...(from !== undefined && { from }),
          ...(place !== undefined && { place }),
          way,
          photosLeftOut,
        };
      }),
    );
  }
  const decisions = await desk.decisions();
  if (!decisions.ok) return decisions;
  add(decisions.value.map((decision) => ({ kind: "decision", decision })));
  const saved: ListedCheck[] = [];
  for (const which of ["present", "deleted"] as const) {
    const listed = await checks.list(which);
    if (!listed.ok) return listed;
    for (const { id } of listed.value) {
      // One at a time, for their pictures are long.
      const whole = await checks.get(id);
      if (!whole.ok) return whole;
      if (whole.value === null) continue;
      add([{ kind: "check", check: whole.value }]);
      saved.push(listedCheck(whole.value));
    }
  }
  parts.push(backupLineText({ kind: "end", lines }));
  const name = `stopfit-backup-${createdAt.slice(0, 16).replace(/[:T]/g, "-")}.txt`;
  const file = new File(parts, name, { type: "text/plain" });
  return succeed({ file, createdAt, checks: saved });
}

/** This backup has been saved or sent: what is in it is safe. */
export async function markBackedUp({ createdAt, checks }: Backup): Promise<void> {
  const marks = new MarkStore();
  await marks.markBackup(createdAt, checks);
  marks.close();
}
