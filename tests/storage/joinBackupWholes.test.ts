import { describe, expect, it } from "vitest";
import { newStoredCheck, type StoredCheck } from "../../src/records/check/storedCheck.ts";
import type { Entry } from "../../src/records/entry/entry.ts";
import { addLimit, setEntry, setEstimate } from "../../src/records/filling/changes.ts";
import { asTakenIn, joinedWithBackup, withMissing } from "../../src/storage/joinBackup.ts";

const fresh: StoredCheck = { ...newStoredCheck("Bay 1"), updatedAt: "2026-05-04T08:00:00.000Z" };
const typed = (stored: StoredCheck, id: string, text: string, more: Partial<Entry> = {}) =>
  setEntry(stored, id, { texts: [text], unit: "mm", tol: "1", ...more });
const corner = (stored: StoredCheck, side: "left" | "right" = "left") =>
  stored.record.corners.find((each) => each.side === side);

/** A check of which the record has these fields, and the entries these texts. */
function holding(record: object, texts: { readonly [id: string]: string } = {}): StoredCheck {
  const entries = Object.entries(texts).map(
    ([id, text]) => [id, { texts: [text], unit: "", tol: "" }] as const,
  );
  return {
    ...fresh,
    record: { ...fresh.record, ...record },
    entries: { ...fresh.entries, ...Object.fromEntries(entries) },
  };
}

const textsOf = ({ entries }: StoredCheck) =>
  Object.fromEntries(Object.entries(entries).map(([id, { texts }]) => [id, texts[0]]));

describe("a reading that both versions have", () => {
  it("is the newer's alone: who took it, with what, and that it was measured", () => {
    const newer = typed(fresh, "left.gap", "25");
    const given = typed(fresh, "left.gap", "21", { tool: "rule", by: "I. Farrow" });
    const older: StoredCheck = {
      ...given,
      record: {
        ...given.record,
        corners: [
          { side: "left", limits: [], gap: { values: [21], tol: 1, source: "pack", by: "I. F." } },
        ],
      },
    };
    const joined = withMissing(newer, older);
    expect(corner(joined)?.gap).toEqual(corner(newer)?.gap);
    expect(joined.entries["left.gap"]).toEqual(newer.entries["left.gap"]);
  });

  it("keeps its source and who took it where only the older has it", () => {
    const gap = { values: [21], tol: 1, source: "pack", by: "I. Farrow" };
    const older = {
      ...typed(fresh, "left.gap", "21"),
      record: { ...fresh.record, corners: [{ side: "left", limits: [], gap }] },
    } as StoredCheck;
    expect(corner(withMissing(fresh, older))?.gap).toMatchObject(gap);
  });
});

describe("ride data", () => {
  const estimated = (stored: StoredCheck, name: "wheelRateNPerMm" | "unsprungMassKg") =>
    setEstimate(stored, name, { value: 30, tolerance: 3, how: "by the spring" }, "mm");

  it("that was typed is not marked as the older's estimate, nor given its ±", () => {
    const newer = setEntry(fresh, "ride.wheelRateNPerMm", { texts: ["28"], unit: "N/mm", tol: "" });
    expect(withMissing(newer, estimated(fresh, "wheelRateNPerMm")).record.ride).toEqual({
      wheelRateNPerMm: 28,
    });
    // Of a file's record nothing may ever have been typed.
    const untyped = holding({ ride: { wheelRateNPerMm: 28 } });
    const older = holding({ ride: estimated(fresh, "wheelRateNPerMm").record.ride });
    expect(withMissing(untyped, older)).toEqual(untyped);
  });

  it("that only the older has comes with its ± and how it was estimated", () => {
    const newer = setEntry(fresh, "ride.wheelRateNPerMm", {
      texts: ["28"],
      unit: "N/mm",
      tol: "2",
    });
    const older = estimated(estimated(fresh, "wheelRateNPerMm"), "unsprungMassKg");
    expect(withMissing(newer, older).record.ride).toEqual({
      wheelRateNPerMm: 28,
      unsprungMassKg: 30,
      tolerances: { wheelRateNPerMm: 2, unsprungMassKg: 3 },
      estimated: { unsprungMassKg: "by the spring" },
    });
    expect(withMissing(fresh, older).record.ride).toEqual(older.record.ride);
    expect(withMissing(holding({ ride: { payloadPerCornerKg: 80 } }), fresh).record.ride).toEqual({
      payloadPerCornerKg: 80,
    });
  });
});

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

