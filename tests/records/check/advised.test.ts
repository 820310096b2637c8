import { describe, expect, it } from "vitest";
import {
  isAdviceAlone,
  isSameAdvice,
  withAdvice,
  withMergedAdvice,
} from "../../../src/records/check/advised.ts";
import type { Advice } from "../../../src/records/check/checkRecord.ts";
import { completeRecord } from "../../../src/records/check/completeRecord.ts";
import { openStored } from "../../../src/records/check/openStored.ts";
import { readCheckText, readCheckValue } from "../../../src/records/check/readCheck.ts";
import { recordDifferences } from "../../../src/records/check/recordDifferences.ts";
import { recordBounds } from "../../../src/records/check/recordFormat.ts";
import { changeRecord } from "../../../src/records/check/storedCheck.ts";
import { withChoice } from "../../../src/records/filling/choice.ts";
import { checkAgain } from "../../../src/records/filling/fitted.ts";
import { readDraftText } from "../../../src/records/filling/readDraft.ts";
import { storedFromRecord } from "../../../src/records/filling/storedFromRecord.ts";
import { demoPack } from "../../../src/records/pack/demoPack.ts";
import { adviceGiven, adviceWords } from "../../../src/records/review/adviceWords.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { withPlainSpaces } from "../../../src/saying/quantityText.ts";
import { sentenceText } from "../../../src/saying/sentenceText.ts";
import { said } from "../../../src/saying/texts.ts";
import { checkFileText } from "../../../src/screens/checkFile.ts";
import { mergeChecks } from "../../../src/storage/mergeChecks.ts";
import { demoRecord } from "../../support/demoRecords.ts";

const record = demoRecord("arm-fits");
const stored = storedFromRecord(record);

function advice(at: string, part: Partial<NonNullable<Advice["part"]>> = {}): Advice {
  return {
    at,
    sides: ["left", "right"],
    pack: "Halden Lane parts",
    edition: "2026-11",
    part: {
      name: "Tall block",
      partNumber: "HL-1060",
      revision: "A",
      spacerMm: 15,
      heightMm: 60,
      stopRateClass: 160,
      change: "both",
      verdict: "ok",
      ...part,
    },
  };
}

const day = (n: number) => `2026-06-${String(n).padStart(2, "0")}T08:00:00.000Z`;
const first = advice(day(1));
const other = advice(day(2), { partNumber: "HL-1072", spacerMm: 0, change: "stop" });
const { part: _none, ...nothing } = advice(day(3));

const words = (shown: Advice) => withPlainSpaces(sentenceText(adviceWords(shown), "mm"));
const all = (...advised: Advice[]) => changeRecord(stored, (kept) => ({ ...kept, advised }));

