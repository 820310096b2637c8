import { readDeskAddress } from "../../../engine/address.ts";
import type { Outcome } from "../../../physics/outcome.ts";
import type { CheckRecord } from "../../../records/check/checkRecord.ts";
import { checkParts } from "../../../records/exchanged/checkMessages.ts";
import { contentHash } from "../../../records/exchanged/contentHash.ts";
import { readingsDigest } from "../../../records/review/readingsDigest.ts";
import { OutboxStore } from "../../../storage/outboxStore.ts";
import { outboxLock, syncTag } from "../../offline/messages.ts";
import { markOutboxUsed } from "./outboxUsed.ts";

/** The outbox of this page. */
let store: OutboxStore | null = null;
export function outbox(): OutboxStore {
  store ??= new OutboxStore();
  return store;
}

let running: Promise<void> | null = null;
let again = false;

async function errand(): Promise<boolean> {
  const address = readDeskAddress(import.meta.env.VITE_DESK);
  if (!address.ok) return true;
  const [{ sendOutbox }, { wsconnect }] = await Promise.all([
    import("../../../engine/sendOutbox.ts"),
    import("@nats-io/nats-core"),
  ]);
  const work = () => sendOutbox(outbox(), address.value, wsconnect);
  // One page at a time, and the service worker not beside it.
  const fault = await (navigator.locks ? navigator.locks.request(outboxLock, work) : work());
  return fault === null;
}

const firstPauseMs = 3000;
const longestPauseMs = 5 * 60_000;
let pauseMs = firstPauseMs;
let timer: ReturnType<typeof setTimeout> | null = null;

async function tryLater(): Promise<void> {
  if (timer) clearTimeout(timer);
  timer = null;
  const waiting = await outbox().waiting();
  if (!waiting.ok || waiting.value.length === 0) {
    pauseMs = firstPauseMs;
    return;
  }
  timer = setTimeout(runOutbox, pauseMs);
  pauseMs = Math.min(longestPauseMs, 2 * pauseMs);
}

/** Sends what waits and fetches what came, now; where that fails, again later by itself. */
function runOutbox(): Promise<void> {
  if (running) {
    again = true;
    return running;
  }
  running = (async () => {
    do {
      again = false;
      const done = await errand().catch(() => false);
      if (done) pauseMs = firstPauseMs;
    } while (again);
  })().finally(() => {
    running = null;
    tryLater();
  });
  return running;
}

interface WithSync extends ServiceWorkerRegistration {
  readonly sync?: { register(tag: string): Promise<void> };
}

/** Where the browser can, it is sent also after this page was closed. */
async function askForSync(): Promise<void> {
  try {
    const registration = (await navigator.serviceWorker?.ready) as WithSync | undefined;
    await registration?.sync?.register(syncTag);
  } catch {
    // Not allowed here: it is sent while a page is open.
  }
}

/** Everything that a person put into a record that goes to the desk, in short: advice that the app notes is no change. */
export async function wholeHash({ advised: _, ...record }: CheckRecord): Promise<string> {
  const { readings, personal, photos } = await checkParts(record);
  return contentHash([readings, personal, ...photos].map((part) => part?.hash ?? "").join());
}

/** Puts a check into the outbox; it is there for good before this ends, and sent as soon as can be. */
export async function sendToDesk(record: CheckRecord): Promise<Outcome<"queued" | "present">> {
  const [parts, whole] = await Promise.all([checkParts(record), wholeHash(record)]);
  const queued = await outbox().queue(record.id, parts, { digest: readingsDigest(record), whole });
  if (queued.ok) {
    markOutboxUsed();
    askForSync();
    runOutbox();
  }
  return queued;
}

const lookAgainMs = 30_000;
let begun = false;

/** From now on what waits is sent whenever a connection returns, and answers are looked for. */
export function beginOutbox(): void {
  if (begun) return;
  begun = true;
  let lookedAt = Date.now();
  runOutbox();
  const soon = () => {
    pauseMs = firstPauseMs;
    runOutbox();
  };
  addEventListener("online", soon);
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState !== "visible" || Date.now() - lookedAt < lookAgainMs) return;
    lookedAt = Date.now();
    soon();
  });
  setInterval(() => {
    if (document.visibilityState === "visible") runOutbox();
  }, longestPauseMs);
}
