import { describe, expect, it } from "vitest";
import type { CheckRecord } from "../../../src/records/check/checkRecord.ts";
import { demoPack } from "../../../src/records/pack/demoPack.ts";
import type { Decision } from "../../../src/records/review/decision.ts";
import {
  isUntold,
  type PartWanted,
  tracedCheck,
  traceHeader,
  traceLine,
  wantedPart,
} from "../../../src/records/review/partTrace.ts";
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
    expect(isUntold(of(noBatch), { partNumber: "HL-1052", batch: "2611" })).toBe(true);
    expect(isUntold(of(noBatch), { partNumber: "HL-1052", revision: "A", batch: "2611" })).toBe(
      false,
    );
    expect(isUntold(of(noBatch), { partNumber: "HL-1052" })).toBe(false);
    expect(isUntold(of(fitted), { partNumber: "HL-1052", batch: "2612" })).toBe(false);
    expect(isUntold(of(noBatch), { partNumber: "HL-1072", batch: "2611" })).toBe(false);
  });

  it("is every check that the desk advised it for, the last advice counting", () => {
    const advice = [{ stop: "Tall arm block" }, { stop: "Arm block" }];
    expect(trace({ partNumber: "HL-1052" }, {}, advice)).toMatchObject({
      isAdvised: true,
      advised: "Arm block",
      asAdvised: null,
    });
    expect(trace({ partNumber: "HL-1072" }, {}, advice)).toBeNull();
    const undone = [{ stop: "Arm block" }, { kind: "undo" as const, undoes: "0" }];
    expect(trace({ partNumber: "HL-1052" }, {}, undone)).toBeNull();
  });

  it("goes by the part that the decision kept, whatever its words are", () => {
    const part = { partNumber: "HL-1052", revision: "B" };
    const spaced = [{ stop: "Block, renamed since, with a spacer of 10 mm", part }];
    expect(trace({ partNumber: "HL-1052", revision: "B" }, {}, spaced)?.isAdvised).toBe(true);
    expect(trace({ partNumber: "HL-1052", revision: "A" }, {}, spaced)).toBeNull();
    const accepted = [{ kind: "accept" as const, stop: "Arm block", part }];
    expect(trace({ partNumber: "HL-1052" }, {}, accepted)?.isAdvised).toBe(true);
    const older = [{ stop: "Arm block with a spacer of 0.39 in" }];
    expect(trace({ partNumber: "HL-1052" }, {}, older)?.isAdvised).toBe(true);
  });

  it("says whether what was advised was fitted", () => {
    const advice = [{ stop: "Arm block" }];
    expect(trace({ partNumber: "HL-1052" }, { fitted }, advice)?.asAdvised).toBe(true);
    const other = { ...fitted, partNumber: "HL-1072" };
    expect(trace({ partNumber: "HL-1052" }, { fitted: other }, advice)?.asAdvised).toBe(false);
    expect(trace({ partNumber: "HL-1052" }, { fitted })?.asAdvised).toBeNull();
  });

  it("is a line of a table", () => {
    const traced = trace({ partNumber: "HL-1052" }, { fitted });
    const line = traced ? traceLine(traced) : [];
    expect(line).toHaveLength(traceHeader.length);
    expect(line).toContain("2611");
  });

  it("is asked for by what is typed", () => {
    const typed = { partNumber: "hl1052", revision: " ", batch: "7" };
    expect(wantedPart(demoPack, typed)).toEqual({ partNumber: "HL-1052", batch: "7" });
    expect(wantedPart(demoPack, { ...typed, partNumber: " " })).toBeNull();
  });
});
