import { describe, expect, it } from "vitest";
import type { Advice, CheckRecord } from "../../../src/records/check/checkRecord.ts";
import { demoPack } from "../../../src/records/pack/demoPack.ts";
import type { Decision } from "../../../src/records/review/decision.ts";
import {
  againstWords,
  isUntold,
  type PartWanted,
  tracedCheck,
  traceHeader,
  traceLine,
  wantedPart,
} from "../../../src/records/review/partTrace.ts";
import { cellTexts } from "../../../src/saying/tableCells.ts";
import { said } from "../../../src/saying/texts.ts";
import { demoRecord } from "../../screens/answer/demoChecks.ts";

const record = demoRecord("arm-fits");
const fitted = {
  partNumber: "HL-1052",
  revision: "B",
  batch: "2611",
  spacerMm: 10,
  at: "2026-05-31T12:00:00Z",
  by: "Ada",
};

function trace(
  wanted: PartWanted,
  change: Partial<CheckRecord> = {},
  decisions: readonly Partial<Decision>[] = [],
) {
  const whole = decisions.map((each, place) => ({
    key: `${place}`,
    checkId: record.id,
    submission: "k",
    kind: "otherPart" as const,
    by: "",
    at: `2026-06-0${place + 1}T00:00:00Z`,
    note: "",
    ...each,
  }));
  return tracedCheck({ key: "k", record: { ...record, ...change } }, whole, demoPack, wanted);
}

function untold(of: CheckRecord, wanted: PartWanted, decisions: readonly Decision[] = []): boolean {
  return isUntold(of, decisions, demoPack, wanted);
}

const advised: readonly Advice[] = [
  advice({ partNumber: "HL-1072", revision: "A", spacerMm: 0, change: "stop" }),
  advice({ partNumber: "HL-1052", revision: "B", spacerMm: 10, change: "both" }),
];

function advice(part: Partial<NonNullable<Advice["part"]>>): Advice {
  return {
    at: "2026-05-20T12:00:00.000Z",
    sides: ["left", "right"],
    pack: "Halden Lane parts",
    edition: "2026-11",
    part: {
      name: "Arm block",
      spacerMm: 0,
      heightMm: 52,
      stopRateClass: 160,
      change: "stop",
      verdict: "ok",
      ...part,
    },
  };
}

