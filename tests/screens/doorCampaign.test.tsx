import "fake-indexeddb/auto";
import { cleanup, screen, waitFor } from "@testing-library/preact";
import { IDBObjectStore } from "fake-indexeddb";
import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { poolWork } from "../../src/compute/poolWork.ts";
import { createReadingPool } from "../../src/compute/readingPool.ts";
import type { Unpacked } from "../../src/compute/unpack.ts";
import type { StoredCheck } from "../../src/records/check/storedCheck.ts";
import { demoPack } from "../../src/records/pack/demoPack.ts";
import { readPackText } from "../../src/records/pack/readPack.ts";
import type { Reply } from "../../src/records/review/reply.ts";
import { answerHref, stepHref } from "../../src/screens/addresses.ts";
import { deskCheckHref, deskHref, deskReportHref } from "../../src/screens/desk/deskRoutes.ts";
import { runImport } from "../../src/screens/desk/importRun.ts";
import { keepBeside, keepReceived } from "../../src/screens/exchange/presentVersions.ts";
import { receivedOfFiles, receivedOfText } from "../../src/screens/exchange/received.ts";
import { replyHref } from "../../src/screens/exchange/reply/replyRoute.ts";
import { keepReply } from "../../src/screens/exchange/reply/takeReplies.ts";
import { stepsOf } from "../../src/screens/guide/steps.ts";
import { packItemHref } from "../../src/screens/pack/packRoutes.ts";
import { forgetPackInMemory } from "../../src/screens/referencePack.ts";
import { restoreHere, surveyHere } from "../../src/screens/saved/backupHere.ts";
import { openDeskStore } from "../../src/storage/deskStore.ts";
import { openPackStore } from "../../src/storage/packStore.ts";
import { backupText } from "../browser/support/stranger.ts";
import { Chance } from "../fuzz/chance.ts";
import { doorLine, doorText, uncleanText } from "../fuzz/doorFuzzers.ts";
import { mutateValue } from "../fuzz/mutations.ts";
import { freshPhone, openStore, startApp } from "./startApp.tsx";
import { WorkerHere } from "./workersHere.ts";

/*
 * What a stranger sends, through the door as the app has it, kept by what a tap on its screens does, and on to
 * the screens: every row of what was kept is drawn, and a share of it on the screens that show one.
 * `npm run fuzz` tries 100,000 in shares of it, by the settings below.
 */

const cases = Number(process.env.STOPFIT_DOOR_CASES ?? 120);
const begin = Number(process.env.STOPFIT_DOOR_FIRST ?? 0);
const seed = Number(process.env.STOPFIT_DOOR_SEED ?? 1);
const atOnce = Number(process.env.STOPFIT_DOOR_AT_ONCE ?? 60);
vi.setConfig({ testTimeout: 120_000 + 200 * cases });

beforeEach(() => {
  vi.stubGlobal("Worker", WorkerHere);
  countWrites();
  // Lists draw the rows in sight: all of them are.
  vi.spyOn(HTMLElement.prototype, "clientHeight", "get").mockReturnValue(10_000_000);
});
afterEach(() => {
  cleanup();
  forgetPackInMemory();
  countNoMore();
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

const written = { count: 0, counting: false };
const kept = new Set([
  "checks",
  "pictures",
  "replies",
  "submissions",
  "texts",
  "decisions",
  "packs",
]);

const writes = ["put", "add", "delete", "clear"] as const;
const plain = writes.map((method) => IDBObjectStore.prototype[method]);

/** Counts what is written to what a person has here, while it is to be counted. */
function countWrites(): void {
  for (const [index, method] of writes.entries()) {
    const real = plain[index] as (...values: unknown[]) => unknown;
    Object.assign(IDBObjectStore.prototype, {
      [method](this: IDBObjectStore, ...values: unknown[]) {
        if (written.counting && kept.has(this.name)) written.count += 1;
        return real.apply(this, values);
      },
    });
  }
}

function countNoMore(): void {
  for (const [index, method] of writes.entries()) {
    Object.assign(IDBObjectStore.prototype, { [method]: plain[index] });
  }
}

/** What is done before anybody has tapped writes nothing of it. */
async function untapped<Value>(work: () => Promise<Value>, what: string): Promise<Value> {
  written.counting = true;
  const value = await work();
  written.counting = false;
  expect(written.count, `stored without a tap: ${what}`).toBe(0);
  return value;
}

function value<Value>(outcome: { ok: true; value: Value } | { ok: false; fault: unknown }): Value {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.fault));
  return outcome.value;
}

