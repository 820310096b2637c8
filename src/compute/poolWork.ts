import { assessFitment } from "../physics/assess.ts";
import { type Fault, fail, type Outcome, succeed } from "../physics/outcome.ts";
import { type BackupEntry, readBackupLine } from "../records/backup/backupLine.ts";
import { fitmentOf } from "../records/check/fitmentOf.ts";
import { readCheckText } from "../records/check/readCheck.ts";
import type { StoredCheck } from "../records/check/storedCheck.ts";
import { readSentPart } from "../records/exchanged/checkMessages.ts";
import { readDraftText } from "../records/filling/readDraft.ts";
import type { PackPlatforms } from "../records/pack/pack.ts";
import { readPackText } from "../records/pack/readPack.ts";
import { soundPhotos } from "../records/photo/soundPhotos.ts";
import { judgedAtDesk } from "../records/review/deskDemands.ts";
import { oddReadings } from "../records/review/oddReadings.ts";
import { looksLikeReply } from "../records/review/readReply.ts";
import { computedOf, factsOf, type Incoming, type Way } from "../records/review/submission.ts";
import { openPayload, openText, tooManyLinks } from "../sharing/openText.ts";
import { checkOfText } from "../sharing/receivedFile.ts";
import { checkOfPayload, type SharedCheck, sharedCheck } from "../sharing/sharedCheck.ts";
import { findPayloads } from "../sharing/shareLink.ts";
import * as messages from "../words/compiled/compute.ts";
import type { Words } from "../words/message.ts";
import type { PoolResult, PoolTask, ReadItem, ReadTask, TaskOf } from "./poolMessages.ts";
import { servedOf } from "./servedWork.ts";

const partUnreadable: Fault = {
  code: "fileUnreadable",
  sentence: [messages.fileCanNoLonger],
};

/** As `poolWork`, once what a task names by its place in a file has been read from there. */
export async function poolAnswer(
  task: PoolTask,
  pack: PackPlatforms | null = null,
): Promise<PoolResult> {
  let read: ReadTask;
  try {
    read = await asTexts(task);
  } catch {
    return { kind: "failed", fault: partUnreadable };
  }
  return poolWork(read, pack);
}

/** Throws where a file has gone meanwhile. */
async function asTexts(task: PoolTask): Promise<ReadTask> {
  if (task.kind === "backupLines") return { ...task, lines: await task.lines.text() };
  if (task.kind !== "read" && task.kind !== "open" && task.kind !== "draft") return task;
  const { text } = task;
  return { ...task, text: typeof text === "string" ? text : await text.text() };
}

/**
 * Does one piece of the desk's work; readings are held against the platforms of `pack`, where there is
 * one. Never throws, whatever the text is.
 */
export function poolWork(task: ReadTask, pack: PackPlatforms | null = null): PoolResult {
  try {
    switch (task.kind) {
      case "read":
        return read(task);
      case "open":
        return { kind: "opened", items: openText(task) };
      case "openPayload":
        return { kind: "opened", items: [openPayload(task.payload)] };
      case "draft":
        return { kind: "draft", draft: draftOf(task) };
      case "sent":
        return sent(task);
      case "readPack":
        return { kind: "pack", read: readPackText(task.text) };
      case "backupLines":
        return { kind: "backupLines", entries: backupEntries(task.lines, task.first) };
      case "compute":
        return compute(task, pack);
      case "served":
        return served(task);
    }
  } catch {
    return { kind: "failed", fault: workFailed };
  }
}

const workFailed: Fault = {
  code: "workFailed",
  sentence: [messages.thisCouldNotBe],
};

