import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Outcome } from "../../src/physics/outcome.ts";
import { backupLineText } from "../../src/records/backup/backupLine.ts";
import { recordBounds } from "../../src/records/check/recordFormat.ts";
import { demoPack } from "../../src/records/pack/demoPack.ts";
import { inModelUnits } from "../../src/saying/modelUnits.ts";
import { checkFile, fileToShare } from "../../src/sharing/checkFile.ts";
import {
  checkOfText,
  isBackup,
  readFileContent,
  sharedOfText,
} from "../../src/sharing/receivedFile.ts";
import { replyLink, shareLink } from "../../src/sharing/shareLink.ts";
import { anyRecord } from "../records/arbitraries.ts";
import { demoRecord } from "../support/demoRecords.ts";
import { reply } from "../support/sampleReply.ts";

const scope = "https://stopfit.example/app/";
const [record] = fc.sample(anyRecord, { numRuns: 1, seed: 3 });
if (record === undefined) throw new Error("no record");

const told = (outcome: Outcome<unknown>) =>
  outcome.ok ? "" : `${outcome.fault.code}: ${inModelUnits(outcome.fault.sentence)}`;

describe("a file that was shared", () => {
  it("gives the very same record, photos too", async () => {
    await fc.assert(
      fc.asyncProperty(anyRecord, async (some) => {
        const read = await readFileContent(fileToShare(checkFile(some)));
        if (!read.ok) throw new Error(read.fault.code);
        const { what, text } = read.value;
        const whole = typeof text === "string" ? text : await text.text();
        expect(checkOfText({ what, text: whole })).toEqual({
          ok: true,
          value: { record: some, photosLeftOut: 0 },
        });
      }),
      { numRuns: 60 },
    );
  });

  it("is plain text by type and name, because browsers share no JSON", () => {
    const file = fileToShare(checkFile(record));
    expect(file.type).toBe("text/plain");
    expect(file.name).toBe(checkFile(record).name.replace(/json$/, "txt"));
  });

  /** A file that says it is so large, and gives no more of its text than its beginning. */
  function ofSize(size: number, name: string): File {
    const file = new File(["{}"], name);
    const values = { size, text: () => Promise.reject(new Error("was read")) };
    for (const [field, value] of Object.entries(values))
      Object.defineProperty(file, field, { value });
    return file;
  }

  it("is not read where it is larger than any check, to the byte", async () => {
    const most = recordBounds.textCharacters;
    const words = (size: string) =>
      `fileTooLarge: The file “big.txt” is too large to be a check: ${size} MB, and the most is 32 MB. It was not read.`;
    expect(told(await readFileContent(ofSize(most * 30, "big.txt")))).toBe(words("960"));
    expect(told(await readFileContent(ofSize(most + 1, "\u202ebig.txt")))).toBe(words("32"));
    expect(told(await readFileContent(ofSize(most, "big.txt")))).toBe("");
  });

  it("is read no further than its beginning where it is no record, and longer than any message", async () => {
    const read = async (text: string) => {
      const outcome = await readFileContent(new File([text], "long.txt"));
      if (!outcome.ok) return outcome.fault.code;
      const content = outcome.value.text;
      return typeof content === "string" ? content.length : `${content.size} bytes`;
    };
    expect(await read("\n".repeat(2_000_001))).toBe("noCheckInText");
    expect(await read("\n".repeat(2_000_000))).toBe("2000000 bytes");
    // A byte order mark takes three.
    expect(await read(`\ufeff {${" ".repeat(2_000_001)}`)).toBe("2000006 bytes");
    expect(await read("\n".repeat(1_000_000))).toBe(1_000_000);
  });

  it("is looked at by its beginning alone where that is enough", async () => {
    const long = new File(["x".repeat(2_000_001)], "long.txt");
    Object.defineProperty(long, "text", { value: () => Promise.reject(new Error("was read")) });
    expect(told(await readFileContent(long))).toBe(
      "noCheckInText: The file “long.txt” holds no check: neither a file that Stopfit saved nor a link to one.",
    );
  });

  it("that cannot be read is a sentence", async () => {
    expect(told(await readFileContent(ofSize(2, "gone.txt")))).toBe(
      "fileUnreadable: The file “gone.txt” could not be read. Choose it again.",
    );
  });
});

