import "fake-indexeddb/auto";
import { describe, expect, it, vi } from "vitest";
import { fail, type Outcome, succeed } from "../../src/physics/outcome.ts";
import { listedCheck } from "../../src/records/check/listedCheck.ts";
import { newStoredCheck } from "../../src/records/check/storedCheck.ts";
import { setEntry } from "../../src/records/filling/changes.ts";
import { storedFromRecord } from "../../src/records/filling/storedFromRecord.ts";
import { makeBackup, markBackedUp } from "../../src/storage/backup.ts";
import type { CheckStore } from "../../src/storage/checkStore.ts";
import { MarkStore } from "../../src/storage/markStore.ts";
import { demoRecord } from "../support/demoRecords.ts";
import { tinyPhoto } from "../support/pictures.ts";
import { decisionOf, desk, incomingOf, sentText } from "./support/backups.ts";
import { closedLater, freshBrowsers, tab, value } from "./support/tabs.ts";

freshBrowsers();

const complete = storedFromRecord({
  ...demoRecord("arm-fits"),
  photos: [{ ...tinyPhoto, caption: "Left pad" }],
});
const draft = setEntry(newStoredCheck("Tern, half done"), "left.gap", {
  texts: ["21", "2 5/"],
  unit: "in",
  tol: "1/32",
});

const linesOf = async (file: File) =>
  (await file.text()).split("\n").map((line) => (line === "" ? null : JSON.parse(line)));
const fault = <Value>(code: string): Outcome<Value> => fail(code, ["It does not answer."]);
const codeOf = (outcome: Outcome<unknown>) => (outcome.ok ? "" : outcome.fault.code);

describe("the file of a backup", () => {
  it("has everything, one line each: its beginning, the desk's, the checks, those deleted last, its end", async () => {
    const [checks, here] = [await tab(), await desk()];
    value(await checks.put(complete));
    value(await checks.put(draft));
    value(await checks.remove(complete.id));
    const sent = [incomingOf(sentText(1)), incomingOf(sentText(2))] as const;
    const whence = {
      receivedAt: "2025-05-01T10:00:00.000Z",
      sentAt: "2025-04-30T10:00:00.000Z",
      from: "workshop",
      place: 3,
      photosLeftOut: 2,
    };
    value(await here.add([{ ...sent[0], ...whence, way: "link" }]));
    value(await here.add([{ ...sent[1], receivedAt: whence.receivedAt }]));
    const decision = { ...decisionOf("d1"), note: "As sent." };
    value(await here.decide([decision]));
    const before = new Date().toISOString();
    const made = value(await makeBackup(here, checks));

    const marks = closedLater(new MarkStore());
    const header = { format: "stopfit-backup", version: 1, kind: "header" };
    const kept = [value(await checks.get(draft.id)), value(await checks.get(complete.id))];
    expect(kept[1]?.record.photos?.[0]?.data).toBe(tinyPhoto.data);
    // Choices stand among what was typed there, where every version finds them.
    expect(await linesOf(made.file)).toEqual([
      { ...header, createdAt: made.createdAt, phone: value(await marks.phone()) },
      { kind: "submission", text: sent[0].text, ...whence, way: "link" },
      {
        kind: "submission",
        text: sent[1].text,
        receivedAt: whence.receivedAt,
        way: "file",
        photosLeftOut: 0,
      },
      { kind: "decision", decision },
      ...kept.map((check) => ({ kind: "check", check: { ...check, choices: undefined } })),
      { kind: "end", lines: 5 },
      null,
    ]);
    expect(made.createdAt >= before && made.createdAt <= new Date().toISOString()).toBe(true);
    // What is remembered of it needs no pictures.
    expect(made.checks).toEqual(kept.map((check) => check && listedCheck(check)));
  });

  it("is named by the minute it was made in, and is plain text", async () => {
    vi.useFakeTimers({ toFake: ["Date"] });
    vi.setSystemTime("2026-05-04T07:08:59.999Z");
    const { file, createdAt } = value(await makeBackup(await desk(), await tab()));
    expect(createdAt).toBe("2026-05-04T07:08:59.999Z");
    expect(file.name).toBe("stopfit-backup-2026-05-04-07-08.txt");
    expect(file.type).toBe("text/plain");
  });

  it("of an empty phone has its beginning and its end", async () => {
    const made = value(await makeBackup(await desk(), await tab()));
    const lines = await linesOf(made.file);
    expect(lines.map((line) => line?.kind)).toEqual(["header", "end", undefined]);
    expect(lines[1]).toEqual({ kind: "end", lines: 0 });
    expect(made.checks).toEqual([]);
  });

  it("counts what came from the desk page by page", async () => {
    const here = await desk();
    value(await here.add(Array.from({ length: 101 }, (_, at) => incomingOf(sentText(at)))));
    const lines = await linesOf(value(await makeBackup(here, await tab())).file);
    expect(lines.filter((line) => line?.kind === "submission")).toHaveLength(101);
    expect(lines.at(-2)).toEqual({ kind: "end", lines: 101 });
  });

  it("leaves out a check that another tab has done away with meanwhile", async () => {
    const checks = await tab();
    value(await checks.put(draft));
    value(await checks.put(complete));
    const get = checks.get.bind(checks);
    vi.spyOn(checks, "get").mockImplementation(async (id) => {
      if (id === complete.id) await checks.discard(id);
      return get(id);
    });
    const made = value(await makeBackup(await desk(), checks));
    expect(made.checks.map(({ id }) => id)).toEqual([draft.id]);
    expect((await linesOf(made.file)).at(-2)).toEqual({ kind: "end", lines: 1 });
  });
});

describe("no backup is made", () => {
  const nothing = async function* () {};
  const noDesk = { wholeSubmissions: nothing, decisions: async () => succeed([]) };

  it("where any part of it can't be read, and the fault is told", async () => {
    const checks = await tab();
    value(await checks.put(draft));
    const sent = {
      ...noDesk,
      async *wholeSubmissions() {
        yield fault<never>("submissionsFault");
      },
    };
    expect(codeOf(await makeBackup(sent, checks))).toBe("submissionsFault");
    const decided = { ...noDesk, decisions: async () => fault<never>("decisionsFault") };
    expect(codeOf(await makeBackup(decided, checks))).toBe("decisionsFault");
    const whole = vi.spyOn(checks, "get").mockResolvedValue(fault("checkFault"));
    expect(codeOf(await makeBackup(noDesk, checks))).toBe("checkFault");
    whole.mockRestore();
    vi.spyOn(checks, "list").mockResolvedValue(fault("listFault"));
    expect(codeOf(await makeBackup(noDesk, checks))).toBe("listFault");
  });

  it("where this phone does not say which it is", async () => {
    const checks = await tab();
    vi.spyOn(MarkStore.prototype, "phone").mockResolvedValue(fault("storeFailed"));
    expect(codeOf(await makeBackup(noDesk, checks))).toBe("storeFailed");
  });
});

describe("a backup that was saved", () => {
  it("is the last one, and its checks are safe as they were in it", async () => {
    const checks: CheckStore = await tab();
    value(await checks.put(draft));
    const made = value(await makeBackup(await desk(), checks));
    const marks = closedLater(new MarkStore());
    value(await marks.markSafe([{ ...complete, id: "gone" }]));
    await markBackedUp(made);
    const { lastBackupAt, safe } = value(await marks.safekeeping());
    expect(lastBackupAt).toBe(made.createdAt);
    expect([...safe.keys()]).toEqual([draft.id]);
  });
});
