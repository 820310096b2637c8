import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { defaultRules } from "../../../src/physics/road/index.ts";
import { demoPack } from "../../../src/records/pack/demoPack.ts";
import { readPackValue } from "../../../src/records/pack/readPack.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import {
  type ItemDraft,
  keepDraft,
  readKeptDraft,
  setTable,
  setText,
  tableUnitField,
} from "../../../src/screens/pack/itemDraft.ts";
import {
  platformDraft,
  platformOfDraft,
  withAnotherLimit,
  withoutLimit,
} from "../../../src/screens/pack/platformDraft.ts";
import { packOfRulesDraft, rulesDraft } from "../../../src/screens/pack/rulesDraft.ts";
import { stopDraft, stopOfDraft } from "../../../src/screens/pack/stopDraft.ts";

const units = ["mm", "in"] as const;
const usualEvents = defaultRules.daily.events;

function edited(draft: ItemDraft, field: string, text: string) {
  return setText(draft, field, text);
}

describe("an item that is opened and kept unchanged", () => {
  it("is the same to the last digit, in millimeters and in inches", () => {
    for (const unit of units) {
      for (const stop of demoPack.stops) {
        expect(stopOfDraft(stopDraft(stop, unit), stop, stop.id)).toEqual({ stop, faults: [] });
      }
      for (const platform of demoPack.platforms) {
        const draft = platformDraft(platform, unit);
        expect(platformOfDraft(draft, platform, platform.id)).toEqual({ platform, faults: [] });
      }
      const rules = { ...demoPack, rules: { towing: { reserveMm: 8, roadClass: "D" as const } } };
      expect(packOfRulesDraft(rulesDraft(rules, unit), rules)).toEqual({ pack: rules, faults: [] });
      const events = {
        ...demoPack,
        rules: { daily: { speedKmPerH: 72.5, allowedContactsPerKm: 3, events: usualEvents } },
      };
      expect(packOfRulesDraft(rulesDraft(events, unit), events).pack).toEqual(events);
    }
  });

  it("holds for any finite reading and tolerance", () => {
    const [stop] = demoPack.stops;
    if (!stop) throw new Error("no stop");
    const length = fc.double({ min: 1, max: 500, noNaN: true });
    fc.assert(
      fc.property(fc.array(length, { minLength: 1, maxLength: 4 }), length, (values, tol) => {
        const changed = { ...stop, freeHeight: { values, tol } };
        for (const unit of units) {
          const { stop: kept } = stopOfDraft(stopDraft(changed, unit), changed, stop.id);
          expect(kept?.freeHeight).toEqual({ values, tol });
        }
      }),
      { numRuns: 60 },
    );
  });
});

describe("a stop that is typed", () => {
  const typed = (): ItemDraft => ({
    unit: "mm",
    texts: {
      name: "Marsh block",
      duty: "impact",
      freeHeight: "2 5/16 in; 58,7",
      "freeHeight.tol": "1",
      usableCompressionMm: "30",
    },
    tables: { curve: ["10", "500", "20", "1500", "", ""] },
  });

  it("is read with units of its own, fractions and decimal commas", () => {
    const { stop, faults } = stopOfDraft(typed(), null, "marsh-block");
    expect(faults).toEqual([]);
    // 2 5/16 in × 25.4 mm/in (NIST SP 811)
    expect(stop?.freeHeight.values).toEqual([58.7375, 58.7]);
    expect(stop?.curve).toEqual([
      [10, 500],
      [20, 1500],
    ]);
    expect(readPackValue({ ...demoPack, stops: [...demoPack.stops, stop] }).ok).toBe(true);
  });

  it("reads its tables in the units that they say, and cells that say their own", () => {
    const inches = {
      ...edited(typed(), tableUnitField("curve"), "in"),
      tables: { curve: ["1", "100", "50,8 mm", "300"], damping: ["1/2", "2", "3"] },
    };
    const tested = edited(edited(inches, "testedAtSpeed", "yes"), tableUnitField("damping"), "in");
    const { stop, faults } = stopOfDraft(tested, null, "x");
    expect(faults).toEqual([]);
    // 1 in = 25.4 mm, 1 lbf = 4.4482216152605 N, 1 lbf·s/in = 0.175126835246476 N·s/mm (NIST SP 811)
    for (const [index, [depth, force]] of [
      [25.4, 444.82216152605],
      [50.8, 1334.46648457815],
    ].entries()) {
      expect(stop?.curve[index]?.[0]).toBeCloseTo(depth ?? 0, 12);
      expect(stop?.curve[index]?.[1]).toBeCloseTo(force ?? 0, 9);
    }
    const [row] = stop?.damping ?? [];
    expect(row?.[0]).toBeCloseTo(12.7, 12);
    expect(row?.[1]).toBeCloseTo(2 * 0.175126835246476, 12);
    expect(row?.[2]).toBeCloseTo(3 * 0.175126835246476, 12);
  });

  it("names what is missing and what can't be read, field by field", () => {
    const none = stopOfDraft({ unit: "mm", texts: {}, tables: {} }, null, "x");
    expect(none.stop).toBeNull();
    expect(none.faults.map(({ field }) => field)).toEqual([
      "name",
      "freeHeight",
      "usableCompressionMm",
      "curve",
    ]);
    const wrong = setTable(typed(), "curve", ["10", "5o0"]);
    const { faults } = stopOfDraft(wrong, null, "x");
    expect(faults.map(({ sentence }) => inModelUnits(sentence))[0]).toMatch(
      /^Force curve, row 1, column 2: “5o0”/,
    );
    const negative = stopOfDraft(edited(typed(), "freeHeight", "-3"), null, "x");
    expect(negative.faults.map(({ field }) => field)).toEqual(["freeHeight"]);
  });

  it("keeps an estimate's mark, and refuses one without its ±", () => {
    const draft = edited(typed(), "estimatedHow", "from Shore A 60");
    expect(stopOfDraft(draft, null, "x").faults.map(({ field }) => field)).toEqual([
      "estimatedShare",
    ]);
    const { stop } = stopOfDraft(edited(draft, "estimatedShare", "25"), null, "x");
    expect(stop?.estimated).toEqual({ how: "from Shore A 60", forceShare: 0.25 });
  });
});

