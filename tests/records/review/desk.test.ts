import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { backupLineText, readBackupLine } from "../../../src/records/backup/backupLine.ts";
import type { CheckRecord } from "../../../src/records/check/checkRecord.ts";
import { recordDifferences } from "../../../src/records/check/recordDifferences.ts";
import {
  type Decision,
  deskChecks,
  deskState,
  standingDecision,
} from "../../../src/records/review/decision.ts";
import { viewed, wholeView } from "../../../src/records/review/deskList.ts";
import { listedOf, listText, readListText } from "../../../src/records/review/listedSubmission.ts";
import { readReplyText } from "../../../src/records/review/readReply.ts";
import { factsOf, type Submission, unitOf } from "../../../src/records/review/submission.ts";
import { canonicalText, textDigest } from "../../../src/records/text/canonicalText.ts";
import { withPlainSpaces } from "../../../src/saying/quantityText.ts";
import { acceptText, askAgainText, otherPartText } from "../../../src/saying/replyText.ts";
import { sentenceText } from "../../../src/saying/sentenceText.ts";
import { said } from "../../../src/saying/texts.ts";
import { demoRecord } from "../../support/demoRecords.ts";
import { generateRecords } from "../../support/generateRecords.ts";
import { anyRecord } from "../arbitraries.ts";

const record = demoRecord("arm-fits");

function submission(of: CheckRecord, change: Partial<Submission> = {}): Submission {
  const facts = factsOf(of);
  return {
    ...facts,
    key: `${facts.checkId} ${facts.digest}`,
    receivedAt: "2026-05-02T10:00:00.000Z",
    way: "file",
    photosLeftOut: 0,
    isComputed: 0,
    ...change,
  };
}

function decision(key: string, change: Partial<Decision> = {}): Decision {
  return {
    key,
    checkId: record.id,
    submission: "one",
    kind: "accept",
    by: "M. Lind",
    at: "2026-05-03T10:00:00.000Z",
    note: "",
    ...change,
  };
}

describe("content and digest", () => {
  it("the order of fields changes neither; a changed value changes both", () => {
    fc.assert(
      fc.property(anyRecord, (one) => {
        const turned = Object.fromEntries(Object.entries(one).reverse());
        expect(canonicalText(turned)).toBe(canonicalText(one));
        const other = { ...one, notes: `${one.notes ?? ""}.` };
        expect(textDigest(canonicalText(other))).not.toBe(textDigest(canonicalText(one)));
      }),
      { numRuns: 30 },
    );
  });

  it("10 000 generated records have 10 000 digests and ids, and are the same every time", () => {
    const digests = new Set<string>();
    const ids = new Set<string>();
    let first = "";
    for (const one of generateRecords(10_000)) {
      const { digest, checkId } = factsOf(one);
      if (first === "") first = canonicalText(one);
      digests.add(digest);
      ids.add(checkId);
    }
    expect(digests.size).toBe(10_000);
    expect(ids.size).toBe(10_000);
    const [again] = generateRecords(1);
    expect(canonicalText(again)).toBe(first);
  });
});

describe("decisions", () => {
  it("the newest that was not taken back stands, in whatever order they are put together", () => {
    const all = [
      decision("a", { at: "2026-05-03T10:00:00.000Z" }),
      decision("b", { at: "2026-05-03T11:00:00.000Z", kind: "askAgain", readings: ["left.gap"] }),
      decision("c", { at: "2026-05-03T12:00:00.000Z", kind: "undo", undoes: "b" }),
    ];
    fc.assert(
      fc.property(fc.shuffledSubarray(all, { minLength: 3 }), (shuffled) => {
        expect(standingDecision(shuffled, "one")?.key).toBe("a");
      }),
    );
    expect(deskState(all.slice(0, 2), "one")).toBe("askedAgain");
    expect(deskState([], "one")).toBe("new");
  });

  it("a new version of a check that was decided on is new again, the old one beside it", () => {
    const old = submission(record);
    const newer = submission(
      { ...record, notes: "taken again" },
      { receivedAt: "2026-05-04T10:00:00.000Z" },
    );
    const decided = [decision("a", { submission: old.key, kind: "askAgain" })];
    const [check, ...others] = deskChecks([old, newer], decided);
    expect(others).toEqual([]);
    expect(check?.latest.key).toBe(newer.key);
    expect(check?.versions.map(({ key }) => key)).toEqual([newer.key, old.key]);
    expect(check?.state).toBe("new");
    expect(deskState(decided, old.key)).toBe("askedAgain");
  });
});