const counts = { cases: 0, checks: 0, replies: 0, atDesk: 0, restored: 0, rows: 0, screens: 0 };

async function shown(hash: string, what: string): Promise<void> {
  cleanup();
  startApp(hash);
  await waitFor(
    () => {
      const busy = document.querySelector('.later-waiting, [aria-busy="true"]');
      if (!document.querySelector("h1") || busy || screen.queryByText("One moment …")) {
        throw new Error(`waits: ${what} ${hash}`);
      }
    },
    { timeout: 60_000 },
  );
  expect(screen.queryByText("This screen can't be shown"), `${what} ${hash}`).toBeNull();
  expect(uncleanText(document.body.textContent ?? ""), `${what} ${hash}`).toBeNull();
  counts.screens += 1;
}

/** A header, or one of a newer version: both end what a backup is read for. */
function isHeader(line: string): boolean {
  const done = poolWork({ kind: "backupLines", lines: line, first: 2 });
  if (done.kind !== "backupLines") return false;
  return done.entries.some((entry) =>
    entry.ok ? entry.value.kind === "header" : entry.fault.code === "backupNewer",
  );
}

/** All of a share of the cases through the door, and by a tap into the storage. */
async function takeIn(first: number, count: number) {
  const store = await openStore();
  const desk = value(await openDeskStore());
  const lines: string[] = [];
  const texts: string[] = [];
  const replies: Reply[] = [];
  const ids = new Map<string, StoredCheck>();
  for (let number = first; number < first + count; number += 1) {
    const chance = new Chance((Math.imul(seed, 0x9e3779b1) + number) >>> 0);
    const what = `case ${number} of seed ${seed}`;
    if (chance.once(3)) {
      lines.push(doorLine(chance).replaceAll("\n", " "));
      continue;
    }
    const text = doorText(chance);
    if (chance.once(4)) {
      texts.push(text);
      continue;
    }
    const received = await untapped(
      () =>
        chance.once(8)
          ? receivedOfFiles([new File([text], "sent.txt")])
          : receivedOfText(text, "The pasted text"),
      what,
    );
    replies.push(...received.replies);
    for (const { record } of received.checks) {
      const stored = value(await keepReceived(store, record, "mm"));
      ids.set(record.id, stored);
    }
    for (const draft of received.drafts) value(await keepBeside(store, draft));
    counts.checks += received.checks.length + received.drafts.length;
  }
  for (const reply of replies) {
    const stored = ids.get(reply.checkId);
    if (stored === undefined) continue;
    value(await keepReply(stored, reply));
    counts.replies += 1;
  }

  async function* sources(): AsyncGenerator<Unpacked> {
    for (const text of texts) yield { kind: "text", text, what: "The text", way: "link" };
  }
  const pool = createReadingPool();
  const imported = await runImport(sources(), {
    store: desk,
    pool,
    onBackup: () => undefined,
    signal: new AbortController().signal,
    onProgress: () => undefined,
  });
  pool.dispose();
  expect(imported.state, `imported at the desk from ${first}`).toBe("ended");
  counts.atDesk += imported.added;

  // A line that is a header of a newer version ends a backup: those are looked at alone.
  const whole = lines.filter((line) => !isHeader(line));
  const files = [
    backupText().replace(/\n/, `\n${whole.join("\n")}\n`),
    ...lines.filter(isHeader).map((line) => `${line}\n`),
  ].map((text) => new File([text], "stopfit-backup.txt"));
  const signal = new AbortController().signal;
  for (const [index, file] of files.entries()) {
    const survey = await untapped(() => surveyHere(store, file, signal), `backup from ${first}`);
    if (index > 0) continue;
    value(survey);
    const restored = value(await restoreHere(store, file, true));
    counts.restored += restored.counts.added + restored.counts.present;
  }

  const list = value(await store.list());
  const deleted = value(await store.list("deleted"));
  const submissions = value(await desk.submissions());
  store.close();
  desk.close();
  return { list, deleted, submissions, answered: [...ids.values()].map(({ id }) => id) };
}

