import { describe, expect, it } from "vitest";
import { newStoredCheck, type StoredCheck } from "../../src/records/check/storedCheck.ts";
import { addLimit, setEntry } from "../../src/records/filling/changes.ts";
import { asTakenIn, joinedWithBackup, withMissing } from "../../src/storage/joinBackup.ts";

const fresh: StoredCheck = { ...newStoredCheck("Bay 1"), updatedAt: "2026-05-04T08:00:00.000Z" };
const typed = (stored: StoredCheck, id: Parameters<typeof setEntry>[1], ...texts: string[]) =>
  setEntry(stored, id, { texts, unit: "mm", tol: "1" });
const at = (stored: StoredCheck, updatedAt: string, deletedAt?: string): StoredCheck => ({
  ...stored,
  updatedAt,
  ...(deletedAt !== undefined && { deletedAt }),
});
const [first, second, third] = [
  "2026-05-04T08:00:00.000Z",
  "2026-05-05T08:00:00.000Z",
  "2026-05-06T08:00:00.000Z",
] as const;
const gap = (stored: StoredCheck) => stored.entries["left.gap"]?.texts;

describe("a backup's version as this phone takes it", () => {
  const progress = {
    step: "gap",
    skipped: ["photos"],
    cautionsFor: "raised" as const,
    stood: ["level", "wheels"],
    rightGeometry: "same" as const,
  };

  it("has what was acknowledged elsewhere acknowledged anew, before anyone goes under a vehicle", () => {
    expect(asTakenIn({ ...fresh, progress }, false)).toEqual({
      ...fresh,
      progress: { ...progress, cautionsFor: null, stood: [] },
    });
  });

  it("is as it was where this phone made it", () => {
    expect(asTakenIn({ ...fresh, progress }, true)).toEqual({ ...fresh, progress });
  });
});

describe("a check that was deleted", () => {
  const here = typed(fresh, "left.gap", "21");
  const other = typed(typed(fresh, "left.gap", "25"), "right.gap", "30");

  it("stays deleted where that was the last that became of it", () => {
    const joined = joinedWithBackup(at(here, first, third), at(other, second), false);
    expect([joined.deletedAt, gap(joined)]).toEqual([third, ["21"]]);
    expect(joined.entries["right.gap"]?.texts).toEqual(["30"]);
  });

  it("is there again where it was gone on with elsewhere later", () => {
    const joined = joinedWithBackup(at(here, first, second), at(other, third), false);
    expect(["deletedAt" in joined, gap(joined)]).toEqual([false, ["25"]]);
  });

  it("elsewhere is not deleted here", () => {
    const joined = joinedWithBackup(at(here, first), at(other, second, third), false);
    expect(["deletedAt" in joined, gap(joined)]).toEqual([false, ["25"]]);
  });
});

describe("which version is the newer", () => {
  const here = at(typed(fresh, "left.gap", "21"), second);
  const backup = at(typed(fresh, "left.gap", "25"), second);

  it("is the one here where both changed at the same moment", () => {
    expect(joinedWithBackup(here, backup, false)).toBe(here);
    expect(gap(joinedWithBackup(here, at(backup, third), false))).toEqual(["25"]);
  });

  it("is known by the count of writes on the phone that made it", () => {
    const counted = (stored: StoredCheck, revision: number) => ({ ...stored, revision });
    const late = at(backup, third);
    expect(joinedWithBackup(counted(here, 5), counted(late, 5), true)).toEqual(counted(here, 5));
    expect(gap(joinedWithBackup(counted(here, 5), counted(late, 6), true))).toEqual(["25"]);
    expect(gap(joinedWithBackup(here, counted(late, 1), true))).toEqual(["25"]);
    expect(gap(joinedWithBackup(counted(here, 1), late, true))).toEqual(["21"]);
  });
});

describe("what only the older version has", () => {
  it("comes along side by side, but no limits beside others", () => {
    const limited = (kind: "tyre" | "damper", side: "left" | "right", text: string) =>
      typed(addLimit(fresh, side, { kind, at: "wheel" }), `${side}.limits.0`, text);
    const joined = withMissing(limited("tyre", "left", "160"), limited("damper", "left", "104"));
    const limitsOf = (stored: StoredCheck, side: string) =>
      stored.record.corners
        .find((corner) => corner.side === side)
        ?.limits.map(({ kind, reading }) => [kind, reading?.values]);
    expect(limitsOf(joined, "left")).toEqual([["tyre", [160]]]);
    const both = withMissing(limited("tyre", "left", "160"), limited("damper", "right", "104"));
    expect(limitsOf(both, "left")).toEqual([["tyre", [160]]]);
    expect(limitsOf(both, "right")).toEqual([["damper", [104]]]);
  });

  it("is no field that was left empty, and one of which some repeat was typed", () => {
    const joined = withMissing(fresh, typed(typed(fresh, "left.gap", "", "21"), "right.gap", ""));
    expect(gap(joined)).toEqual(["", "21"]);
    expect("right.gap" in joined.entries).toBe(false);
  });
});
