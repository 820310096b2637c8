import { describe, expect, it } from "vitest";
import type { Photo } from "../../../src/records/check/checkRecord.ts";
import { changeRecord, newStoredCheck } from "../../../src/records/check/storedCheck.ts";
import { addLimit, removeCorner, removeLimit } from "../../../src/records/filling/changes.ts";

const photo = (reading?: string): Photo => ({
  type: "image/jpeg",
  data: "AAAA",
  ...(reading !== undefined && { reading }),
});

const base = ["tyre", "damper", "metal"].reduce(
  (check, kind) => addLimit(check, "left", { kind: kind as "tyre", at: "wheel" }),
  newStoredCheck(),
);
const check = changeRecord(base, (record) => ({
  ...record,
  photos: [
    photo("left.limits.0"),
    photo("left.limits.1"),
    photo("left.limits.2"),
    photo("right.limits.2"),
    photo("pivotToStop"),
    photo(),
  ],
}));
const readings = (of: typeof check) => of.record.photos?.map(({ reading }) => reading);

describe("the photos of a reading", () => {
  it("move with it where a limit before it is taken out, and go with their own", () => {
    expect(readings(removeLimit(check, "left", 1))).toEqual([
      "left.limits.0",
      "left.limits.1",
      "right.limits.2",
      "pivotToStop",
      undefined,
    ]);
  });

  it("go with a side that is taken out", () => {
    expect(readings(removeCorner(check, "left"))).toEqual([
      "right.limits.2",
      "pivotToStop",
      undefined,
    ]);
    const only = changeRecord(base, (record) => ({ ...record, photos: [photo("left.gap")] }));
    expect("photos" in removeCorner(only, "left").record).toBe(false);
  });
});