describe("the list", () => {
  const verdicts = ["ok", "no", "care", "unsure"] as const;
  const submissions = [...generateRecords(200, 3)].map((each, index) => {
    const verdict = verdicts[index % 5];
    return submission(each, {
      ...(verdict && { computed: { verdict, reason: [], odd: index % 3 }, isComputed: 1 }),
    });
  });
  const checks = deskChecks(submissions, []);

  it("puts what doesn't fit first, then what is not sure, and the oldest first among equals", () => {
    const view = { ...wholeView, sort: "severity" as const };
    const shown = viewed(checks, view).map(({ latest }) => latest);
    const order = shown.map(({ computed }) => computed?.verdict ?? "waiting");
    const wanted = ["no", "unsure", "care", "ok", "waiting"];
    expect([...new Set(order)]).toEqual(wanted);
    for (const verdict of wanted) {
      const dates = shown
        .filter(({ computed }) => (computed?.verdict ?? "waiting") === verdict)
        .map(({ createdAt }) => createdAt);
      expect(dates).toEqual([...dates].sort());
    }
  });

  it("puts what nobody decided on first, who has waited longest before all", () => {
    const shown = viewed(checks, wholeView);
    const states = shown.map(({ state }) => (state === "new" ? "new" : "decided"));
    expect([...new Set(states)]).toEqual(states.includes("decided") ? ["new", "decided"] : ["new"]);
    const fresh = shown
      .filter(({ state }) => state === "new")
      .map((each) => each.latest.receivedAt);
    expect(fresh).toEqual([...fresh].sort());
  });

  it("finds the checks of a job by its number, from the list kept as a text too", () => {
    const [one, two, other] = generateRecords(3, 11);
    if (!one || !two || !other) throw new Error("no records");
    const job = { id: "j1", label: "Osprey wagon", number: "2214", customer: "I. Farrow" };
    const all = [submission({ ...one, job }), submission({ ...two, job }), submission(other)];
    const [listed, ...others] = readListText(listText(all.map(listedOf)));
    expect(listed).toMatchObject({ job: "Osprey wagon", jobNumber: "2214" });
    expect(listed?.jobId).toBe("j1");
    const found = viewed(deskChecks(others.concat(listed ?? []), []), {
      ...wholeView,
      search: "job 2214 osprey",
    });
    expect(found.map(({ latest }) => latest.checkId).sort()).toEqual([one.id, two.id].sort());
    expect(listText(all.map(listedOf))).not.toContain("Farrow");
  });

  it("search finds every word, in whatever case; filters leave out nothing that is meant", () => {
    const [wanted] = submissions.filter(({ who }) => who !== "");
    if (!wanted) throw new Error("nobody has a name");
    const words = `${wanted.vehicle.toUpperCase()} ${wanted.who.split(" ")[1]}`;
    const found = viewed(checks, { ...wholeView, search: words });
    expect(found.map(({ latest }) => latest.key)).toContain(wanted.key);
    expect(viewed(checks, { ...wholeView, search: `${words} nowhere-at-all` })).toEqual([]);
    const counts = (["front", "rear"] as const).map(
      (axle) => viewed(checks, { ...wholeView, axle }).length,
    );
    expect((counts[0] ?? 0) + (counts[1] ?? 0)).toBe(checks.length);
    expect(viewed(checks, { ...wholeView, verdict: "no" })).toHaveLength(40);
    expect(viewed(checks, { ...wholeView, state: "accepted" })).toEqual([]);
  });

  it("reversed is the other way round by what it is sorted", () => {
    const names = (reversed: boolean) =>
      viewed(checks, { ...wholeView, sort: "vehicle", reversed }).map(
        ({ latest }) => latest.vehicle,
      );
    expect(names(true)).toEqual(names(false).reverse());
  });
});

describe("differences between versions", () => {
  it("none for the same, and the reading that changed with both its values", () => {
    expect(recordDifferences(record, structuredClone(record))).toEqual([]);
    const changed: CheckRecord = {
      ...record,
      notes: "again",
      corners: record.corners.map((corner) =>
        corner.side === "left" ? { ...corner, gap: { values: [31, 32], tol: 1 } } : corner,
      ),
    };
    const differences = recordDifferences(record, changed);
    const [gap] = differences.filter(({ what }) => said(what) === "left gap");
    expect(withPlainSpaces(sentenceText(gap?.after ?? [], "mm"))).toBe("31.5 mm ± 1.0 mm, 2 times");
    expect(differences.map(({ what }) => said(what))).toEqual(["left gap", "notes"]);
  });

  it("names every change of a generated record", () => {
    fc.assert(
      fc.property(anyRecord, anyRecord, (one, other) => {
        const same = canonicalText(one) === canonicalText(other);
        expect(recordDifferences(one, other).length === 0).toBe(same);
      }),
      { numRuns: 40 },
    );
  });
});

