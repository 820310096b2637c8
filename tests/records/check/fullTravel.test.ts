import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { completeRecord } from "../../../src/records/check/completeRecord.ts";
import {
  atRideEntryId,
  changeFullTravel,
  contactEntryId,
  contactsFound,
  fullTravelCheckOf,
  noFullTravel,
  withFullTravelEntries,
  withNote,
} from "../../../src/records/check/fullTravel.ts";
import { readCheckText } from "../../../src/records/check/readCheck.ts";
import { readFullTravel } from "../../../src/records/check/readFullTravel.ts";
import type { StoredCheck } from "../../../src/records/check/storedCheck.ts";
import { setEntry } from "../../../src/records/filling/changes.ts";
import { storedFromRecord } from "../../../src/records/filling/storedFromRecord.ts";
import { unpack } from "../../../src/sharing/compression.ts";
import { packCheck } from "../../../src/sharing/shareLink.ts";
import { fromShortText } from "../../../src/sharing/shortText.ts";
import { demoRecord } from "../../support/demoRecords.ts";

const demo = (): StoredCheck => storedFromRecord(demoRecord("arm-fits"));

function typed(stored: StoredCheck, id: string, text: string, tol = ""): StoredCheck {
  const changed = setEntry(stored, id, { texts: [text], unit: "mm", tol });
  return changeFullTravel(changed, (record) => record);
}

describe("the record's field fullTravel", () => {
  it("is not there until something is written down, and then holds what was typed", () => {
    expect(readFullTravel(demo().record)).toBeNull();
    const stop = contactEntryId("left", "stop", "wheelTravel");
    const stored = typed(typed(demo(), stop, "58,5", "2"), atRideEntryId("right"), "520");
    const found = readFullTravel(stored.record);
    expect(found).toMatchObject({ acknowledged: null, measure: "wheelTravel", movement: "both" });
    expect(found?.corners[0]).toEqual({
      side: "left",
      contacts: { stop: { reading: { values: [58.5], tol: 2, typed: ["58,5 mm"] } } },
    });
    expect(found?.corners[1]?.atRide?.values).toEqual([520]);
    expect(found && contactsFound(found)).toBe(1);
    expect(found && fullTravelCheckOf(found).corners[0]?.contacts.stop?.values).toEqual([58.5]);
  });

  it("keeps travel and height apart, so that changing the way loses neither", () => {
    const travel = typed(demo(), contactEntryId("left", "tyre", "wheelTravel"), "160");
    const heights = changeFullTravel(travel, (record) => ({ ...record, measure: "hubToArch" }));
    expect(readFullTravel(heights.record)?.corners[0]?.contacts).toEqual({});
    const both = typed(heights, contactEntryId("left", "tyre", "hubToArch"), "355");
    expect(readFullTravel(both.record)?.corners[0]?.contacts.tyre?.reading?.values).toEqual([355]);
    const back = changeFullTravel(both, (record) => ({ ...record, measure: "wheelTravel" }));
    expect(readFullTravel(back.record)?.corners[0]?.contacts.tyre?.reading?.values).toEqual([160]);
  });

  it("holds what touched in the person's own words, and lets it go again", () => {
    const noted = changeFullTravel(demo(), (record) =>
      withNote(withNote(record, "left", "hose", "brake hose"), "right", "hose", "wire"),
    );
    expect(readFullTravel(noted.record)?.corners[0]?.contacts.hose).toEqual({ note: "brake hose" });
    const gone = changeFullTravel(noted, (record) => withNote(record, "left", "hose", ""));
    expect(readFullTravel(gone.record)?.corners.map(({ contacts }) => contacts)).toEqual([
      {},
      { hose: { note: "wire" } },
    ]);
  });

  it("goes with the file and the link, and its numbers can be changed where it came in", () => {
    const id = contactEntryId("left", "stop", "wheelTravel");
    const stored = typed(demo(), id, "58.5", "2");
    const complete = completeRecord(stored);
    if (!complete.ok) throw new Error("incomplete");
    const read = readCheckText(JSON.stringify(complete.value));
    if (!read.ok) throw new Error(read.fault.code);
    expect(read.value.fullTravel).toEqual(stored.record.fullTravel);
    const packed = packCheck(complete.value);
    if (!packed.ok) throw new Error(packed.fault.code);
    const text = unpack(packed.value.body);
    const opened = readCheckText(fromShortText(text.ok ? text.value : ""));
    expect(opened.ok && opened.value.fullTravel).toEqual(stored.record.fullTravel);

    const received = storedFromRecord(read.value);
    expect(received.entries[id]).toBeUndefined();
    const ready = withFullTravelEntries(received, "mm");
    expect(ready.entries[id]).toMatchObject({ texts: ["58.5"], unit: "mm", tol: "2" });
    expect(withFullTravelEntries(ready, "mm")).toBe(ready);
    const changed = changeFullTravel(ready, (record) => ({ ...record, movement: "one" }));
    expect(readFullTravel(changed.record)?.corners[0]?.contacts.stop?.reading?.values).toEqual([
      58.5,
    ]);
  });

  it.each([
    ["a number", 5],
    ["a text", "none"],
    ["a list", [1]],
    ["other sides", { corners: [{ side: "middle" }, 4, null] }],
    [
      "no readings",
      { corners: [{ side: "left", contacts: { stop: { reading: { values: [] } } } }] },
    ],
    [
      "a reading without ±",
      { corners: [{ side: "left", contacts: { stop: { reading: { values: [1] } } } }] },
    ],
    ["a value too great", { corners: [{ side: "left", atRide: { values: [1e12], tol: 1 } }] }],
    ["a ± below 0", { corners: [{ side: "left", atRide: { values: [1], tol: -1 } }] }],
    [
      "a note too long",
      { corners: [{ side: "left", contacts: { hose: { note: "x".repeat(999) } } }] },
    ],
  ])("is passed over where it is %s", (_, fullTravel) => {
    const read = readFullTravel({ fullTravel });
    expect(read && contactsFound(read)).toBe(0);
    expect(JSON.stringify(read).length).toBeLessThan(400);
  });

  it("is read from anything at all without a fault, to numbers only", () => {
    fc.assert(
      fc.property(fc.anything(), (fullTravel) => {
        const read = readFullTravel({ fullTravel });
        expect(read === null || fullTravelCheckOf(read).corners.length <= 2).toBe(true);
      }),
    );
    expect(noFullTravel.corners).toEqual([]);
  });
});
