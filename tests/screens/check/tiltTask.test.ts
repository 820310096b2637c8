import { describe, expect, it } from "vitest";
import { newStoredCheck, type StoredCheck } from "../../../src/records/check/storedCheck.ts";
import {
  degreesEntry,
  degreesText,
  recordDegrees,
  signWords,
  tiltTaskOf,
  withTilt,
  zeroWords,
} from "../../../src/screens/check/tilt/tiltTask.ts";

function checkOf(kind: "arm" | "damper" | "strut" | "axle", axle: "front" | "rear"): StoredCheck {
  const stored = newStoredCheck();
  return {
    ...stored,
    record: { ...stored.record, axle, layout: { kind }, corners: [{ side: "left", limits: [] }] },
  };
}

describe("what the tilt sensor does for a reading", () => {
  it.each([
    ["armAngle", "arm", "front", { kind: "line", pivotAt: "left" }],
    ["right.armAngle", "arm", "front", { kind: "line", pivotAt: "right" }],
    ["mountLineAngle", "damper", "rear", { kind: "line", pivotAt: "right" }],
    ["stopLineAngle", "arm", "front", { kind: "line", pivotAt: "left" }],
    ["stopLean", "arm", "rear", { kind: "lean", pivotAt: "right" }],
    ["stopLean", "damper", "front", { kind: "lean", pivotAt: "left" }],
    ["stopLean", "strut", "front", { kind: "lean", pivotAt: null }],
    ["stopLean", "axle", "rear", { kind: "lean", pivotAt: null }],
    ["left.gap", "arm", "front", null],
    ["pivotToStop", "arm", "front", null],
  ] as const)("%s of the %s layout, %s axle", (id, kind, axle, wanted) => {
    expect(tiltTaskOf(checkOf(kind, axle), id)).toEqual(wanted);
  });

  // The signs of model.md, section 1: outer end lower, and top toward the pivot, are positive.
  it.each([
    [{ kind: "line", pivotAt: "left" }, 8, 8, "lower at the wheel"],
    [{ kind: "line", pivotAt: "right" }, -3, -3, "higher at the wheel"],
    [{ kind: "lean", pivotAt: "right" }, 5, 5, "top toward the pivot"],
    [{ kind: "lean", pivotAt: "left" }, 5, -5, "top away from the pivot"],
    [{ kind: "lean", pivotAt: "left" }, -5, 5, "top toward the pivot"],
    [{ kind: "lean", pivotAt: null }, -5, 5, "from upright"],
    [{ kind: "line", pivotAt: "left" }, 0, 0, "level"],
    [{ kind: "lean", pivotAt: null }, 0.01, 0.01, "upright"],
  ] as const)("%o at %s° of the phone is %s°, %s", (task, phone, wanted, words) => {
    expect(recordDegrees(task, phone)).toBeCloseTo(wanted, 12);
    expect(signWords(task, recordDegrees(task, phone))).toBe(words);
  });

  it("writes degrees as a person does", () => {
    expect([8.2549, -0.0001, 8, -3.1159].map(degreesEntry)).toEqual(["8.25", "0", "8", "-3.12"]);
    expect([8.25, -0.04, -3.2].map(degreesText)).toEqual(["8.3°", "0.0°", "−3.2°"]);
  });

  it("adds a repeat beside what was typed, under the widest ± of them", () => {
    const typed = { texts: ["7.5", " "], unit: "deg", tol: "" } as const;
    // The catalogue's own ± of an arm angle is 0.5°.
    expect(withTilt("armAngle", typed, 8.254, 0.304)).toMatchObject({
      texts: ["7.5", "8.25"],
      tol: "0.5",
    });
    const fresh = { texts: [""], unit: "deg", tol: "" } as const;
    expect(withTilt("armAngle", fresh, 8.2, 0.304)).toMatchObject({ texts: ["8.2"], tol: "0.31" });
    const once = withTilt("armAngle", fresh, 8.2, 1.0012);
    expect(withTilt("armAngle", once, 8.4, 0.31)).toMatchObject({
      texts: ["8.2", "8.4"],
      tol: "1.01",
    });
  });

  it("says how and when the phone was zeroed, and when that is long ago", () => {
    const zero = {
      posture: "leftEdge",
      offsetDegrees: 0.2,
      scatterDegrees: 0,
      way: "turned",
      at: "2026-05-02T09:30:00.000Z",
    } as const;
    expect(zeroWords(zero, new Date("2026-05-20T09:30:00.000Z"))).toEqual({
      words: "Zeroed by turning it around, May 2, 2026.",
      old: false,
    });
    const later = zeroWords({ ...zero, way: "level" }, new Date("2026-07-01T10:00:00.000Z"));
    expect(later).toEqual({
      words: "Zeroed on a level surface, May 2, 2026. That is 60 days ago.",
      old: true,
    });
  });
});
