import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { definitionOf } from "../../src/physics/readings/index.ts";
import { type PackTables, packOfTables } from "../../src/records/packTables/packOfTables.ts";
import { readingHeadings } from "../../src/records/packTables/readingHeadings.ts";
import { inModelUnits } from "../../src/saying/modelUnits.ts";
import { said } from "../../src/saying/texts.ts";

const names = ["maker", "stops", "curves", "platforms"] as const;

function template(name: (typeof names)[number]): string {
  return readFileSync(new URL(`../../demo-data/tables/${name}.csv`, import.meta.url), "utf8");
}

function made(change: (name: string, text: string) => string = (_, text) => text) {
  const tables = Object.fromEntries(
    names.map((name) => [name, { file: `${name}.csv`, text: change(name, template(name)) }]),
  );
  return packOfTables(tables as unknown as PackTables);
}

/** The templates with one text in the place of another. */
function faults(name: string, from: string, to: string): readonly string[] {
  if (!template(name as "stops").includes(from)) throw new Error(from);
  const outcome = made((each, text) => (each === name ? text.replace(from, to) : text));
  return outcome.ok ? [] : outcome.faults.map(inModelUnits);
}

describe("the tables of the templates", () => {
  const outcome = made();
  if (!outcome.ok) throw new Error(outcome.faults.map(inModelUnits).join("\n"));
  const { pack } = outcome;

  it("make a pack with every part and vehicle", () => {
    expect(pack).toMatchObject({ name: "Halden Lane parts", edition: "2026-11" });
    expect(pack.stops.map(({ partNumber, revision }) => [partNumber, revision])).toEqual([
      ["HL-1042", "B"],
      ["HL-1042", "A"],
      ["HL-1060", undefined],
      ["HL-2062", undefined],
      ["HL-3080", undefined],
    ]);
    expect(pack.stops[3]).toMatchObject({ testedAtSpeed: true, duty: "carry" });
    expect(pack.stops[2]?.mount).toEqual({
      way: "stud",
      sizeMm: 0.375 * 25.4,
      pitchMm: 25.4 / 16,
      seatMm: 62,
      layouts: ["arm", "axle"],
    });
    const [front] = pack.platforms;
    expect(front).toMatchObject({
      years: { from: 2018, to: 2023 },
      trims: ["Base", "Ridge"],
      usualStop: "hl-1042-b",
      layout: { kind: "arm", armRole: "lower", stopOn: "frame" },
    });
    expect(front?.layout.readings).toMatchObject({
      boltSpacing: { values: [320] },
      pivotToOuter: { values: [411], tol: 3 },
    });
  });

  it("are the same with semicolons and decimal commas, and in inches", () => {
    const commas = made((name, text) =>
      name === "curves"
        ? text
            .split("\n")
            .map((line) => line.replace(/,/g, ";").replace(/\./g, ","))
            .join("\r\n")
        : text,
    );
    expect(commas).toEqual(outcome);
    const inches = made((name, text) =>
      name === "stops"
        ? text
            .replace("free height (mm)", "free height (in)")
            .replace(",block,42,1,23.1", ",block,1 5/8,1,23.1")
        : text,
    );
    const heights = inches.ok ? inches.pack.stops[0]?.freeHeight.values : [];
    expect(heights?.[0]).toBeCloseTo(41.275, 9);
  });
});

it("the headings of readings are their English names in lower case", () => {
  for (const [name, heading] of Object.entries(readingHeadings)) {
    const definition = definitionOf(name);
    expect(definition && said(definition.name).toLowerCase()).toBe(heading);
  }
});

describe("a row that is wrong is a sentence with table, row and column", () => {
  it.each([
    ["stops", ",42,1,23.1", ",forty,1,23.1", /^stops\.csv, row 2, “free height”: “forty”/],
    ["stops", "M10 x 1.5", "coarse", /^stops\.csv, row 2, “thread”: “coarse” is no thread/],
    ["stops", "impact,offered", "bump,offered", /“purpose”: “bump” is none of impact, carry/],
    ["stops", "material", "materiel", /the heading “materiel” is not known/],
    [
      "stops",
      "free height (mm)",
      "free height (stone)",
      /the unit “stone” of the heading is not mm or in/,
    ],
    ["stops", "HL-3080", "HL-3081", /there are no rows of “HL-3081” in curves\.csv/],
    ["curves", "33.3,38444", "33.3,8444", /force of point \d is not above/],
    ["curves", "HL-1060,,8.25,1570", "HL-1061,,8.25,1570", /stops\.csv has no such part/],
    ["platforms", "2018,2023", "2018,2003", /^platforms\.csv, row 2, “last year”/],
    ["platforms", ",HL-1042,stud", ",HL-1,stud", /the part “HL-1” is not among the stops/],
    ["platforms", ",axle,,,HL-3080", ",beam,,,HL-3080", /“layout”: “beam” is none of/],
    ["platforms", ",225,,", ",,,", /distance from pivot to stop: is missing/],
    ["maker", "HALDEN,", "H!,", /2 to 12 capital letters or digits/],
    ["maker", "2026-11", "", /“edition”: nothing is entered/],
    ["maker", "#5a2a6e", "purple", /must be a color such as #0c4c82/],
  ])("%s: %s", (name, from, to, sentence) => {
    const told = faults(name, from, to);
    expect(told.length).toBeGreaterThan(0);
    expect(told.join("\n")).toMatch(sentence);
  });

  it.each([
    [
      "stops",
      "HL-1060,,Tall block",
      "HL-1042,A,Tall block",
      /row 4, “part number”: “HL-1042” stands in row 3 already/,
    ],
    [
      "stops",
      ",60,1,33,",
      ",60,1,93,",
      /^stops\.csv, row 4: The stop “Tall block”: .*(usable|compression)/,
    ],
    ["platforms", ",225,,", ",,,", /^platforms\.csv, row 2: The vehicle “Marlow/],
  ])("%s: %s, told with its row", (name, from, to, sentence) => {
    expect(faults(name, from, to)).toContainEqual(expect.stringMatching(sentence));
  });

  it("is told once: what hangs on a faulty row is not told beside it", () => {
    expect(
      faults(
        "stops",
        "stud,M10 x 1.5,,,55,arm;axle,,natural rubber,21 °C,,3",
        "stud,coarse,,,55,arm;axle,,natural rubber,21 °C,,3",
      ),
    ).toHaveLength(1);
    expect(
      faults("stops", "HL-1042,B,Short block,impact", "HL-1042,B,Short block,bump"),
    ).toHaveLength(1);
  });

  it("and all of them are told at once", () => {
    const outcome = made((name, text) =>
      name === "stops" ? text.replaceAll("impact", "x").replace(",60,1,33", ",sixty,1,33") : text,
    );
    expect(outcome.ok ? 0 : outcome.faults.length).toBeGreaterThanOrEqual(5);
  });
});
