import fc from "fast-check";
import { describe, expect, it, vi } from "vitest";
import {
  newStoredCheck,
  renameStored,
  type StoredCheck,
} from "../../src/records/check/storedCheck.ts";
import { addLimit, removeLimit, setEntry } from "../../src/records/filling/changes.ts";
import { mergeChecks } from "../../src/storage/mergeChecks.ts";
import { isSame } from "../../src/storage/sameContent.ts";

// Generated cases by the hundred take their time on a busy machine.
vi.setConfig({ testTimeout: 60_000 });

const ids = [
  "left.gap",
  "right.gap",
  "left.rideHeight",
  "left.liftedHeight",
  "left.pushedHeight",
  "pivotToStop",
  "armAngle",
  "stop.freeHeight",
  "ride.wheelRateNPerMm",
  "vehicle.liftMm",
] as const;

type Edit = readonly [id: (typeof ids)[number], text: string];

const edits: fc.Arbitrary<Edit[]> = fc.uniqueArray(
  fc.tuple(fc.constantFrom(...ids), fc.constantFrom("7", "8.5", "x", "", "1 1/2")),
  { selector: ([id]) => id, maxLength: ids.length },
);

function edited(stored: StoredCheck, all: readonly Edit[]): StoredCheck {
  return all.reduce(
    (check, [id, text]) => setEntry(check, id, { texts: [text], unit: "mm", tol: "" }),
    stored,
  );
}

describe("joining two versions of a check", () => {
  it("has every entry of both, the later one's where both changed it, and a record that agrees", () => {
    fc.assert(
      fc.property(edits, edits, edits, (before, one, two) => {
        const base = edited(newStoredCheck("Bay"), before);
        const theirs = edited(base, one);
        const mine = edited(base, two);
        const joined = mergeChecks(base, mine, theirs);
        const changed = (check: StoredCheck, id: string) =>
          !isSame(check.entries[id], base.entries[id]);
        for (const id of ids) {
          const expected = changed(mine, id) ? mine : theirs;
          expect(joined.entries[id]).toEqual(expected.entries[id]);
        }
        // The record is what those entries alone would have made.
        const rebuilt = Object.entries(joined.entries).reduce(
          (check, [id, entry]) => setEntry(check, id, entry),
          { ...newStoredCheck("Bay"), record: base.record },
        );
        expect(withoutEmpty(joined.record)).toEqual(withoutEmpty(rebuilt.record));
      }),
      { numRuns: 500 },
    );
  });

  it("changes nothing where only one side changed", () => {
    const base = newStoredCheck("Bay");
    const theirs = edited(base, [["left.gap", "7"]]);
    const { updatedAt: _, ...joined } = mergeChecks(base, base, theirs);
    const { updatedAt: _at, ...expected } = theirs;
    expect(joined).toEqual(expected);
  });

  it("a new name and a new reading live side by side", () => {
    const base = newStoredCheck("Bay");
    const joined = mergeChecks(
      base,
      edited(base, [["left.gap", "7"]]),
      renameStored(base, "Bay 2"),
    );
    expect(joined.name).toBe("Bay 2");
    expect(joined.entries["left.gap"]?.texts).toEqual(["7"]);
  });

  it("a limit taken out in one tab leaves no reading without its limit", () => {
    let base = newStoredCheck("Bay");
    for (const kind of ["tyre", "damper"] as const) {
      base = addLimit(base, "left", { kind, at: "wheel" });
    }
    const entry = (text: string) => ({ texts: [text], unit: "mm" as const, tol: "1" });
    base = setEntry(setEntry(base, "left.limits.0", entry("160")), "left.limits.1", entry("104"));
    const mine = removeLimit(base, "left", 0);
    const theirs = setEntry(base, "left.gap", entry("21"));
    const joined = mergeChecks(base, mine, theirs);
    const left = joined.record.corners[0];
    expect(left?.gap?.values).toEqual([21]);
    expect(left?.limits.map(({ kind, reading }) => [kind, reading?.values])).toEqual([
      ["damper", [104]],
    ]);
    expect(Object.keys(joined.entries).sort()).toEqual(["left.gap", "left.limits.0"]);
  });
});

/** Groups that lost their last field are the same as none. */
function withoutEmpty(value: unknown): unknown {
  return JSON.parse(
    JSON.stringify(value, (_, each: unknown) =>
      typeof each === "object" &&
      each !== null &&
      !Array.isArray(each) &&
      Object.keys(each).length === 0
        ? undefined
        : each,
    ),
  );
}