describe("a part and its mounting", () => {
  const base = demoPack.stops.find(({ id }) => id === "arm-block");
  if (!base) throw new Error("no such stop");
  const put = (texts: { readonly [field: string]: string }, unit: "mm" | "in" = "mm") => {
    const draft = stopDraft(base, unit);
    return stopOfDraft({ ...draft, texts: { ...draft.texts, ...texts } }, base, base.id);
  };

  it("are read from what is chosen and typed", () => {
    const { stop, faults } = put({
      state: "discontinued",
      replacedBy: "HL-1",
      usableTolMm: "1.5",
      forceTol: "12.5",
      spacers: "5; 10; 1/2 in",
      "conditions.temperature": "20 °C",
      "mount.thread": "3/8-16",
      "mount.layouts": "strut arm",
    });
    expect(faults).toEqual([]);
    expect(stop).toMatchObject({
      state: "discontinued",
      replacedBy: "HL-1",
      usableTolMm: 1.5,
      forceTolShare: 0.125,
      spacersMm: [5, 10, 12.7],
      conditions: { temperature: "20 °C" },
    });
    expect(stop?.mount?.sizeMm).toBeCloseTo(9.525, 9);
    expect(stop?.mount?.layouts).toEqual(["arm", "strut"]);
    expect(put({ "mount.way": "" }).stop?.mount).toBeUndefined();
    expect(readPackValue({ ...demoPack, stops: [stop], platforms: [] }).ok).toBe(true);
  });

  it("say what can't be read", () => {
    const told = (texts: { readonly [field: string]: string }) =>
      put(texts).faults.map(({ field }) => field);
    expect(told({ "mount.thread": "coarse" })).toEqual(["mount.thread"]);
    expect(told({ forceTol: "130" })).toEqual(["forceTol"]);
    expect(told({ partNumber: "" })).toEqual(["partNumber"]);
    expect(told({ spacers: "5; x" })).toEqual(["spacers"]);
  });
});

describe("a platform measured by bolts and heights", () => {
  const base = demoPack.platforms.find(({ id }) => id === "brant-pickup-front");
  if (!base) throw new Error("no such platform");
  const put = (texts: { readonly [field: string]: string }) => {
    const draft = platformDraft(base, "mm");
    return platformOfDraft({ ...draft, texts: { ...draft.texts, ...texts } }, base, base.id);
  };
  const bolts = { boltSpacing: "300", frontBoltToStop: "260", rearBoltToStop: "240" };

  it("needs no length that those make", () => {
    const { platform, faults } = put({
      pivotToStop: "",
      ...bolts,
      armRole: "lower",
      stopOn: "frame",
    });
    expect(faults).toEqual([]);
    expect(platform?.layout.readings).not.toHaveProperty("pivotToStop");
    expect(platform?.layout).toMatchObject({
      armRole: "lower",
      stopOn: "frame",
      readings: { rearBoltToStop: { values: [240], tol: 0 } },
    });
    expect(readPackValue({ ...demoPack, platforms: [platform] }).ok).toBe(true);
  });

  it("needs all of them, and years in their order", () => {
    const told = (texts: { readonly [field: string]: string }) =>
      put(texts).faults.map(({ field }) => field);
    expect(told({ pivotToStop: "", ...bolts, rearBoltToStop: "" })).toEqual(["pivotToStop"]);
    expect(told({ "years.from": "2020", "years.to": "2019" })).toEqual(["years.to"]);
    expect(told({ "years.from": "20.5" })).toEqual(["years.from"]);
    expect(put({ "years.to": "", trims: "Work;; Crew " }).platform).toMatchObject({
      years: { from: 2014 },
      trims: ["Work", "Crew"],
    });
  });
});

describe("a platform's hard limits", () => {
  it("are added and taken out, those behind moving up", () => {
    const platform = demoPack.platforms.find(({ limits }) => limits.length === 3);
    if (!platform) throw new Error("no such platform");
    const draft = platformDraft(platform, "mm");
    const fewer = platformOfDraft(withoutLimit(draft, 1), platform, platform.id).platform;
    expect(fewer?.limits).toEqual([platform.limits[0], platform.limits[2]]);
    const more = withAnotherLimit(draft);
    expect(platformOfDraft(more, platform, platform.id).faults).toHaveLength(1);
    const filled = platformOfDraft(edited(more, "limits.3", "99"), platform, platform.id).platform;
    expect(filled?.limits[3]).toEqual({
      kind: "tyre",
      at: "wheel",
      reading: { values: [99], tol: 0 },
    });
  });
});

describe("a draft left unfinished", () => {
  it("is there again, and gone once it is kept", () => {
    const draft = stopDraft(null, "in");
    keepDraft("stop.new", { draft, base: "null" });
    expect(readKeptDraft("stop.new")).toEqual({ draft, base: "null" });
    keepDraft("stop.new", null);
    expect(readKeptDraft("stop.new")).toBeNull();
  });
});
