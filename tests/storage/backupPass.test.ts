import { describe, expect, it, vi } from "vitest";
import { fail, type Outcome, succeed } from "../../src/physics/outcome.ts";
import type { BackupEntry } from "../../src/records/backup/backupLine.ts";
import { recordBounds } from "../../src/records/check/recordFormat.ts";
import { newStoredCheck } from "../../src/records/check/storedCheck.ts";
import { inModelUnits } from "../../src/saying/modelUnits.ts";
import { faultOfPass, passOverBackup, type ReadLines } from "../../src/storage/backupPass.ts";

const header = { kind: "header" as const, createdAt: "2026-05-02T10:00:00.000Z" };
const check = (name: string): BackupEntry => ({ kind: "check", check: newStoredCheck(name) });

/** A line in short: "h" the header, "e3" an end that announces three, "!" what can't be read, else a check. */
function entryOf(line: string): Outcome<BackupEntry> {
  if (line === "h") return succeed(header);
  if (line.startsWith("e")) return succeed({ kind: "end", lines: Number(line.slice(1)) });
  if (line === "!") return fail("backupDamaged", ["This line can't be read."]);
  if (line === "newer") return fail("backupNewer", ["Of a newer version."]);
  if (line === "gone") return fail("fileUnreadable", ["Gone."]);
  return succeed(check(line.slice(0, 20)));
}

/** Reads a backup in short, and keeps which parts it came in. */
function pass(text: string | Blob, take?: (name: string) => Outcome<null>) {
  const parts: [first: number, lines: string][] = [];
  const taken: string[] = [];
  const controller = new AbortController();
  const readLines: ReadLines = async (lines, first) => {
    const whole = await lines.text();
    parts.push([first, whole]);
    return whole
      .split("\n")
      .filter((line) => line !== "")
      .map(entryOf);
  };
  const file = typeof text === "string" ? new Blob([text]) : text;
  const done = passOverBackup(
    file,
    readLines,
    async (entry) => {
      const name = entry.kind === "check" ? entry.check.name : entry.kind;
      taken.push(name);
      return take?.(name) ?? succeed(null);
    },
    controller.signal,
  );
  return { done, parts, taken, controller };
}

const told = (outcome: Outcome<unknown>) =>
  outcome.ok ? "" : `${outcome.fault.code}: ${inModelUnits(outcome.fault.sentence)}`;

async function faultOf(text: string): Promise<string> {
  const passed = await pass(text).done;
  if (!passed.ok) return told(passed);
  const fault = passed.value && faultOfPass(passed.value);
  return fault === null ? "" : `${fault.code}: ${inModelUnits(fault.sentence)}`;
}

describe("a backup that is read through", () => {
  it("hands each entry over in order, its header before them", async () => {
    const { done, parts, taken } = pass("h\na\nb\ne2\n");
    expect(await done).toEqual({
      ok: true,
      value: { header, entries: 2, announced: 2, unreadable: 0, why: null },
    });
    expect(taken).toEqual(["a", "b"]);
    // The header goes first, alone.
    expect(parts).toEqual([
      [1, "h\n"],
      [2, "a\nb\ne2\n"],
    ]);
  });

  it("is the same without a last line end, and with empty lines", async () => {
    for (const text of ["h\na\nb\ne2", "h\n\n\na\n\nb\ne2\n\n", "\nh\na\nb\ne2"]) {
      const { done, taken } = pass(text);
      expect(await done).toMatchObject({ value: { entries: 2, announced: 2, unreadable: 0 } });
      expect(taken).toEqual(["a", "b"]);
    }
  });

  it("is read 64 lines at a time, each part by the number of its first line", async () => {
    const lines = Array.from({ length: 150 }, (_, at) => `c${at}`);
    const { done, parts, taken } = pass(["h", ...lines, "e150"].join("\n"));
    expect(await done).toMatchObject({ value: { entries: 150 } });
    expect(taken).toEqual(lines);
    expect(parts.map(([first]) => first)).toEqual([1, 2, 66, 130]);
    expect(parts[1]?.[1].split("\n")).toHaveLength(65);
  });

  it("is read in smaller parts where its lines are long, of which none is torn", async () => {
    const long = (letter: string, length: number) => letter.repeat(length);
    const { done, parts } = pass(["h", long("a", 249_999), "b", long("c", 100), "e3"].join("\n"));
    expect(await done).toMatchObject({ value: { entries: 3, announced: 3 } });
    expect(parts.map(([first, { length }]) => [first, length])).toEqual([
      [1, 2],
      [2, 250_000],
      [3, 2 + 101 + 2],
    ]);
    const shorter = pass(["h", long("a", 249_998), "b", "e2"].join("\n"));
    await shorter.done;
    expect(shorter.parts.map(([first]) => first)).toEqual([1, 2, 4]);
  });

  it("is stopped where the person says so, or where taking fails", async () => {
    const stopped = pass("h\na\nb\ne2");
    stopped.controller.abort();
    expect(await stopped.done).toEqual({ ok: true, value: null });
    expect(stopped.taken).toEqual([]);
    const full = pass("h\na\nb\ne2", (name) =>
      name === "b" ? fail("storeFull", ["Full."]) : succeed(null),
    );
    expect(told(await full.done)).toBe("storeFull: Full.");
    expect(full.taken).toEqual(["a", "b"]);
  });
});