describe("where a part went", () => {
  it("is every check that fitted it, of a revision or batch only those", () => {
    expect(trace({ partNumber: "hl 1052" }, { fitted })).toMatchObject({ isFitted: true });
    expect(trace({ partNumber: "HL-1052", batch: "2611" }, { fitted })?.isFitted).toBe(true);
    expect(trace({ partNumber: "HL-1052", batch: "2612" }, { fitted })).toBeNull();
    expect(trace({ partNumber: "HL-1052", revision: "A" }, { fitted })).toBeNull();
    // A part whose batch nobody noted is not in a batch that is looked for.
    const { batch: _, ...untold } = fitted;
    expect(trace({ partNumber: "HL-1052", batch: "2611" }, { fitted: untold })).toBeNull();
  });

  it("names beside them those that do not tell the revision or batch looked for", () => {
    const { batch: _, ...noBatch } = fitted;
    const of = (part: typeof noBatch) => ({ ...record, fitted: part });
    expect(untold(of(noBatch), { partNumber: "HL-1052", batch: "2611" })).toBe(true);
    expect(untold(of(noBatch), { partNumber: "HL-1052", revision: "A", batch: "2611" })).toBe(
      false,
    );
    expect(untold(of(noBatch), { partNumber: "HL-1052" })).toBe(false);
    expect(untold(of(fitted), { partNumber: "HL-1052", batch: "2612" })).toBe(false);
    expect(untold(of(noBatch), { partNumber: "HL-1072", batch: "2611" })).toBe(false);
  });

  it("is every check that the desk advised it for, the last advice counting", () => {
    const stops = [
      { stop: "Tall arm block", by: "Cy" },
      { stop: "Arm block", by: "Dee" },
    ];
    expect(trace({ partNumber: "HL-1052" }, {}, stops)).toMatchObject({
      isAdvisedByDesk: true,
      isAdvisedByApp: false,
      byDesk: { name: "Arm block", by: "Dee", partNumber: "HL-1052" },
      against: null,
    });
    expect(trace({ partNumber: "HL-1072" }, {}, stops)).toBeNull();
    const undone = [{ stop: "Arm block" }, { kind: "undo" as const, undoes: "0" }];
    expect(trace({ partNumber: "HL-1052" }, {}, undone)).toBeNull();
  });

  it("is every check whose app prescribed it, at first or at last, apart from what the desk advised", () => {
    expect(trace({ partNumber: "hl1052" }, { advised })).toMatchObject({
      isAdvisedByApp: true,
      isAdvisedByDesk: false,
      isChecked: false,
      byDesk: null,
    });
    const earlier = trace({ partNumber: "HL-1072", revision: "A" }, { advised });
    expect(earlier?.isAdvisedByApp).toBe(true);
    expect(earlier?.byApp.map(({ part }) => part?.partNumber)).toEqual(["HL-1052", "HL-1072"]);
    expect(trace({ partNumber: "HL-1072", revision: "B" }, { advised })).toBeNull();
    // The same part by both is told by both.
    const both = trace({ partNumber: "HL-1052" }, { advised }, [{ stop: "Arm block" }]);
    expect(both).toMatchObject({ isAdvisedByApp: true, isAdvisedByDesk: true });
  });

  it("has no batch of what was only advised, and names it as one that may have it", () => {
    const wanted = { partNumber: "HL-1052", batch: "2611" };
    expect(trace(wanted, { advised })).toBeNull();
    expect(untold({ ...record, advised }, wanted)).toBe(true);
    // What was fitted is told: it is that or another one.
    expect(
      untold({ ...record, advised, fitted: { ...fitted, partNumber: "HL-1072" } }, wanted),
    ).toBe(false);
    expect(untold({ ...record, advised }, { partNumber: "HL-9999", batch: "2611" })).toBe(false);
  });

  it("goes by the part that the decision kept, whatever its words are", () => {
    const part = { partNumber: "HL-1052", revision: "B" };
    const spaced = [{ stop: "Block, renamed since, with a spacer of 10 mm", part }];
    expect(trace({ partNumber: "HL-1052", revision: "B" }, {}, spaced)?.isAdvisedByDesk).toBe(true);
    expect(trace({ partNumber: "HL-1052", revision: "A" }, {}, spaced)).toBeNull();
    const accepted = [{ kind: "accept" as const, stop: "Arm block", part }];
    expect(trace({ partNumber: "HL-1052" }, {}, accepted)?.isAdvisedByDesk).toBe(true);
    const older = [{ stop: "Arm block with a spacer of 0.39 in" }];
    expect(trace({ partNumber: "HL-1052" }, {}, older)?.isAdvisedByDesk).toBe(true);
  });

  it("holds what was fitted against the desk's advice first, else the app's, else the part checked", () => {
    const wanted = { partNumber: "HL-1052" };
    const against = (
      change: Partial<CheckRecord>,
      decisions: readonly Partial<Decision>[] = [],
    ): string =>
      said(againstWords(trace(wanted, { fitted, ...change }, decisions)?.against ?? null));
    expect(against({}, [{ stop: "Arm block" }])).toBe("yes, what the review desk advised");
    expect(against({ advised }, [{ stop: "Tall arm block" }])).toBe(
      "no, another part than the review desk advised",
    );
    expect(against({ advised })).toBe("yes, what the app advised");
    expect(against({ advised, fitted: { ...fitted, spacerMm: 15 } })).toBe(
      "no, another spacer than the app advised",
    );
    expect(against({ advised, fitted: { ...fitted, revision: "C", spacerMm: 0 } })).toBe(
      "no, another revision and another spacer than the app advised",
    );
    const { part: _, ...nothing } = advice({});
    expect(against({ advised: [...advised, nothing] })).toBe(
      "no, a part where the app prescribed none",
    );
    expect(against({ stop: { ...record.stop, partNumber: "HL-1052" } })).toBe(
      "yes, what was checked",
    );
    const { partNumber: _number, ...unnumbered } = record.stop;
    expect(against({ stop: unnumbered })).toBe("not known");
  });

  it("is a line of a table, the app's and the desk's advice in columns of their own", () => {
    const traced = trace({ partNumber: "HL-1052" }, { fitted, advised }, [
      { stop: "Tall arm block", by: "Dee" },
    ]);
    const line = cellTexts(traced ? traceLine(traced) : []);
    const header = cellTexts(traceHeader);
    expect(line).toHaveLength(header.length);
    const cell = (name: string) => line[header.indexOf(name)];
    expect(cell("part advised by the app")).toBe("yes");
    expect(cell("part advised by the desk")).toBe("no");
    expect(cell("app advised")).toBe("Arm block, HL-1052, revision B, spacer 10 mm");
    expect(cell("app advised spacer mm")).toBe(10);
    expect(cell("app's parts library")).toBe("Halden Lane parts, 2026-11");
    expect(cell("app advised before")).toContain("HL-1072");
    expect(cell("desk advised by")).toBe("Dee");
    expect(cell("fitted batch")).toBe("2611");
    expect(cell("as advised")).toBe("no, another part than the review desk advised");
  });

  it("is asked for by what is typed", () => {
    const typed = { partNumber: "hl1052", revision: " ", batch: "7" };
    expect(wantedPart(demoPack, typed)).toEqual({ partNumber: "HL-1052", batch: "7" });
    expect(wantedPart(demoPack, { ...typed, partNumber: " " })).toBeNull();
  });
});