function read({ text, what, way }: TaskOf<"read">): Extract<PoolResult, { kind: "read" }> {
  if (looksLikeReply(text)) {
    return { kind: "read", items: [sharedItem(checkOfText({ text, what }), way)] };
  }
  if (/^\ufeff?\s*[{[]/.test(text)) return { kind: "read", items: [recordItem(text, what, way)] };
  const payloads = findPayloads(text, linksAtDesk + 1);
  if (payloads.length === 0) {
    return { kind: "read", items: [sharedItem(checkOfText({ text, what }), way)] };
  }
  const items = payloads
    .slice(0, linksAtDesk)
    .map((payload) => sharedItem(checkOfPayload(payload), way === "code" ? "code" : "link"));
  if (payloads.length > linksAtDesk) items.push(tooManyLinks(linksAtDesk));
  return { kind: "read", items };
}

/** Links taken in from one text; what more of them there are is said. */
const linksAtDesk = 500;

/**
 * A record as a file holds it: its text is kept to the last character, but for what cameras wrote beside
 * photos, and photos that can't be shown.
 */
function recordItem(text: string, what: Words, way: Way): ReadItem {
  const checked = readCheckText(text, what);
  if (!checked.ok) return { ok: false, fault: checked.fault };
  const shared = sharedCheck(checked.value);
  const incoming = incomingOf(shared, way);
  return { ok: true, value: shared.record === checked.value ? { ...incoming, text } : incoming };
}

function sharedItem(shared: ReturnType<typeof checkOfPayload>, way: Way): ReadItem {
  return shared.ok
    ? { ok: true, value: incomingOf(shared.value, way) }
    : { ok: false, fault: shared.fault };
}

/** A check out of a link or a code, whose text is the record it spells. */
function incomingOf({ record, photosLeftOut, photosRefused = 0 }: SharedCheck, way: Way): Incoming {
  const leftOut = photosLeftOut + photosRefused;
  return { facts: factsOf(record), text: JSON.stringify(record), way, photosLeftOut: leftOut };
}

function sent({ body }: TaskOf<"sent">): PoolResult {
  const part = readSentPart(body);
  const record = part.ok && part.value.kind === "readings" ? part.value.record : null;
  return {
    kind: "sent",
    part,
    incoming: record && incomingOf({ record, photosLeftOut: 0 }, "desk"),
  };
}

function withPhotos(check: StoredCheck): StoredCheck {
  const { photos } = check.record;
  if (photos === undefined) return check;
  return { ...check, record: { ...check.record, photos: soundPhotos(photos) } };
}

function draftOf({ text }: TaskOf<"draft">): StoredCheck | null {
  const draft = readDraftText(text);
  return draft && withPhotos(draft);
}

function backupEntries(lines: string, first: number): readonly Outcome<BackupEntry>[] {
  const filled = (line: string) => /\S/.test(line);
  return lines
    .split("\n")
    .flatMap((line, index) => (filled(line) ? [backupEntry(line, first + index)] : []));
}

/** A line of a backup with what it holds, or why it is none. */
function backupEntry(text: string, number: number): Outcome<BackupEntry> {
  const line = readBackupLine(text, number);
  if (!line.ok) return line;
  if (line.value.kind === "check")
    return succeed({ kind: "check", check: withPhotos(line.value.check) });
  if (line.value.kind !== "submission") return succeed(line.value);
  const { kind: _, text: sent, ...whence } = line.value;
  const [item] = read({
    kind: "read",
    text: sent,
    what: messages.backupsCheck,
    way: whence.way,
  }).items;
  if (item === undefined) return fail("backupRecord", [messages.entryOfBackupCant]);
  return item.ok
    ? succeed({ kind: "submission", incoming: { ...item.value, ...whence } })
    : fail("backupRecord", item.fault.sentence);
}

function served({ key, text, pack }: TaskOf<"served">): PoolResult {
  const checked = readCheckText(text, messages.check);
  if (!checked.ok) return { kind: "failed", fault: checked.fault };
  return { kind: "served", served: servedOf(key, checked.value, pack) };
}

function compute({ text }: TaskOf<"compute">, pack: PackPlatforms | null): PoolResult {
  const checked = readCheckText(text, messages.check);
  if (!checked.ok) return { kind: "failed", fault: checked.fault };
  const record = checked.value;
  const odd = oddReadings(record, pack).length;
  const assessed = assessFitment(fitmentOf(judgedAtDesk(record, pack)));
  return assessed.ok
    ? {
        kind: "computed",
        computed: computedOf(assessed.value, odd),
        assessment: assessed.value,
      }
    : {
        kind: "computed",
        computed: { verdict: "unsure", reason: assessed.fault.sentence, odd },
        assessment: null,
      };
}