describe("limits", () => {
  const limited = (stored: StoredCheck, kind: "tyre" | "damper", text: string) =>
    typed(addLimit(stored, "left", { kind, at: "wheel" }), "left.limits.0", text);
  const limits = (stored: StoredCheck) =>
    corner(stored)?.limits.map(({ kind, reading }) => [kind, reading?.values]);

  it("of the older come to a side of the newer that has none, with what was typed", () => {
    const newer = typed(fresh, "left.gap", "25");
    const joined = withMissing(newer, limited(typed(fresh, "left.gap", "21"), "damper", "104"));
    expect(limits(joined)).toEqual([["damper", [104]]]);
    expect(corner(joined)?.gap?.values).toEqual([25]);
    expect(textsOf(joined)).toEqual({ "left.gap": "25", "left.limits.0": "104" });
  });

  it("of the newer stand as they are, one without a reading too", () => {
    const newer = addLimit(fresh, "left", { kind: "tyre", at: "wheel" });
    const joined = withMissing(newer, limited(fresh, "damper", "104"));
    expect(limits(joined)).toEqual([["tyre", undefined]]);
    expect(textsOf(joined)).toEqual({});
  });
});

describe("the layout", () => {
  const arm = (kind: string, readings: object, texts: { readonly [id: string]: string }) =>
    holding({ layout: { kind, readings } }, texts);
  const length = (text: string) => ({ values: [Number(text)], tol: 1 });

  it("that only the older chose is taken with its readings, beside what the newer typed", () => {
    const newer = typed(fresh, "pivotToOuter", "400");
    const older = typed(arm("arm", {}, {}), "pivotToStop", "152");
    const { layout } = withMissing(newer, older).record;
    expect(layout?.kind).toBe("arm");
    expect(layout?.readings?.pivotToOuter?.values).toEqual([400]);
    expect(layout?.readings?.pivotToStop?.values).toEqual([152]);
  });

  it("of another kind in the older is not in the record, but what was typed for it waits", () => {
    const newer = arm("axle", { track: length("1500") }, {});
    const older = typed(arm("arm", {}, {}), "pivotToStop", "152");
    const joined = withMissing(newer, typed(older, "left.gap", "21"));
    expect(joined.record.layout).toEqual(newer.record.layout);
    expect(textsOf(joined)).toEqual({ pivotToStop: "152", "left.gap": "21" });
    expect(corner(joined)?.gap?.values).toEqual([21]);
  });
});

describe("a reading of the newer that can't be read", () => {
  it("is none: the record does not have the older's in its place", () => {
    const newer = typed(fresh, "left.gap", "2 5/");
    const gap = { values: [21], tol: 1 };
    const untyped = holding({ corners: [{ side: "left", limits: [], gap }] });
    for (const older of [untyped, typed(fresh, "left.gap", "21")]) {
      const joined = withMissing(newer, older);
      expect(corner(joined)).toEqual({ side: "left", limits: [] });
      expect(textsOf(joined)).toEqual({ "left.gap": "2 5/" });
    }
  });
});

describe("what is made of two readings", () => {
  it("is made of the newer's and the older's where each has one", () => {
    const newer = typed(fresh, "left.liftedHeight", "520");
    const joined = withMissing(newer, typed(fresh, "left.pushedHeight", "510"));
    expect(corner(joined)?.settleMm).toBe(5);
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