describe("what is wrong with a backup", () => {
  it("is nothing where it is whole", async () => {
    expect(await faultOf("h\na\ne1")).toBe("");
    expect(await faultOf("h\ne0")).toBe("");
  });

  const none = "notABackup: This file is not a backup of Stopfit: it does not begin as one.";

  it("is that it is none, and then it is not read any further", async () => {
    for (const text of ["", "\n", "a\nh\ne1", "e0", "!\nh\na\ne1"]) {
      expect(await faultOf(text)).toBe(none);
    }
    const foreign = pass(`!\n${"a\n".repeat(500)}`);
    expect(told(await foreign.done)).toBe(none);
    expect(foreign.taken).toEqual([]);
    expect(foreign.parts.length).toBeLessThanOrEqual(2);
  });

  it("is that it was cut short, after how many entries", async () => {
    expect(await faultOf("h\na\nb")).toBe(
      "backupCut: The backup is cut short: it ends after 2 entries. Look for a whole one.",
    );
    expect(await faultOf("h\na")).toContain("it ends after one entry.");
    expect(await faultOf("h")).toContain("it ends after 0 entries.");
  });

  it("is that its count and its entries disagree, either way", async () => {
    expect(await faultOf("h\na\nb\ne3")).toBe(
      "backupCut: The backup says that it has 3 entries, but 2 entries can be read. Look for one that was not changed.",
    );
    expect(await faultOf("h\na\nb\ne1")).toContain("has one entry, but 2 entries can be read.");
  });

  it("is what can't be read of it, and why, while the rest is taken", async () => {
    const { done, taken } = pass("h\na\n!\nb\n!\ne4");
    await done;
    expect(taken).toEqual(["a", "b"]);
    expect(await faultOf("h\na\n!\nb\n!\ne4")).toBe(
      "backupPartly: 2 entries of the backup could not be read. This line can't be read.",
    );
    expect(await faultOf("h\na\n!\ne2")).toBe(
      "backupPartly: One entry of the backup could not be read. This line can't be read.",
    );
  });

  it("is a line longer than any check, which is not even read, to the letter", async () => {
    const most = recordBounds.textCharacters;
    const words =
      "backupPartly: One entry of the backup could not be read. An entry of the backup can't be read.";
    const long = "x".repeat(most);
    expect(await faultOf(`h\na\n${long}\nb\ne2`)).toBe(words);
    expect(await faultOf(`h\na\n${long.slice(1)}\nb\ne3`)).toBe("");
    const { done, parts, taken } = pass(`h\n${long}\nb\ne1\n${long}x`);
    expect(await done).toMatchObject({
      value: { entries: 1, unreadable: 2, why: { code: "backupDamaged" } },
    });
    expect(taken).toEqual(["b"]);
    expect(parts).toEqual([
      [1, "h\n"],
      [3, "b\ne1\n"],
    ]);
  });

  it("is that it is spoilt, once more than a thousand lines can't be read and few can", async () => {
    const spoilt = (count: number, sound = 0) =>
      `h\n${"a\n".repeat(sound)}${"!\n".repeat(count)}e0`;
    expect(await faultOf(spoilt(1000))).toMatch(/^backupPartly: 1000 entries/);
    expect(await faultOf(spoilt(1001))).toBe(
      "backupSpoilt: More than 1000 entries of the backup can't be read, and few can. It was not read any further.",
    );
    expect(await faultOf(spoilt(1001, 1001))).toMatch(/^backupPartly: 1001 entries/);
    expect(await faultOf(spoilt(1001, 1000))).toMatch(/^backupSpoilt/);
  });

  const gone =
    "fileUnreadable: The backup could not be read to its end. Copy it to this device and choose it again.";

  it("is that it is of a newer version, or gone meanwhile", async () => {
    expect(await faultOf("newer\na")).toBe("backupNewer: Of a newer version.");
    expect(await faultOf("h\na\ngone\nb")).toBe(gone);
    const file = new Blob(["h\na\ne1"]);
    vi.spyOn(file, "stream").mockImplementation(
      () =>
        new ReadableStream({
          pull: (controller) => controller.error(new DOMException("changed", "NotReadableError")),
        }) as ReadableStream<Uint8Array<ArrayBuffer>>,
    );
    expect(told(await pass(file).done)).toBe(gone);
  });
});
