import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  geometryNames,
  geometryRegistry,
  layoutReadingsInOrder,
} from "../../src/physics/layouts/geometryRegistry.ts";
import { layoutKinds } from "../../src/physics/layouts/layoutKinds.ts";
import { cornerReadingNames } from "../../src/physics/readings/cornerReadings.ts";
import { definitionOf } from "../../src/physics/readings/definitionOf.ts";
import { contactParts } from "../../src/physics/readings/fullTravelReadings.ts";
import { parseReadingId, type ReadingId } from "../../src/physics/readings/readingId.ts";
import { rideQuantities } from "../../src/physics/readings/rideReadings.ts";
import { ruleValueNames } from "../../src/physics/readings/ruleValues.ts";
import { stopNumberNames } from "../../src/physics/readings/stopReadings.ts";
import { openRecord } from "../../src/records/check/openRecord.ts";
import { readCheckValue } from "../../src/records/check/readCheck.ts";
import { newStoredCheck, type StoredCheck } from "../../src/records/check/storedCheck.ts";
import { entryOutcome } from "../../src/records/entry/entryPath.ts";
import { catalogueEntry, entryName, entryUnit } from "../../src/records/entry/readingCatalogue.ts";
import { addLimit, chooseLayout, setEntry } from "../../src/records/filling/changes.ts";
import { entriesOf, storedFromRecord } from "../../src/records/filling/storedFromRecord.ts";
import { tableHeader } from "../../src/records/review/figuresTable.ts";
import { readingsOf } from "../../src/records/review/oddReadings.ts";
import { said } from "../../src/saying/texts.ts";
import { anyRecord } from "./arbitraries.ts";

const sides = ["left", "right"] as const;

/** The id of everything that can be typed. */
const everyId: readonly ReadingId[] = [
  ...geometryNames,
  ...sides.flatMap((side) => [
    ...geometryNames.map((name) => `${side}.${name}` as const),
    ...cornerReadingNames.map((name) => `${side}.${name}` as const),
    `${side}.liftedHeight` as const,
    `${side}.pushedHeight` as const,
    `${side}.limits.0` as const,
    `${side}.limits.0.distance` as const,
    `${side}.limits.0.perWheel` as const,
    ...contactParts.map((part) => `fullTravel.${side}.${part}.wheelTravel` as const),
    `fullTravel.${side}.block.blockHeight` as const,
    `fullTravel.${side}.atRide.heightToArch` as const,
  ]),
  "stop.freeHeight",
  "stop.curve",
  "stop.damping",
  ...stopNumberNames.map((name) => `stop.${name}` as const),
  ...rideQuantities.map((name) => `ride.${name}` as const),
  ...ruleValueNames.map((name) => `rules.${name}` as const),
  "vehicle.liftMm",
  "layout.wheelPerOuter",
  "layout.wheelPerOuterTol",
];

/** A believable value of an id, as it is typed. */
function typed(id: ReadingId): { texts: string[]; unit: "mm"; tol: string } {
  const [least, greatest] = catalogueEntry(id).believable;
  const value = String(Math.round(50 * (least + greatest)) / 100);
  const columns = id === "stop.curve" ? 2 : id === "stop.damping" ? 3 : 1;
  return { texts: Array.from({ length: columns }, () => value), unit: "mm", tol: "" };
}

function withLimit(stored: StoredCheck): StoredCheck {
  return sides.reduce(
    (current, side) => addLimit(current, side, { kind: "tyre", at: "arm" }),
    stored,
  );
}

describe.each(everyId)("%s", (id) => {
  it("is taken apart, named, measured and believable", () => {
    expect(parseReadingId(id)).not.toBeNull();
    const { name, kind, believable, usualTolerance } = catalogueEntry(id);
    expect(definitionOf(id)?.name).toBe(name);
    expect(said(entryName(id))).toContain(said(name));
    expect(believable[0]).toBeLessThan(believable[1]);
    expect(usualTolerance).toBeGreaterThanOrEqual(0);
    expect(entryUnit(kind, "in")).toBeDefined();
    expect(entryOutcome(id, typed(id)).ok).toBe(true);
  });

  it("changes the record where it is typed, and nothing of it where it is taken out again", () => {
    const before = withLimit(newStoredCheck());
    const after = setEntry(before, id, typed(id));
    const place = parseReadingId(id);
    // These wait for what they are put together with.
    const waits = place?.of === "settle" || place?.of === "fullTravel";
    expect(JSON.stringify(after.record) === JSON.stringify(before.record)).toBe(waits);
    if (waits || id === "vehicle.liftMm") return;
    expect(entriesOf(after.record, "mm")[id]?.texts).toEqual(typed(id).texts);
    expect(openRecord(after.record, "a", "b")).toEqual(after.record);
    const emptied = setEntry(after, id, { texts: [""], unit: "mm", tol: "" });
    expect(entriesOf(emptied.record, "mm")[id]).toBeUndefined();
  });
});

