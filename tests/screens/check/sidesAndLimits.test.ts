import { describe, expect, it } from "vitest";
import { newStoredCheck, type StoredCheck } from "../../../src/records/check/storedCheck.ts";
import {
  chooseLayout,
  chooseRightGeometry,
  setEntry,
} from "../../../src/records/filling/changes.ts";
import {
  withLimit,
  withLimitsOfLeft,
  withNoLimits,
  withoutLimit,
} from "../../../src/records/filling/limitsLookedAt.ts";
import { withSides } from "../../../src/records/filling/sides.ts";
import { stepsOf } from "../../../src/screens/guide/steps.ts";

const mm = (text: string) => ({ texts: [text], unit: "mm", tol: "" }) as const;
const plain = (text: string) => ({ texts: [text], unit: "", tol: "" }) as const;
const both = () => chooseLayout(withSides(newStoredCheck(), "both"), "arm");
const corner = (stored: StoredCheck, side: "left" | "right") =>
  stored.record.corners.find((each) => each.side === side);

describe("the sides to measure", () => {
  it("lose nothing when one is left out and taken in again", () => {
    let stored = setEntry(both(), "right.gap", mm("22"));
    stored = withLimit(stored, "right", "tyre");
    stored = setEntry(stored, "right.limits.0", mm("16o"));
    const before = corner(stored, "right");
    const left = withSides(stored, "left");
    expect(left.record.corners.map(({ side }) => side)).toEqual(["left"]);
    expect(left.entries["right.gap"]).toBeUndefined();
    const again = withSides(left, "both");
    expect(again.record.corners.map(({ side }) => side)).toEqual(["left", "right"]);
    expect(corner(again, "right")).toEqual(before);
    expect(again.entries["right.limits.0"]?.texts).toEqual(["16o"]);
    expect(again.entries).toEqual(stored.entries);
  });

  it("are left before right, whichever was chosen first", () => {
    const stored = withSides(withSides(newStoredCheck(), "right"), "both");
    expect(stored.record.corners.map(({ side }) => side)).toEqual(["left", "right"]);
  });
});

describe("same as left", () => {
  it("holds for the geometry only: gap and clearances are still asked on the right", () => {
    const stored = chooseRightGeometry(setEntry(both(), "pivotToStop", mm("152")), "same");
    const right = stepsOf(stored)
      .filter(({ section }) => section === "Right side")
      .map(({ id }) => id);
    expect(right).toEqual(["right.geometry", "right.gap", "right.rideHeight", "right.limits"]);
    expect(corner(stored, "right")?.geometry).toBeUndefined();
    expect(corner(stored, "right")?.gap).toBeUndefined();
  });

  it("puts the right side's own readings into its corner, and brings them back", () => {
    const own = setEntry(chooseRightGeometry(both(), "own"), "right.pivotToStop", mm("149"));
    expect(corner(own, "right")?.geometry?.pivotToStop?.values).toEqual([149]);
    const same = chooseRightGeometry(own, "same");
    expect(corner(same, "right")?.geometry).toBeUndefined();
    const again = chooseRightGeometry(same, "own");
    expect(corner(again, "right")?.geometry?.pivotToStop?.values).toEqual([149]);
  });
});

describe("the hard limits", () => {
  it("keep their readings apart when one before them is taken out and put back", () => {
    let stored = withLimit(withLimit(both(), "left", "tyre"), "left", "damper");
    stored = setEntry(stored, "left.limits.0", mm("168"));
    stored = setEntry(stored, "left.limits.1", mm("104"));
    stored = setEntry(stored, "left.limits.1.perWheel", plain("0.62"));
    const without = withoutLimit(stored, "left", "tyre");
    expect(corner(without, "left")?.limits).toMatchObject([
      { kind: "damper", perWheel: 0.62, reading: { values: [104] } },
    ]);
    const again = withLimit(without, "left", "tyre");
    expect(corner(again, "left")?.limits).toMatchObject([
      { kind: "damper", perWheel: 0.62, reading: { values: [104] } },
      { kind: "tyre", reading: { values: [168] } },
    ]);
  });

  it("are taken over to the right by kind and closing, not by reading", () => {
    let stored = withLimit(both(), "left", "damper");
    stored = setEntry(stored, "left.limits.0", mm("104"));
    stored = setEntry(stored, "left.limits.0.perWheel", plain("0.62"));
    const [limit] = corner(withLimitsOfLeft(stored), "right")?.limits ?? [];
    expect(limit).toMatchObject({ kind: "damper", at: "wheel", perWheel: 0.62 });
    expect(limit?.reading).toBeUndefined();
  });

  it("are emptied by “none”, and “none” is undone by choosing one", () => {
    const stored = setEntry(withLimit(both(), "left", "tyre"), "left.limits.0", mm("168"));
    const none = withNoLimits(stored, "left");
    expect(corner(none, "left")?.limits).toEqual([]);
    const step = (check: StoredCheck) => stepsOf(check).find(({ id }) => id === "left.limits");
    expect(step(none)?.state).toBe("done");
    const again = withLimit(none, "left", "tyre");
    expect(corner(again, "left")?.limits[0]?.reading?.values).toEqual([168]);
    expect(step(withoutLimit(again, "left", "tyre"))?.state).toBe("todo");
  });
});
