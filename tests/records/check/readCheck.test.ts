import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it, vi } from "vitest";
import { readingName } from "../../../src/physics/readingNames.ts";
import type { CheckRecord } from "../../../src/records/check/checkRecord.ts";
import { fitmentOf } from "../../../src/records/check/fitmentOf.ts";
import { readCheckText, readCheckValue } from "../../../src/records/check/readCheck.ts";
import { recordBounds } from "../../../src/records/check/recordFormat.ts";
import { entryName } from "../../../src/records/entry/readingCatalogue.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { said } from "../../../src/saying/texts.ts";
import { anyRecord } from "../arbitraries.ts";

// Generated records by the hundred take their time on a busy machine.
vi.setConfig({ testTimeout: 60_000 });

const folder = new URL("../../../demo-data/checks/", import.meta.url);
const texts = readdirSync(folder).map((file) => readFileSync(new URL(file, folder), "utf8"));

type Loose = { [field: string]: Loose } & { [index: number]: Loose };

/** The first demo check, of today's version, with something done to it. */
function altered(change: (record: Loose) => void): string {
  const record = { ...JSON.parse(texts[0] ?? ""), version: 2 };
  change(record);
  return JSON.stringify(record);
}

function faults(text: string): string[] {
  const outcome = readCheckText(text);
  return outcome.ok ? [] : outcome.faults.map(({ sentence }) => inModelUnits(sentence));
}

function set(path: string, value: unknown): (record: Loose) => void {
  return (record) => {
    const keys = path.split(".");
    const last = keys.pop() ?? "";
    let at: Loose = record;
    for (const key of keys) at = at[key] as Loose;
    if (value === undefined) delete at[last];
    else at[last] = value as Loose;
  };
}

describe("what is read", () => {
  it("is every demo check, unaltered", () => {
    expect(texts).toHaveLength(17);
    for (const text of texts) {
      const value = { ...JSON.parse(text), version: 2 };
      expect(readCheckText(text)).toEqual({ ok: true, value });
    }
  });

  it("is every generated record, unknown fields and all, byte for byte after a trip through text", () => {
    fc.assert(
      fc.property(anyRecord, (record) => {
        const text = JSON.stringify(record);
        const outcome = readCheckText(text);
        if (!outcome.ok) throw new Error(inModelUnits(outcome.fault.sentence));
        expect(JSON.stringify(outcome.value)).toBe(text);
      }),
      { numRuns: 300 },
    );
  });

  it("keeps unknown fields at every level", () => {
    const text = altered((record) => {
      for (const path of ["extra", "stop.extra", "corners.0.extra", "corners.0.gap.extra"]) {
        set(path, { constructor: [1, { deep: null }] })(record);
      }
      set("layout.readings.extra", "x")(record);
    });
    const outcome = readCheckText(text);
    expect(outcome.ok && JSON.stringify(outcome.value)).toBe(text);
  });

  it("allows a byte order mark, a lean and a lift of either sign, and ride data that are part unknown", () => {
    expect(readCheckText(`\uFEFF${texts[0]}`).ok).toBe(true);
    expect(faults(altered(set("layout.readings.stopLean.values", [-5])))).toEqual([]);
    expect(faults(altered(set("vehicle.liftMm", -30)))).toEqual([]);
    expect(faults(altered(set("ride", undefined)))).toEqual([]);
    expect(faults(altered(set("ride", { wheelRateNPerMm: 28 })))).toEqual([]);
    expect(faults(altered(set("stop.curve.0", [0, 0])))).toEqual([]);
  });

  it("gives the assessment what it needs", () => {
    const record: CheckRecord = JSON.parse(texts[0] ?? "");
    const fitment = fitmentOf(record);
    expect(fitment.use).toBe("daily");
    expect(fitment.corners).toEqual(record.corners);
    expect("rules" in fitment).toBe(false);
  });
});