const checkPlaces = ["", "answer", "stops", "fitted", "second", "explain", "fullTravel"];
const deskPlaces = ["findings", "parts", "people"];

async function showAll(
  { list, deleted, submissions, answered }: Awaited<ReturnType<typeof takeIn>>,
  first: number,
): Promise<void> {
  const what = `from ${first} of seed ${seed}`;
  const chance = new Chance(first + 17);
  await shown("#/", what);
  const rows = () => document.querySelectorAll("a.check-link").length;
  await waitFor(() => expect(rows(), `rows of the list ${what}`).toBe(list.length));
  await waitFor(() =>
    expect(document.querySelectorAll(".deleted-row").length, what).toBe(deleted.length),
  );
  counts.rows += list.length + deleted.length;

  await shown(deskHref, what);
  const checks = new Set(submissions.map(({ checkId }) => checkId)).size;
  await waitFor(() =>
    expect(document.querySelectorAll('[role="option"]').length, `desk ${what}`).toBe(checks),
  );
  expect(screen.queryByText("Damaged"), `desk ${what}`).toBeNull();
  counts.rows += checks;

  const stored = list[chance.below(list.length)];
  if (stored !== undefined) {
    const place = chance.pick(checkPlaces);
    await shown(place === "" ? stepHref(stored.id) : stepHref(stored.id, place), what);
    const other = list[chance.below(list.length)] ?? stored;
    const step = chance.pick(stepsOf(other as StoredCheck));
    await shown(stepHref(other.id, step?.id), what);
    if (chance.once(2)) await shown(answerHref(other.id), what);
  }
  const submission = submissions[chance.below(submissions.length)];
  if (submission !== undefined) {
    await shown(deskCheckHref(submission.key), what);
    if (chance.once(2)) await shown(deskReportHref(submission.key), what);
    else await shown(`${deskHref}/${chance.pick(deskPlaces)}`, what);
  }
  for (const id of answered.slice(0, 3)) await shown(replyHref(id), what);
  if (chance.once(2)) await shown("#/saved", what);

  const pack: unknown = structuredClone(demoPack);
  mutateValue(pack, chance);
  const read = readPackText(JSON.stringify(pack) ?? "");
  if (!read.ok) return;
  const packs = openPackStore();
  value(await packs.put(read.value, 0));
  packs.close();
  forgetPackInMemory();
  await shown("#/pack", what);
  const { stops, platforms } = read.value;
  const stop = stops[chance.below(stops.length)];
  const platform = platforms[chance.below(platforms.length)];
  if (stop && chance.once(2)) await shown(packItemHref("stop", stop.id), what);
  else if (platform) await shown(packItemHref("platform", platform.id), what);
  else await shown("#/labels", what);
}

it("a stranger's files, links, replies, backups and packs are shown or refused, and nothing is stored untapped", async () => {
  for (let first = begin; first < begin + cases; first += atOnce) {
    freshPhone();
    forgetPackInMemory();
    written.count = 0;
    const count = Math.min(atOnce, begin + cases - first);
    counts.cases += count;
    await showAll(await takeIn(first, count), first);
    cleanup();
  }
  if (process.env.STOPFIT_DOOR_CASES) {
    const told = Object.entries(counts).map(([what, count]) => `${what} ${count}`);
    process.stdout.write(`door, on to the screens: ${told.join(", ")}\n`);
  }
  expect(counts.checks).toBeGreaterThan(cases / 10);
  expect(counts.replies).toBeGreaterThan(0);
  expect(counts.atDesk).toBeGreaterThan(cases / 50);
  expect(counts.restored).toBeGreaterThan(cases / 50);
});
