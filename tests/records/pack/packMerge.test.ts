import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { demoPack } from "../../../src/records/pack/demoPack.ts";
import type { Pack, PackStop } from "../../../src/records/pack/pack.ts";
import type { FieldDifference } from "../../../src/records/pack/packDifferences.ts";
import {
  type MergeChoice,
  mergeChoices,
  mergePacks,
  packDifferences,
} from "../../../src/records/pack/packMerge.ts";
import { readPackValue } from "../../../src/records/pack/readPack.ts";
import { differenceTexts } from "../../../src/saying/packValueText.ts";
import { said } from "../../../src/saying/texts.ts";
import { faultCode, given } from "../../physics/stopTests/outcomes.ts";

const [first, second, third] = demoPack.stops;
const [platform] = demoPack.platforms;
if (first === undefined || second === undefined || third === undefined || platform === undefined) {
  throw new Error("the demonstration pack is too small");
}

const mine: Pack = {
  ...demoPack,
  name: "Mine",
  stops: demoPack.stops.filter(({ id }) => id !== third.id || isUsual(third.id)),
  rules: { daily: { speedKmPerH: 60 } },
};
const theirs: Pack = {
  ...demoPack,
  name: "Theirs",
  stops: [
    { ...first, freeHeight: { values: [61], tol: 1 }, material: "natural rubber" },
    ...demoPack.stops.slice(1),
    { ...second, id: "new-stop", name: "New stop", partNumber: "N-1" },
  ],
  platforms: [{ ...platform, usualStop: first.id, label: "Marlow, revised" }],
  rules: { daily: { speedKmPerH: 80 }, towing: { accelerationCapG: 3 } },
};

function isUsual(id: string): boolean {
  return demoPack.platforms.some(({ usualStop }) => usualStop === id);
}

const told = (field: FieldDifference) => ({
  path: field.path,
  name: said(field.name),
  ...differenceTexts(field),
});

describe("what differs", () => {
  const differences = packDifferences(mine, theirs);
  const at = (key: string) => differences.find((each) => each.key === key);

  test("a changed stop, field by field, in words and units", () => {
    const changed = at(`stop ${first.id}`);
    expect(changed?.kind).toBe("differs");
    expect(changed?.fields.map(told)).toEqual([
      {
        path: "freeHeight",
        name: "free height",
        mine: `${first.freeHeight.values[0]} ± ${first.freeHeight.tol} mm`,
        theirs: "61 ± 1 mm",
      },
      {
        path: "material",
        name: "material",
        mine: first.material ?? null,
        theirs: "natural rubber",
      },
    ]);
  });

  test("a table by how many rows it has and the first of those that differ", () => {
    const curve = first.curve.map(([depth, force], row) =>
      row === 1 ? ([depth, force + 1] as const) : ([depth, force] as const),
    );
    const theirs = { ...demoPack, stops: [{ ...first, curve, damping: null }] };
    const mine = { ...demoPack, stops: [{ ...first, damping: [[0, 1, 2]] as const }] };
    const fields = packDifferences(mine, theirs)[0]?.fields ?? [];
    const [depth, force] = first.curve[1] ?? [0, 0];
    expect(
      fields.map(told).map(({ name, mine: own, theirs: other }) => [name, own, other]),
    ).toEqual([
      [
        "force curve",
        `${curve.length} rows; row 2: ${depth} / ${force}`,
        `${curve.length} rows; row 2: ${depth} / ${force + 1}`,
      ],
      ["damping", "1 row; row 1: 0 / 1 / 2", "none"],
    ]);
  });

  test("what only one of them has", () => {
    expect(at("stop new-stop")?.kind).toBe("onlyTheirs");
    expect(at("rules towing")?.kind).toBe("onlyTheirs");
    expect(
      differences.filter(({ kind, list }) => kind === "onlyMine" && list === "platform"),
    ).toHaveLength(demoPack.platforms.length - 1);
  });

  test("rules and the name of the pack", () => {
    expect(at("rules daily")?.fields.map(told)).toMatchObject([
      { mine: "60 km/h", theirs: "80 km/h" },
    ]);
    expect(at("pack name")?.fields.map(told)).toMatchObject([{ mine: "Mine", theirs: "Theirs" }]);
  });

  test("nothing between a pack and itself, whatever the order of its fields", () => {
    expect(packDifferences(demoPack, demoPack)).toEqual([]);
    const turned = {
      ...demoPack,
      stops: demoPack.stops.map(
        (stop) => Object.fromEntries(Object.entries(stop).reverse()) as unknown as typeof stop,
      ),
    };
    expect(packDifferences(demoPack, turned)).toEqual([]);
  });
});

