import { describe, expect, it } from "vitest";
import { changeRecord, type StoredCheck } from "../../../src/records/check/storedCheck.ts";
import {
  chooseMoved,
  movedBetween,
  withFrictionBetween,
} from "../../../src/records/filling/movedBetween.ts";
import { storedFromRecord } from "../../../src/records/filling/storedFromRecord.ts";
import { demoRecord } from "../../screens/answer/demoChecks.ts";

/** A tire over the wheel and a shock that closes slower; friction of 3 mm on the left only. */
function withFriction(): StoredCheck {
  return changeRecord(storedFromRecord(demoRecord("arm-fits")), (record) => ({
    ...record,
    corners: record.corners.map((corner) =>
      corner.side === "left" ? { ...corner, settleMm: 3 } : corner,
    ),
  }));
}

const tolsOf = (stored: StoredCheck, side: "left" | "right") =>
  stored.record.corners
    .find((corner) => corner.side === side)
    ?.limits.map(({ reading }) => reading?.tol);

describe("a vehicle moved between gap and clearances", () => {
  it("changes nothing while nobody says so, or where it stood still", () => {
    const stored = withFriction();
    expect(movedBetween(stored, "left")).toBeNull();
    expect(withFrictionBetween(stored)).toBe(stored);
    const still = chooseMoved(stored, "left", "no");
    expect(withFrictionBetween(still)).toBe(still);
  });

  it("has the friction in the ± of that side's clearances, as far as each closes, and out of it again", () => {
    const stored = withFriction();
    const [tyre, damper] = stored.record.corners[0]?.limits ?? [];
    const moved = withFrictionBetween(chooseMoved(stored, "left", "yes"));
    expect(tolsOf(moved, "left")?.[0]).toBeCloseTo(Math.hypot(tyre?.reading?.tol ?? 0, 3), 12);
    expect(damper?.perWheel).toBeGreaterThan(0);
    expect(tolsOf(moved, "left")?.[1]).toBeCloseTo(
      Math.hypot(damper?.reading?.tol ?? 0, 3 * (damper?.perWheel ?? 0)),
      12,
    );
    expect(tolsOf(moved, "right")).toEqual(tolsOf(stored, "right"));
    expect(withFrictionBetween(moved)).toBe(moved);
    const back = withFrictionBetween(chooseMoved(moved, "left", "no"));
    expect(tolsOf(back, "left")).toEqual(tolsOf(stored, "left"));
  });

  it("has nothing to add where the friction is not known", () => {
    const unknown = chooseMoved(withFriction(), "right", "yes");
    expect(withFrictionBetween(unknown)).toBe(unknown);
  });
});