describe("what is refused, in a sentence that names the field in plain words", () => {
  const cases: readonly (readonly [string, unknown, string])[] = [
    ["corners.0.gap.values", [], "The left gap: its list of values must hold at least one."],
    ["corners.0.gap.values", ["21"], "The left gap: value 1 must be a number, not “21”."],
    ["corners.1.gap.values", [22, -1], "The right gap: no value can be below 0."],
    ["corners.1.gap.tol", -1, "The right gap: its ± cannot be below 0."],
    ["corners.0.gap", undefined, "The left gap: is missing."],
    [
      "corners.0.side",
      "right",
      "The corners: both are marked right. One must be left and the other right.",
    ],
    ["corners.0.side", "top", "The side of the first corner: must be left or right, not “top”."],
    ["corners", [], "The corners: must hold at least one."],
    [
      "corners.0.limits.0.kind",
      "wall",
      "The kind of clearance 1 of the left corner: must be tyre, damper, spring, metal or other, not “wall”.",
    ],
    [
      "corners.0.limits.1.reading.values",
      [-2],
      "The left shock travel left: every value must be more than 0.",
    ],
    ["corners.0.limits.0.perWheel", 0, "The closing per wheel travel must be more than 0."],
    ["layout.kind", "leaf", "The kind of layout: is “leaf”, which is not known."],
    [
      "layout.readings.pivotToOuter",
      undefined,
      "The distance from pivot to outer joint: is missing.",
    ],
    [
      "layout.readings.armAngle.values",
      [90],
      "The arm angle: an angle here is less than 90° either way.",
    ],
    [
      "layout.wheelPerOuter",
      -1,
      "The wheel travel per travel of the outer joint must be more than 0.",
    ],
    ["vehicle.label", " ", "The name of the vehicle: must not be empty."],
    [
      "vehicle.use",
      "racing",
      "The use of the vehicle: must be daily, towing or offroad, not “racing”.",
    ],
    [
      "author.role",
      null,
      "The role of the author: must be installer, customer or support, not null.",
    ],
    [
      "createdAt",
      "2026-02-30T09:30:00Z",
      "The date of the check: is not a date and time in UTC, as 2026-05-02T09:30:00Z.",
    ],
    [
      "createdAt",
      "2026-05-02T09:30:00+02:00",
      "The date of the check: is not a date and time in UTC, as 2026-05-02T09:30:00Z.",
    ],
    ["id", "17", "The id of the check: is not a UUID."],
    [
      "stop.usableCompressionMm",
      60,
      "The usable compression of the stop must be less than its free height.",
    ],
    ["stop.usableCompressionMm", 0, "The usable compression of the stop must be more than 0."],
    [
      "stop.damping",
      [[0, 1, 1]],
      "The damping of the stop: there is damping, but the stop is not marked as tested at speed. Damping comes only from tests at speed.",
    ],
    [
      "stop.curve.3",
      [16.5],
      "The force curve of the stop: point 4 must hold at least 2, and holds 1.",
    ],
    [
      "stop.curve.3.1",
      "much",
      "The force curve of the stop: point 4, force, must be a number, not “much”.",
    ],
    [
      "stop.curve.3.1",
      2000,
      "The force curve of the stop: the force of point 4 is not above the point before it. Every point must lie deeper and push harder than the one before.",
    ],
    [
      "stop.curve.3.0",
      12.375,
      "The force curve of the stop: the depth of point 4 is not above the point before it. Every point must lie deeper and push harder than the one before.",
    ],
    [
      "stop.curve.0",
      [0, 12],
      "The force curve of the stop: the depth of point 1 is not above 0. Every point must lie deeper and push harder than the one before.",
    ],
    ["ride.wheelRateNPerMm", 0, "The wheel rate must be more than 0."],
    ["ride.payloadPerCornerKg", -1, "The payload cannot be below 0."],
    ["ride.tolerances", { wheelRateNPerMm: -1 }, "The wheel rate: its ± cannot be below 0."],
    [
      "ride.estimated",
      { wheelRateNPerMm: 3 },
      "The source of the wheel rate: must be text, not 3.",
    ],
    ["rules", { roadClass: "Z" }, "The road class: must be A, B, C, D or E, not “Z”."],
    ["rules", { accelerationCapG: 0 }, "The greatest acceleration allowed must be more than 0."],
    [
      "rules",
      { events: [{ kind: "landing", heightM: -0.1 }] },
      "The rules: event 1 has a height, length or speed that is not more than 0.",
    ],
    [
      "rules",
      { events: [{ kind: "obstacle", heightM: 0.1 }] },
      "The length of event 1 in the requirements: is missing.",
    ],
    [
      "photos",
      [{ type: "text/html", data: "" }],
      "The type of photo 1: must be image/jpeg, image/png or image/webp, not “text/html”.",
    ],
    ["photos", [{ type: "image/png", data: "<script>" }], "The data of photo 1: is not base64."],
    ["notes", 5, "The notes: must be text, not 5."],
    ["corners.0.gap.values", [1e10], "The left gap: value 1 is far too large to be a measurement."],
  ];
  it.each(cases)("%s = %j", (path, value, sentence) => {
    expect(faults(altered(set(path, value)))).toContain(sentence);
  });

  it("damping that is tested must be in order and not below 0", () => {
    const tested = (damping: unknown) =>
      faults(
        altered((record) => {
          set("stop.testedAtSpeed", true)(record);
          set("stop.damping", damping)(record);
        }),
      );
    expect(
      tested([
        [0, 1, 1],
        [12, 2, 3],
      ]),
    ).toEqual([]);
    expect(
      tested([
        [0, 1, 1],
        [0, 2, 3],
      ])[0],
    ).toMatch(/depth of row 2 is not above the row before/);
    expect(tested([[0, 1, -1]])[0]).toMatch(/row 1 has a value below 0/);
  });

  it("several faults are told one by one, the first three together", () => {
    const text = altered((record) => {
      set("corners.0.gap.tol", -1)(record);
      set("corners.1.gap", undefined)(record);
      set("axle", "middle")(record);
      set("stop.name", "")(record);
    });
    expect(faults(text)).toHaveLength(4);
    const outcome = readCheckText(text);
    if (outcome.ok) throw new Error("read");
    expect(inModelUnits(outcome.fault.sentence)).toMatch(/There is 1 more fault\.$/);
  });

  it("another format and a newer version are told apart", () => {
    expect(faults(altered(set("format", "other-check")))).toEqual([
      "The file is not a fitment check: its format is “other-check”.",
    ]);
    expect(faults(altered(set("format", undefined)))[0]).toMatch(/does not say that it is one/);
    expect(faults(altered(set("version", 3)))).toEqual([
      "The file was made by a newer version of Stopfit (record version 3); this one reads up to version 2. Update Stopfit, then open it again.",
    ]);
    expect(faults(altered(set("version", "1")))[0]).toMatch(/which version of the record/);
    for (const other of ["[]", "3", "null", '"text"', "{}"]) {
      expect(faults(other)[0]).toMatch(/is not a fitment check/);
    }
  });

  it("a record with any one field taken out or made something else is read or told, never thrown at", () => {
    const rubbish = fc.constantFrom<unknown>(undefined, null, "", -1, 0, [], {}, true, "x", [[]]);
    fc.assert(
      fc.property(anyRecord, fc.nat(), rubbish, (record, pick, value) => {
        const copy = JSON.parse(JSON.stringify(record));
        const paths = pathsOf(copy);
        const path = paths[pick % paths.length] ?? [];
        const last = path.at(-1) ?? "";
        let at = copy;
        for (const key of path.slice(0, -1)) at = at[key];
        if (value === undefined) delete at[last];
        else at[last] = value;
        const outcome = readCheckText(JSON.stringify(copy));
        if (outcome.ok) return;
        for (const { sentence } of outcome.faults) {
          const words = inModelUnits(sentence);
          expect(words).toMatch(/^The .*\.$/s);
          expect(words).not.toMatch(/undefined|NaN|\[object/);
        }
      }),
      { numRuns: 300 },
    );
  });
});

function pathsOf(value: unknown, path: string[] = []): string[][] {
  if (typeof value !== "object" || value === null) return path.length === 0 ? [] : [path];
  const inner = Object.entries(value).flatMap(([key, each]) => pathsOf(each, [...path, key]));
  return path.length === 0 ? inner : [path, ...inner];
}

describe("text meant to harm", () => {
  it("a limit whose kind is an object without words of its own is told, not thrown at", () => {
    const text = altered((record) => {
      const limits = (record.corners?.[0]?.limits ?? []) as unknown as Loose[];
      Object.assign(limits[0] as Loose, { kind: { toString: 1 } });
    });
    expect(faults(text)).toHaveLength(1);
  });

  it("100 000 brackets, closed or not", () => {
    expect(faults("[".repeat(100_000))[0]).toMatch(/more than 40 deep/);
    expect(faults("[".repeat(100_000) + "]".repeat(100_000))[0]).toMatch(/more than 40 deep/);
    const deep = `{"a":`.repeat(100_000);
    expect(faults(deep)[0]).toMatch(/more than 40 deep/);
    let value: unknown = 1;
    for (let depth = 0; depth < 100_000; depth += 1) value = { value };
    const outcome = readCheckValue(value);
    expect(outcome.ok).toBe(false);
  });

  it("numbers too large to hold, in a known field and in an unknown one", () => {
    const infinite = altered(set("corners.0.gap.values", ["@"])).replace('"@"', "1e999");
    expect(faults(infinite)[0]).toMatch(/a number in “values” is too large/);
    expect(faults(altered(set("x", "@")).replace('"@"', "-1e999"))[0]).toMatch(
      /in “x” is too large/,
    );
    expect(readCheckValue({ format: "stopfit-check", version: Number.NaN }).ok).toBe(false);
  });

  it("__proto__, plain or spelled out, at any depth, changes nothing", () => {
    const plain = altered(() => undefined).replace(
      '{"kind":"tyre"',
      '{"__proto__":{"at":"stop"},"kind":"tyre"',
    );
    const spelled = plain.replace("__proto__", "\\u005f_proto\\u005f_");
    for (const text of [plain, spelled]) {
      expect(text).not.toBe(texts[0]);
      expect(faults(text)[0]).toMatch(/“__proto__”, which no check has/);
    }
    expect(readCheckValue(JSON.parse('{"__proto__": {"format": "stopfit-check"}}')).ok).toBe(false);
    expect(({} as { at?: unknown }).at).toBeUndefined();
  });

  it("a field given twice, also where its name is spelled in two ways", () => {
    const twice = altered(() => undefined).replace('"axle":', '"axle":"rear","a\\u0078le":');
    expect(faults(twice)).toEqual([
      "The file has the field “axle” twice in one place, so it is not clear which holds.",
    ]);
    expect(faults(altered(set("notes", '"axle":"rear","axle":"x" \\')))).toEqual([]);
  });

  it("empty, blank, cut off, not JSON, too long", () => {
    expect(faults("")).toEqual(["The file is empty."]);
    expect(faults(" \n\t")).toEqual(["The file is empty."]);
    expect(faults("\uFEFF")).toEqual(["The file is empty."]);
    const whole = texts[0] ?? "";
    for (let length = 1; length < whole.length; length += 97) {
      expect(faults(whole.slice(0, length))[0]).toMatch(/cut off|not JSON/);
    }
    expect(faults("<html>")[0]).toMatch(/not JSON/);
    expect(faults('{\n  "a": 1,\n  b: 2\n}')[0]).toMatch(/line 3, character 3/);
    expect(faults(" ".repeat(recordBounds.textCharacters) + whole)[0]).toMatch(/too large/);
  });

  it("lists longer than any check needs", () => {
    const reading = { values: [100], tol: 1 };
    const limits = Array(10_000).fill({ kind: "other", at: "wheel", reading });
    expect(faults(altered(set("corners.0.limits", limits)))).toEqual([
      "The clearances of the left corner: holds 10000, and the most is 50.",
    ]);
    expect(faults(altered(set("corners.0.gap.values", Array(101).fill(1))))[0]).toBe(
      "The left gap: its list of values holds 101, and the most is 100.",
    );
    const curve = Array.from({ length: 1001 }, (_, index) => [index + 1, index + 1]);
    expect(faults(altered(set("stop.curve", curve)))[0]).toMatch(
      /holds 1001, and the most is 1000/,
    );
    expect(faults(altered(set("vehicle.label", "a".repeat(201))))[0]).toMatch(/201 characters/);
  });

  it("more values than any check has", () => {
    const whole = (field: string) =>
      altered(() => undefined).replace('"axle"', `"x":${field},"axle"`);
    expect(faults(whole(`[${"1,".repeat(400_000)}1]`))).toEqual([]);
    for (const many of ["1,", "[],", "{},", '"",']) {
      const text = whole(`[${many.repeat(600_000)}1]`);
      expect(faults(text)[0]).toMatch(/holds more than 500000 values/);
      expect(readCheckValue(JSON.parse(text)).ok).toBe(false);
    }
    expect(faults(altered(set("notes", ",[{".repeat(6000))))).toEqual([]);
  });

  it("nesting is counted to the level", () => {
    const deepest = `${'{"a":'.repeat(39)}1${"}".repeat(39)}`;
    expect(faults(altered(() => undefined).replace('"axle"', `"x":${deepest},"axle"`))).toEqual([]);
    const deeper = `${'{"a":'.repeat(40)}1${"}".repeat(40)}`;
    expect(faults(altered(() => undefined).replace('"axle"', `"x":${deeper},"axle"`))[0]).toMatch(
      /more than 40 deep/,
    );
    expect(readCheckValue({ ...JSON.parse(texts[0] ?? ""), x: JSON.parse(deepest) }).ok).toBe(true);
    expect(readCheckValue({ ...JSON.parse(texts[0] ?? ""), x: JSON.parse(deeper) }).ok).toBe(false);
  });

  it("any text at all", () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
        const outcome = readCheckText(text);
        expect(outcome.ok).toBe(false);
      }),
      { numRuns: 500 },
    );
  });
});

describe("names of readings", () => {
  it("are the assessment's own, so that a reading has one name everywhere", () => {
    for (const name of [
      "pivotToStop",
      "pivotToOuter",
      "pivotToMount",
      "damperLength",
      "track",
      "stopSpacing",
      "armAngle",
      "stopLineAngle",
      "mountLineAngle",
      "stopLean",
      "gap",
      "rideHeight",
      "cornerMassKg",
      "stop.freeHeight",
      "ride.unsprungMassKg",
      "ride.wheelRateNPerMm",
      "ride.tyreRateNPerMm",
      "ride.damperBumpNsPerMm",
      "ride.damperReboundNsPerMm",
      "ride.payloadPerCornerKg",
    ]) {
      expect(`the ${said(entryName(name))}`).toBe(said(readingName(name)));
    }
  });

  it("an id that no record has is taken as a plain value, even one like an object's own method", () => {
    expect(said(entryName("toString"))).toBe("value");
    expect(said(entryName("__proto__"))).toBe("value");
  });
});