describe("one pack of two", () => {
  test("as usual: mine where they differ, and what either has alone", () => {
    const merged = given(mergePacks(mine, theirs));
    expect(merged.name).toBe("Mine");
    expect(merged.stops.find(({ id }) => id === first.id)).toEqual(first);
    expect(merged.stops.some(({ id }) => id === "new-stop")).toBe(true);
    expect(merged.rules).toEqual({
      daily: { speedKmPerH: 60 },
      towing: { accelerationCapG: 3 },
    });
  });

  test("both: theirs comes beside mine under a new id, and their platform names it", () => {
    const merged = given(
      mergePacks(mine, theirs, {
        [`stop ${first.id}`]: "both",
        [`platform ${platform.id}`]: "theirs",
      }),
    );
    const added = merged.stops.find(({ id }) => id === `${first.id}-2`);
    expect(added?.freeHeight.values).toEqual([61]);
    expect(merged.stops.find(({ id }) => id === first.id)).toEqual(first);
    const taken = merged.platforms.find(({ id }) => id === platform.id);
    expect(taken?.usualStop).toBe(`${first.id}-2`);
  });

  test("a stop left out that a platform names is refused with the platform's name", () => {
    const only: Pack = { ...theirs, stops: theirs.stops.filter(({ id }) => id !== first.id) };
    const merged = mergePacks(
      mine,
      { ...only, platforms: [] },
      { [`stop ${first.id}`]: "neither" },
    );
    expect(faultCode(merged)).toBe(isUsual(first.id) ? "stopMissing" : "none");
  });

  test("a choice that a difference does not leave counts as the usual one", () => {
    const merged = given(
      mergePacks(mine, theirs, { "stop new-stop": "both", "pack name": "neither" }),
    );
    expect(merged.name).toBe("Mine");
    expect(merged.stops.filter(({ id }) => id.startsWith("new-stop"))).toHaveLength(1);
  });
});

test("two stops with one part number are refused in a sentence", () => {
  const [first] = demoPack.stops;
  const other = {
    ...demoPack,
    stops: [{ ...(first as PackStop), id: "elsewhere" }],
    platforms: [],
  };
  const merged = mergePacks(demoPack, other);
  expect(faultCode(merged)).toBe("partTwice");
});

describe("always", () => {
  const differences = packDifferences(mine, theirs);
  const choices = fc
    .tuple(...differences.map((each) => fc.constantFrom(...mergeChoices(each))))
    .map((chosen): { [key: string]: MergeChoice } =>
      Object.fromEntries(differences.map(({ key }, place) => [key, chosen[place] as MergeChoice])),
    );

  test("a merged pack is a pack: it reads, ids are unique, no platform names a missing stop", () => {
    fc.assert(
      fc.property(choices, (chosen) => {
        const merged = mergePacks(mine, theirs, chosen);
        if (merged.ok) expect(readPackValue(merged.value).ok).toBe(true);
        else expect(["stopMissing", "partTwice"]).toContain(merged.fault.code);
      }),
      { numRuns: 60 },
    );
  });

  test("with itself it stays the same; mine against the merged differs by what was taken only", () => {
    expect(given(mergePacks(demoPack, demoPack))).toEqual(demoPack);
    fc.assert(
      fc.property(choices, (chosen) => {
        const merged = mergePacks(mine, theirs, chosen);
        if (!merged.ok) return;
        for (const { key, kind } of packDifferences(mine, merged.value)) {
          if (kind === "differs") expect(chosen[key]).toBe("theirs");
          if (kind === "onlyMine") expect(chosen[key]).toBe("neither");
        }
      }),
      { numRuns: 60 },
    );
  });

  test("all of theirs gives theirs, whatever only mine has aside", () => {
    const all = Object.fromEntries(differences.map(({ key }) => [key, "theirs" as const]));
    const merged = given(mergePacks(mine, theirs, all));
    for (const { kind } of packDifferences(merged, theirs)) expect(kind).toBe("onlyMine");
  });
});
