import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Photo } from "../../src/records/check/checkRecord.ts";
import {
  changeRecord,
  newStoredCheck,
  type StoredCheck,
} from "../../src/records/check/storedCheck.ts";
import { mergeChecks } from "../../src/storage/mergeChecks.ts";

const photo = (name: string): Photo => ({ type: "image/jpeg", data: name, reading: "left.gap" });

const fresh = newStoredCheck("Tern");
function withPhotos(names: readonly string[]): StoredCheck {
  return changeRecord(fresh, (record) =>
    names.length === 0 ? record : { ...record, photos: names.map(photo) },
  );
}
const names = (check: StoredCheck) => (check.record.photos ?? []).map(({ data }) => data);

describe("photos of one check in two tabs", () => {
  it("are all there where each tab added one", () => {
    const merged = mergeChecks(withPhotos(["A"]), withPhotos(["A", "B"]), withPhotos(["A", "C"]));
    expect(names(merged)).toEqual(["A", "B", "C"]);
  });

  it("are there where one tab took out the last and the other added one", () => {
    expect(names(mergeChecks(withPhotos(["A"]), withPhotos([]), withPhotos(["A", "B"])))).toEqual([
      "B",
    ]);
  });

  it("hold what was added in either and none that was taken out in one", () => {
    const some = fc.subarray(["A", "B", "C", "D", "E", "F"]);
    fc.assert(
      fc.property(some, some, some, (base, mine, theirs) => {
        const merged = names(mergeChecks(withPhotos(base), withPhotos(mine), withPhotos(theirs)));
        expect(new Set(merged).size).toBe(merged.length);
        for (const name of "ABCDEF") {
          const [before, here, there] = [base, mine, theirs].map((all) => all.includes(name));
          expect(merged.includes(name)).toBe(before ? here && there : here || there);
        }
      }),
    );
  });
});
