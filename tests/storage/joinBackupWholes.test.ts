import { describe, expect, it } from "vitest";
import type { StoredCheck } from "../../src/records/check/storedCheck.ts";
import { asTakenIn, joinedWithBackup, withMissing } from "../../src/storage/joinBackup.ts";
import { fresh, holding, textsOf, typed } from "./support/holding.ts";

describe("what was fitted", () => {
  const fitted = (partNumber: string, more: object = {}) => ({
    fitted: { partNumber, spacerMm: 0, at: "2026-05-01T00:00:00.000Z", by: "M. Lind", ...more },
  });

  it("is one version's: no part with another's batch", () => {
    const newer = holding(fitted("A-1"), { "fitted.partNumber": "A-1" });
    const older = holding(fitted("B-2", { revision: "2", batch: "77", odometer: 12 }), {
      "fitted.partNumber": "B-2",
      "fitted.batch": "77",
    });
    const joined = withMissing(newer, older);
    expect(joined.record.fitted).toEqual(newer.record.fitted);
    expect(textsOf(joined)).toEqual({ "fitted.partNumber": "A-1" });
    const filled = withMissing(fresh, older);
    expect(filled.record.fitted).toEqual(older.record.fitted);
    expect(textsOf(filled)).toEqual(textsOf(older));
  });
});

describe("what waits beside the record", () => {
  const waits = (name: string): Partial<StoredCheck> => ({ aside: { handStop: { name } } });
  const asideHeight = (text: string) => ({ "aside.stop.hand.stop.freeHeight": text });

  it("goes on waiting where a version without it is joined in", () => {
    const newer: StoredCheck = { ...holding({}, asideHeight("61")), ...waits("Tall") };
    const joined = withMissing(newer, typed(fresh, "left.gap", "21"));
    expect(joined.aside).toEqual(newer.aside);
    expect(textsOf(joined)).toEqual({ ...asideHeight("61"), "left.gap": "21" });
  });

  it("is the newer's whole where both have some, and the older's where only that has", () => {
    const newer: StoredCheck = { ...fresh, ...waits("Tall") };
    const older: StoredCheck = {
      ...holding({}, { ...asideHeight("30"), "aside.left.gap": "7" }),
      aside: { handStop: { name: "Short", batch: "7" }, left: { side: "left", limits: [] } },
    };
    const joined = withMissing(newer, older);
    expect(joined.aside).toEqual(newer.aside);
    expect(textsOf(joined)).toEqual({});
    const filled = withMissing(fresh, older);
    expect(filled.aside).toEqual(older.aside);
    expect(textsOf(filled)).toEqual(textsOf(older));
  });

  it("values from before a reading was taken anew stay, and those of other readings come along", () => {
    const earlier = (of: object) => ({ ...fresh, earlier: of }) as unknown as StoredCheck;
    const newer = earlier({ "left.gap": [{ texts: ["20"] }] });
    const older = earlier({
      "left.gap": [{ texts: ["18"] }, { texts: ["19"] }],
      "right.gap": [{ texts: ["30"] }],
    });
    expect(withMissing(newer, fresh).earlier).toEqual(newer.earlier);
    expect(withMissing(newer, older).earlier).toEqual({ ...older.earlier, ...newer.earlier });
    expect(withMissing(fresh, older).earlier).toEqual(older.earlier);
  });
});