describe("replies", () => {
  const content = { record, unit: "in" as const, from: "M. Lind", note: "Thank you." };

  it("asks for readings in that person's unit, says why and how, and keeps the cautions", () => {
    const text = askAgainText(content, [
      {
        id: "left.gap",
        name: "left gap",
        reading: { values: [58.7375], tol: 1 },
        why: ["It would be ", { kind: "length", value: 58.7375 }, "."],
        how: "From A to B.",
      },
    ]);
    expect(text).toContain("Left gap. You read 2 5/16 in. It would be 2 5/16 in.");
    expect(text).toContain("How to take it: From A to B.");
    expect(text).toContain("never under a vehicle held by a jack alone");
    expect(text).toContain("not a certification");
    expect(text).not.toMatch(/mm|NaN|undefined/);
  });

  it("what was typed is given back as it was typed", () => {
    const reading = { values: [58.7], tol: 1, typed: ["58,7 mm"] };
    const asked = [{ id: "left.gap" as const, name: "left gap", reading, why: null, how: "" }];
    expect(askAgainText(content, asked)).toContain("You read 58,7 mm.");
  });

  it.each([
    ["pack", "The parts library has 2 5/16 in."],
    ["estimated", "It was estimated as 2 5/16 in."],
  ] as const)("says of a value whose source is %s that nobody read it", (source, words) => {
    const reading = { values: [58.7375], tol: 1, typed: ["2 5/16 in"], source };
    const asked = [{ id: "left.gap" as const, name: "left gap", reading, why: null, how: "" }];
    const text = askAgainText(content, asked);
    expect(text).toContain(words);
    expect(text).not.toContain("You read");
  });

  it("never softens a verdict", () => {
    const answer = {
      verdict: "no" as const,
      words: "It doesn't fit",
      reason: ["The tire touches first."],
      advice: [["Fit a spacer."]],
    };
    expect(acceptText(content, answer)).toContain("It doesn't fit. The tire touches first.");
    const part = { name: "Tall firm", heightMm: 127, part: null, rateNPerMm: null, answer };
    expect(otherPartText(content, part)).toContain("“Tall firm” (5.00 in high)");
    expect(otherPartText(content, part)).toContain("It doesn't fit. The tire touches first.");
    expect(otherPartText(content, { ...part, part: "HL-3130, revision B" })).toContain(
      "“Tall firm” (part number HL-3130, revision B; 5.00 in high)",
    );
  });

  it("the unit is the one most readings were typed in", () => {
    const typed = (texts: string[]) => ({
      ...record,
      corners: record.corners.map((corner) => ({
        ...corner,
        gap: { values: texts.map(() => 58), tol: 1, typed: texts },
        rideHeight: { values: [500], tol: 1 },
        limits: [],
      })),
      layout: { kind: "strut" as const, readings: {} },
      stop: { ...record.stop, freeHeight: { values: [60], tol: 1 } },
    });
    expect(unitOf(typed(["2 5/16 in", "2.3 in"]))).toBe("in");
    expect(unitOf(typed(["58 mm"]))).toBe("mm");
  });

  it.each([
    ["no JSON", "{"],
    ["another format", '{"format":"stopfit-check","version":1}'],
    ["a newer version", '{"format":"stopfit-reply","version":2}'],
    ["readings that are no ids", replyText({ readings: ["<script>"] })],
    ["no check", replyText({ checkId: "" })],
  ])("a reply with %s is refused in a sentence", (_, text) => {
    const read = readReplyText(text);
    expect(read.ok).toBe(false);
    expect(!read.ok && sentenceText(read.fault.sentence, "mm")).toMatch(/^The file .+\.$/);
  });

  it("a reply of a newer version says that Stopfit is to be updated", () => {
    const read = readReplyText(replyText({ version: 2 }));
    expect(!read.ok && read.fault.code).toBe("newerVersion");
    expect(!read.ok && sentenceText(read.fault.sentence, "mm")).toMatch(
      /newer version of Stopfit\. Update Stopfit/,
    );
  });

  it("a whole reply is read as it was written", () => {
    const read = readReplyText(replyText({}));
    expect(read.ok && read.value.readings).toEqual(["left.gap"]);
  });
});

function replyText(change: object): string {
  return JSON.stringify({
    format: "stopfit-reply",
    version: 1,
    id: "d1",
    checkId: record.id,
    createdAt: "2026-05-03T10:00:00.000Z",
    from: "M. Lind",
    kind: "askAgain",
    vehicle: "Marlow",
    axle: "front",
    readings: ["left.gap"],
    text: "Hello",
    ...change,
  });
}

describe("lines of a backup", () => {
  it("read back as they were written; anything else is damaged", () => {
    const lines = [
      { kind: "header", createdAt: "2026-05-03T10:00:00.000Z" },
      {
        kind: "submission",
        text: `${JSON.stringify(record)}\n`,
        receivedAt: "2026-05-03T10:00:00.000Z",
        way: "file",
        photosLeftOut: 0,
      },
      { kind: "decision", decision: decision("a") },
      { kind: "end", lines: 2 },
    ] as const;
    for (const line of lines) {
      const text = backupLineText(line);
      expect(text.split("\n")).toHaveLength(2);
      const read = readBackupLine(text, 1);
      expect(read.ok && read.value).toMatchObject(line);
    }
    for (const text of ["", "{", "[]", '{"kind":"decision","decision":{"key":1}}']) {
      expect(readBackupLine(text, 7).ok).toBe(false);
    }
    expect(
      readBackupLine(
        '{"format":"stopfit-backup","version":9,"kind":"header","createdAt":"2026-05-03T10:00:00Z"}',
        1,
      ),
    ).toMatchObject({ ok: false, fault: { code: "backupNewer" } });
  });
});