describe("a reading of the geometry", () => {
  it("belongs to a layout, and what it is made of or stands in belongs there too", () => {
    for (const name of geometryNames) {
      const { madeOf, standIn } = geometryRegistry[name];
      const kinds = layoutKinds.filter((kind) => layoutReadingsInOrder[kind].includes(name));
      expect(kinds.length, name).toBeGreaterThan(0);
      for (const kind of kinds) {
        const beside = [...(madeOf?.common ?? []), ...(madeOf?.own ?? []), standIn ?? name];
        for (const other of beside) expect(layoutReadingsInOrder[kind]).toContain(other);
      }
    }
  });

  it("comes back when its layout is chosen again, and has its column in the table", () => {
    for (const kind of layoutKinds) {
      const filled = layoutReadingsInOrder[kind].reduce(
        (current, name) => setEntry(current, name, typed(name)),
        chooseLayout(newStoredCheck(), kind),
      );
      const other = chooseLayout(filled, kind === "axle" ? "strut" : "axle");
      const back = chooseLayout(other, kind);
      expect(back.record.layout?.readings).toEqual(filled.record.layout?.readings);
    }
    const columns = tableHeader.map(said).join("\n");
    for (const name of geometryNames) expect(columns).toContain(said(geometryRegistry[name].name));
    for (const name of cornerReadingNames)
      expect(columns).toContain(said(catalogueEntry(name).name));
    for (const name of rideQuantities) expect(columns).toContain(said(catalogueEntry(name).name));
  });
});

describe("friction", () => {
  it("is half of what lies between the heights after lifting and after pushing down", () => {
    const lifted = setEntry(newStoredCheck(), "left.liftedHeight", typedAs("523"));
    expect(lifted.record.corners[0]?.settleMm).toBeUndefined();
    const both = setEntry(lifted, "left.pushedHeight", typedAs("516"));
    expect(both.record.corners[0]?.settleMm).toBe(3.5);
    const one = setEntry(both, "left.liftedHeight", typedAs(""));
    expect(one.record.corners[0]?.settleMm).toBeUndefined();
  });
});

function typedAs(text: string) {
  return { texts: [text], unit: "mm" as const, tol: "" };
}

describe("an id", () => {
  it("that names nothing is taken apart by nobody", () => {
    for (const id of [
      "",
      "gap",
      "left.",
      "left.gap.x",
      "top.gap",
      "left.limits.",
      "left.limits.01",
      "left.limits.1000",
      "left.limits.0.reading",
      "left.limits.0.kind",
      "ride.",
      "ride.tolerances",
      "rules.roadClass",
      "stop.name",
      "left.limits",
      "constructor",
      "left.toString",
      "fullTravel.left.stop",
      "fullTravel.left.roof.wheelTravel",
      "left.settleMm",
    ]) {
      expect(parseReadingId(id), id).toBeNull();
    }
  });

  it("of any text is taken apart without a fault", () => {
    fc.assert(
      fc.property(
        fc.string(),
        fc.constantFrom("", "left.", "right.limits.", "ride."),
        (text, by) => {
          const place = parseReadingId(by + text);
          if (place !== null) expect(everyId.length).toBeGreaterThan(0);
        },
      ),
    );
  });
});

describe("a whole record", () => {
  it("is opened as it is, whichever of the fields it has", () => {
    fc.assert(
      fc.property(anyRecord, (record) => {
        expect(openRecord(record, "a", "b")).toEqual(record);
      }),
      { numRuns: 100 },
    );
  });

  it("shows every reading of it at the desk, and has it as an entry", () => {
    fc.assert(
      fc.property(anyRecord, (record) => {
        expect(readCheckValue(record).ok).toBe(true);
        const { entries } = storedFromRecord(record);
        for (const { id, reading } of readingsOf(record)) {
          expect(parseReadingId(id), id).not.toBeNull();
          expect(entries[id]?.texts, id).toHaveLength(reading.values.length);
        }
      }),
      { numRuns: 100 },
    );
  });

  it("gives every demand that is a number an entry", () => {
    const rules = Object.fromEntries(ruleValueNames.map((name) => [name, 7]));
    const { record } = newStoredCheck();
    const entries = entriesOf({ ...record, rules }, "mm");
    for (const name of ruleValueNames) expect(entries[`rules.${name}`]?.texts).toEqual(["7"]);
  });
});