describe("things of which each version has another", () => {
  const cases: readonly (readonly [string, object, object])[] = [
    [
      "a job gets no number of another job",
      { job: { id: "1", label: "Marlow" } },
      { job: { id: "2", label: "Tern", number: "4107", customer: "I. Farrow" } },
    ],
    [
      "a person gets no address of another person",
      { author: { role: "installer", name: "M. Lind" } },
      { author: { role: "support", name: "I. Farrow", contact: "desk" } },
    ],
    [
      "a parts library is not said to hold another's vehicle",
      { reference: { pack: "House", rules: {} } },
      { reference: { pack: "Other", platform: { id: "tern" } } },
    ],
    [
      "an edition of it is not said to hold another edition's vehicle",
      { reference: { pack: "House", edition: "2", rules: {} } },
      { reference: { pack: "House", edition: "1", platform: { id: "tern" } } },
    ],
  ];
  it.each(cases)("%s", (_, newer, older) => {
    const joined = withMissing(holding(newer), holding(older));
    expect(joined.record).toEqual(holding(newer).record);
  });

  it("what one and the same has in the older version alone comes along", () => {
    const joined = withMissing(
      holding({ job: { id: "1", label: "Marlow" }, author: { role: "installer" } }),
      holding({
        job: { id: "1", label: "Marlo", number: "4107" },
        author: { role: "support", name: "I. Farrow" },
      }),
    );
    expect(joined.record.job).toEqual({ id: "1", label: "Marlow", number: "4107" });
    expect(joined.record.author).toEqual({ role: "installer", name: "I. Farrow" });
    const named = withMissing(
      holding({ author: { role: "installer", name: "M. Lind" } }),
      holding({ author: { role: "installer", contact: "bench" } }),
    );
    expect(named.record.author).toEqual({ role: "installer", name: "M. Lind", contact: "bench" });
  });

  const gaps = (text: string) => ({ values: [Number(text)], tol: 1 });
  const second = (by: string, id: string, text: string) =>
    holding(
      { second: { by, at: "2026-05-01T00:00:00.000Z", readings: { [id]: gaps(text) } } },
      { [`second.${id}`]: text },
    );

  it("a second person's readings stay that person's", () => {
    const newer = second("M. Lind", "left.gap", "21");
    const other = withMissing(newer, second("I. Farrow", "right.gap", "30"));
    expect(other.record.second).toEqual(newer.record.second);
    expect(textsOf(other)).toEqual({ "second.left.gap": "21" });
    const same = withMissing(newer, second("M. Lind", "right.gap", "30"));
    expect(same.record.second?.readings).toEqual({
      "left.gap": gaps("21"),
      "right.gap": gaps("30"),
    });
    expect(textsOf(same)).toEqual({ "second.left.gap": "21", "second.right.gap": "30" });
  });

  const travel = (how: object, side: string, text: string) =>
    holding(
      {
        fullTravel: {
          acknowledged: null,
          measure: "wheelTravel",
          movement: "both",
          corners: [{ side, contacts: { stop: { reading: gaps(text) } } }],
          ...how,
        },
      },
      { [`fullTravel.${side}.stop.wheelTravel`]: text },
    );

  it.each([[{ measure: "hubToArch" }], [{ movement: "one" }]])(
    "a check of the whole travel has no heights of one that was made otherwise: %j",
    (how) => {
      const newer = travel({}, "left", "41");
      const joined = withMissing(newer, travel(how, "right", "87"));
      expect(joined.record.fullTravel).toEqual(newer.record.fullTravel);
      expect(textsOf(joined)).toEqual({ "fullTravel.left.stop.wheelTravel": "41" });
    },
  );

  it("a check of the whole travel made alike has the sides of both", () => {
    const joined = withMissing(travel({}, "left", "41"), travel({}, "right", "87"));
    expect(joined.record.fullTravel?.corners.map(({ side }) => side)).toEqual(["left", "right"]);
    expect(textsOf(joined)).toEqual({
      "fullTravel.left.stop.wheelTravel": "41",
      "fullTravel.right.stop.wheelTravel": "87",
    });
  });
});

describe("a stop that has no name yet, and photos", () => {
  it("are the newer's alone where it has any, else the older's", () => {
    const photo = (data: string) => ({ type: "image/png", data });
    const newer = holding({ stop: { usableCompressionMm: 40 }, photos: [photo("AAAA")] });
    const older = holding({
      stop: { usableCompressionMm: 30, restLoss: 0.2 },
      photos: [photo("BBBB"), photo("CCCC")],
    });
    const { stop, photos } = withMissing(newer, older).record;
    expect([stop, photos]).toEqual([newer.record.stop, newer.record.photos]);
    const filled = withMissing(fresh, older).record;
    expect([filled.stop, filled.photos]).toEqual([older.record.stop, older.record.photos]);
  });
});

describe("lists that a person chose", () => {
  it("stand where they are empty: no demand comes back that was taken out", () => {
    const landing = { kind: "landing", heightM: 0.1 };
    const joined = withMissing(
      holding({ rules: { events: [] } }),
      holding({ rules: { events: [landing], reserveMm: 5 } }),
    );
    expect(joined.record.rules).toEqual({ events: [], reserveMm: 5 });
  });
});

describe("the cautions of the check of the whole travel", () => {
  const acknowledged = (stored: StoredCheck): StoredCheck => ({
    ...stored,
    record: {
      ...stored.record,
      fullTravel: {
        acknowledged: "2026-05-04T08:00:00.000Z",
        measure: "wheelTravel",
        movement: "both",
        corners: [],
      },
    },
    entries: { "fullTravel.cautions": { texts: ["stands", "spring"], unit: "", tol: "" } },
  });

  it("that someone acknowledged on another phone are acknowledged anew on this one", () => {
    const taken = asTakenIn(acknowledged(typed(fresh, "left.gap", "21")), false);
    expect(taken.record.fullTravel).toMatchObject({ acknowledged: null, measure: "wheelTravel" });
    expect(textsOf(taken)).toEqual({});
    const given = { ...acknowledged(fresh), updatedAt: "2026-05-05T08:00:00.000Z" };
    const joined = joinedWithBackup(fresh, asTakenIn(given, false), false);
    expect(joined.record.fullTravel?.acknowledged).toBeNull();
  });

  it("that were acknowledged on this phone hold", () => {
    const early = { updatedAt: fresh.updatedAt };
    expect(asTakenIn(acknowledged(fresh), true)).toEqual(acknowledged(fresh));
    const joined = joinedWithBackup(
      { ...acknowledged(fresh), updatedAt: "2026-05-05T08:00:00.000Z" },
      asTakenIn(acknowledged({ ...typed(fresh, "left.gap", "21"), ...early }), false),
      false,
    );
    expect(joined.record.fullTravel?.acknowledged).toBe("2026-05-04T08:00:00.000Z");
  });

  it("leave all else of a backup's check as it is", () => {
    const check = typed(fresh, "left.gap", "21");
    const taken = asTakenIn(check, false);
    expect(taken.entries).toEqual(check.entries);
    expect("fullTravel" in taken.record).toBe(false);
  });
});