describe("what an answer prescribed", () => {
  it("is kept as it is shown, with every earlier one, and no change of the check by a person", () => {
    const once = withAdvice(stored, first);
    expect(once.record.advised).toEqual([first]);
    expect(once.updatedAt).toBe(stored.updatedAt);
    expect(withAdvice(once, { ...first, at: day(9), edition: "2026-12" })).toBe(once);
    const twice = withAdvice(once, other);
    expect(twice.record.advised).toEqual([first, other]);
    // Shown again after another: the newest is the one shown last.
    const back = { ...first, at: day(4) };
    expect(withAdvice(twice, back).record.advised).toEqual([other, back]);
    expect(withAdvice(twice, nothing).record.advised?.at(-1)).toEqual(nothing);
  });

  it("is bounded: of more than a record holds the oldest go", () => {
    const many = Array.from({ length: 20 }, (_, n) => advice(day(n + 1), { spacerMm: n }));
    const kept = many.reduce(withAdvice, stored);
    expect(kept.record.advised).toEqual(many.slice(-recordBounds.advised));
    const { advised } = kept.record;
    expect(readCheckValue({ ...record, advised }).ok).toBe(true);
    const tooMany = readCheckValue({ ...record, advised: [...(advised ?? []), first] });
    expect(tooMany.ok ? [] : tooMany.faults.map(({ sentence }) => inModelUnits(sentence))).toEqual([
      "The record of what was advised: holds 13, and the most is 12.",
    ]);
  });

  it("goes along in the record, complete or not, and through the storage", () => {
    const kept = all(first, other, nothing);
    const file = readCheckText(checkFileText(kept));
    expect(file.ok && file.value.advised).toEqual([first, other, nothing]);
    const whole = completeRecord(kept);
    expect(whole.ok && whole.value.advised).toEqual([first, other, nothing]);
    const { axle: _axle, ...lacking } = kept.record;
    const draft = readDraftText(checkFileText({ ...kept, record: lacking }));
    expect(draft?.record.advised).toEqual([first, other, nothing]);
    expect(openStored(JSON.parse(JSON.stringify(kept)))?.record.advised).toEqual([
      first,
      other,
      nothing,
    ]);
  });

  it("of a damaged row is what can be so: a part that can't be read is no “nothing fits”", () => {
    const damaged = JSON.parse(JSON.stringify(all(first, nothing)));
    damaged.record.advised.push({ ...first, part: { name: 4 } }, { ...first, sides: [] }, 7);
    expect(openStored(damaged)?.record.advised).toEqual([first, nothing]);
    damaged.record.advised = "none";
    expect(openStored(damaged)?.record).not.toHaveProperty("advised");
  });

  it("is refused with a sentence where it can't be what it says", () => {
    const faults = (change: object) => {
      const read = readCheckValue({ ...record, advised: [change] });
      return read.ok ? [] : read.faults.map(({ sentence }) => inModelUnits(sentence));
    };
    expect(faults(first)).toEqual([]);
    expect(faults(nothing)).toEqual([]);
    for (const wrong of [
      { ...first, at: "today" },
      { ...first, sides: [] },
      { ...first, part: { ...first.part, spacerMm: -1 } },
      { ...first, part: { ...first.part, verdict: "perfect" } },
      { ...first, part: { ...first.part, name: "x".repeat(201) } },
    ]) {
      expect(faults(wrong).join()).toMatch(/^The record of what was advised: /);
    }
  });

  it("in a record of version 1 had no meaning, whatever stands there", () => {
    expect(readCheckValue({ ...record, version: 1, advised: "yes", second: 3 })).toEqual({
      ok: true,
      value: { ...record, version: 2 },
    });
  });

  it("of two tabs is put together in order of time, each once", () => {
    const mine = all(first, nothing);
    const theirs = all(first, other);
    expect(mergeChecks(all(first), mine, theirs).record.advised).toEqual([first, other, nothing]);
    expect(mergeChecks(stored, stored, theirs).record.advised).toEqual([first, other]);
    expect(withMergedAdvice(record)).toBe(record);
    // Of two at one time the phone's own comes first.
    const [late, same] = [
      { ...other, at: day(9) },
      { ...nothing, at: first.at },
    ];
    expect(withMergedAdvice(record, [late, first], [same]).advised).toEqual([first, same, late]);
  });

  it("stays with the check that it was of", () => {
    const again = checkAgain(all(first), demoPack, "mm", inModelUnits);
    expect(again.before.record.advised).toEqual([first]);
    expect(again.after.record).not.toHaveProperty("advised");
  });

  it("asks for no new answer when it is kept", () => {
    const kept = withAdvice(stored, first);
    expect(isAdviceAlone(stored, kept)).toBe(true);
    expect(isAdviceAlone(stored, stored)).toBe(false);
    const moved = changeRecord(kept, (whole) => ({ ...whole, notes: "rolled" }));
    expect(isAdviceAlone(stored, moved)).toBe(false);
    const renamed = changeRecord(kept, (whole) => ({ ...whole, vehicle: { label: "Tern" } }));
    expect(isAdviceAlone(stored, renamed)).toBe(false);
    expect(isAdviceAlone(stored, { ...kept, entries: { ...stored.entries } })).toBe(false);
    expect(isAdviceAlone(stored, withChoice(kept, "left.moved", "yes"))).toBe(false);
    expect(
      isAdviceAlone(
        kept,
        changeRecord(kept, ({ corners }) => ({ ...record, corners })),
      ),
    ).toBe(true);
  });

  it("is told in words, with where it comes from", () => {
    expect(words(first)).toBe("Tall block, HL-1060, revision A, spacer 15 mm");
    expect(said(adviceGiven(first))).toBe(
      "Jun 1, 2026, parts library Halden Lane parts, edition 2026-11",
    );
    expect(words(nothing)).toBe("no part prescribed");
    const { partNumber: _number, revision: _revision, ...scaled } = first.part ?? { name: "" };
    const unnumbered = { ...first, sides: ["left"], part: scaled } as Advice;
    expect(words(unnumbered)).toBe("Tall block, class 160 N/mm, spacer 15 mm");
    expect(said(adviceGiven(unnumbered))).toContain(", left side");
    const left = advice(day(1), { change: "nothing", spacerMm: 0 });
    expect(words(left)).toBe("nothing to change, Tall block, HL-1060, revision A");
  });

  it("is the same advice whatever verdict it came with, and told where a version differs in it", () => {
    expect(isSameAdvice(first, advice(day(5), { verdict: "care", spacerMm: 15.2 }))).toBe(true);
    expect(isSameAdvice(first, advice(day(5), { spacerMm: 10 }))).toBe(false);
    expect(isSameAdvice(first, nothing)).toBe(false);
    expect(isSameAdvice(nothing, first)).toBe(false);
    expect(isSameAdvice(nothing, nothing)).toBe(true);
    for (const part of [
      { name: "Low block" },
      { partNumber: "HL-1061" },
      { revision: "B" },
      { change: "stop" },
      { spacerMm: 15.5 },
    ] as const) {
      expect(isSameAdvice(first, advice(day(1), part))).toBe(false);
    }
    const told = recordDifferences(record, { ...record, advised: [first] });
    expect(told.map(({ what }) => said(what))).toEqual(["prescribed by the app"]);
    expect(
      recordDifferences({ ...record, advised: [first] }, { ...record, advised: [first] }),
    ).toEqual([]);
  });
});