describe("a backup among files", () => {
  const header = backupLineText({ kind: "header", createdAt: "2026-05-02T09:30:00.000Z" });

  it("is known by its beginning, which alone is read", async () => {
    const file = new File([`${header}\n`, "x".repeat(5000)], "backup.txt");
    Object.defineProperty(file, "text", { value: () => Promise.reject(new Error("was read")) });
    expect(await isBackup(file)).toBe(true);
    expect(await isBackup(new File([checkFile(record).text], "check.json"))).toBe(false);
    expect(await isBackup(new File([""], "empty.txt"))).toBe(false);
  });

  it("is none that can't be read", async () => {
    const slice = () => {
      throw new Error("gone");
    };
    expect(await isBackup({ slice } as unknown as Blob)).toBe(false);
  });
});

describe("a received text", () => {
  it("is a record, a link or a bare payload", () => {
    const link = shareLink({ ...record, photos: [] }, scope);
    if (!link.ok) throw new Error("no link");
    const { address } = link.value;
    for (const text of [address, `See ${address}.`, address.split("#/open/")[1] ?? ""]) {
      expect(checkOfText({ what: "The text", text })).toMatchObject({
        ok: true,
        value: { record: { id: record.id } },
      });
    }
  });

  const received = (text: string) => sharedOfText({ what: "The text", text });
  const demo = demoRecord("arm-fits");

  it("is a check, a reply or a parts library as their files hold them", () => {
    for (const beginning of ["", "\n  ", "\ufeff", "\ufeff\n"]) {
      expect(received(beginning + JSON.stringify(demo))).toEqual({
        ok: true,
        value: { kind: "check", check: { record: demo, photosLeftOut: 0 } },
      });
      expect(received(beginning + JSON.stringify(reply))).toEqual({
        ok: true,
        value: { kind: "reply", reply },
      });
      expect(received(beginning + JSON.stringify(demoPack))).toEqual({
        ok: true,
        value: { kind: "pack", pack: demoPack },
      });
    }
  });

  it("is the check that a file holds, whatever link its notes have", () => {
    const other = shareLink(demoRecord("damper-shaft"), scope);
    if (!other.ok) throw new Error("no link");
    const noted = { ...demo, notes: `Compare ${other.value.address}` };
    expect(received(JSON.stringify(noted))).toMatchObject({
      ok: true,
      value: { kind: "check", check: { record: noted } },
    });
  });

  it("is what the first of its links holds, also a reply", () => {
    expect(received(`Hello,\n${replyLink(reply, scope)}\nRobin`)).toEqual({
      ok: true,
      value: { kind: "reply", reply },
    });
  });

  const none =
    "noCheckInText: The text holds no check: neither a file that Stopfit saved nor a link to one.";

  it("is a bare payload by itself alone, with spaces around", () => {
    const link = shareLink(demo, scope);
    if (!link.ok) throw new Error("no link");
    const payload = link.value.address.split("#/open/")[1] ?? "";
    expect(received(`\n ${payload} \n`)).toMatchObject({ ok: true, value: { kind: "check" } });
    for (const text of [`see ${payload}`, `${payload} it is`, `${payload}.`, "2b", "2bshort"]) {
      expect(told(received(text))).toBe(none);
    }
    expect(told(received(`3${payload.slice(1)}`))).toBe(
      "payloadNewer: The link was made by a newer version of Stopfit than this one. Update Stopfit, then open it again.",
    );
  });

  it("that holds none says so, by the name it came with", () => {
    for (const text of ["", "Hello", "x {", 'say "draft": now']) {
      expect(told(received(text))).toBe(none);
    }
  });

  it("of a check that is not complete is told, and where it opens", () => {
    const words =
      "checkNotComplete: The text is a check that is not complete yet. It opens on a phone, to be gone on with there.";
    expect(told(received('{"draft":{}}'))).toBe(words);
    expect(told(received('{"id":"a", "draft" \n: {}}'))).toBe(words);
  });

  it("of a check that is damaged says what is wrong with it", () => {
    const words = "otherFormat: The text is not a fitment check: it does not say that it is one.";
    expect(told(received("{}"))).toBe(words);
    expect(told(received('{"drafty":1}'))).toBe(words);
    const cut = JSON.stringify(demo).slice(0, -30);
    expect(told(received(cut))).toMatch(/^\w+: The text /);
    expect(told(received(cut))).not.toBe(none);
  });

  it("ends in an outcome whatever it is", () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
        const outcome = checkOfText({ what: "The text", text });
        expect(outcome.ok ? "" : inModelUnits(outcome.fault.sentence)).toMatch(/^\S/);
      }),
    );
  });
});
