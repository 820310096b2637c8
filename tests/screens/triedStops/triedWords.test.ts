import { describe, expect, it } from "vitest";
import { type RankedStop, rankStops } from "../../../src/physics/ranking/rankStops.ts";
import { demoPack } from "../../../src/records/pack/demoPack.ts";
import type { PackStop } from "../../../src/records/pack/pack.ts";
import { stopFacts } from "../../../src/records/pack/stopFacts.ts";
import { withPlainSpaces } from "../../../src/saying/quantityText.ts";
import { sentenceText } from "../../../src/saying/sentenceText.ts";
import {
  marginTexts,
  mountDifferences,
  nearlyText,
  partFacts,
  rankedKey,
  rankedName,
  shortcomingsTold,
  travelLost,
} from "../../../src/screens/triedStops/triedWords.ts";
import { finished } from "../../physics/prescription/exhaustive.ts";
import { uprightStrut } from "../../physics/staticFitments.ts";

const facts = (stop: PackStop) => withPlainSpaces(sentenceText(stopFacts(stop), "mm"));

const ranked: RankedStop = {
  id: "tall-firm",
  name: "Tall firm",
  spacerMm: 0,
  group: "nearly",
  verdict: "care",
  margins: { reserveMm: -2.54, freeTravelMm: 12.7, accelerationG: 0.25, compressionShare: -0.1 },
  shortcomings: [],
  placed: null,
  fitment: null,
  assessment: null,
  fault: null,
};

describe("another part than the fitted one", () => {
  const [fitted] = demoPack.stops;
  if (!fitted) throw new Error("the library has no stop");
  const other = {
    ...fitted,
    id: "other",
    name: "Other",
    mount: { way: "stud" as const, sizeMm: 9.525, pitchMm: 1.5875 },
    outerDiameterMm: 76.2,
  };
  const own = {
    ...fitted,
    mount: { way: "stud" as const, sizeMm: 12, pitchMm: 1.75 },
    outerDiameterMm: 63.5,
  };

  it("says how its mounting and its diameter differ, in the person's unit", () => {
    expect(mountDifferences(other, own, "in").map(withPlainSpaces)).toEqual([
      "Another mounting: threaded stud 3/8-16; the stop of this check has threaded stud M12 × 1.75. It needs another seat or an adapter.",
      "Wider by 0.50 in (3.00 in across): see that it has room, pressed flat as well.",
    ]);
    expect(withPlainSpaces(mountDifferences(own, other, "mm")[1] ?? "")).toBe(
      "Narrower by 12.7 mm (63.5 mm across): see that its pad and seat still meet it.",
    );
  });

  it("says nothing where they are alike, or not known", () => {
    const alike = { ...own, mounting: "in other words", outerDiameterMm: 63.9 };
    expect(mountDifferences(alike, own, "mm")).toEqual([]);
    expect(mountDifferences(other, null, "mm")).toEqual([]);
    const { mount: _, outerDiameterMm: __, ...bare } = other;
    expect(mountDifferences(bare, own, "mm")).toEqual([]);
  });

  it("is told line by line as a part, an estimate as one", () => {
    const lines = partFacts({ ...fitted, estimated: { how: "", forceShare: 0.25 } }, other, "in");
    const texts = Object.fromEntries(lines.map(({ name, text }) => [name, text]));
    expect(texts).toMatchObject({
      "Force curve": "estimate, ± 25 %",
      Mounting: "threaded stud 3/8-16",
    });
    expect(lines.map(({ name }) => name)).toEqual(
      partFacts(own, null, "mm").map(({ name }) => name),
    );
  });
});

it("an estimate is marked in a stop's name and facts", () => {
  const estimated = { how: "from 60 Shore A", forceShare: 0.25 };
  expect(rankedName({ ...ranked, estimated }, "mm")).toBe("Tall firm (estimate)");
  expect(facts({ ...(demoPack.stops[0] as PackStop), estimated })).toContain(
    "curve by estimate, ± 25 %",
  );
});

it("nearly is put in figures", () => {
  expect(withPlainSpaces(nearlyText("mm"))).toContain("at most 10.0 mm of travel short");
  expect(withPlainSpaces(nearlyText("in"))).toContain("at most 0.39 in of travel short");
});

describe("margins in words", () => {
  it("say what is over and what is short, in the person's unit (25.4 mm to the inch, NIST SP 811)", () => {
    expect(marginTexts(ranked, "in").map(({ text }) => withPlainSpaces(text))).toEqual([
      "1/8 in short",
      "1/2 in to spare",
      "0.25 g to spare",
      "10 % past full compression",
    ]);
    expect(marginTexts(ranked, "mm").filter(({ short }) => short)).toHaveLength(2);
  });

  it("leave out what is not known", () => {
    const unknown = {
      reserveMm: null,
      freeTravelMm: null,
      accelerationG: null,
      compressionShare: null,
    };
    expect(marginTexts({ ...ranked, margins: unknown }, "mm")).toEqual([]);
  });
});

it("a stop that leaves too little of the travel says so, whatever its verdict", () => {
  const [row] = finished(rankStops(uprightStrut({}), [], { spacersMm: [], samples: 10_000 }));
  const { placed } = row ?? {};
  if (!placed) throw new Error("not placed");
  expect(travelLost({ ...ranked, placed }, "mm")).toBeNull();
  const judgement = { ...placed.judgement, keepsTravel: false };
  expect(
    travelLost({ ...ranked, verdict: "ok", placed: { ...placed, judgement } }, "mm"),
  ).toContain("less than two thirds of the free travel");
  expect(travelLost(ranked, "mm")).toBeNull();
});

it("a stop with a spacer is a row of its own, named with its height", () => {
  const raised = { ...ranked, spacerMm: 12.7 };
  expect(rankedKey(raised)).not.toBe(rankedKey(ranked));
  expect(withPlainSpaces(rankedName(raised, "in"))).toBe("Tall firm with a spacer of 1/2 in");
  expect(rankedName(ranked, "mm")).toBe("Tall firm");
});

it("what both sides say alike is told once, what differs is told of each", () => {
  const told = shortcomingsTold(
    {
      ...ranked,
      shortcomings: [
        { check: "stiffness", state: "no", side: "left", sentence: ["Too soft."] },
        { check: "stiffness", state: "no", side: "right", sentence: ["Too soft."] },
        { check: "clearance", state: "care", side: "left", sentence: ["3 mm left."] },
        { check: "clearance", state: "care", side: "right", sentence: ["4 mm left."] },
      ],
    },
    "mm",
  );
  expect(told.map(({ title }) => title)).toEqual([
    "Stiffness, both sides",
    "Fully compressed before hard contact, left",
    "Fully compressed before hard contact, right",
  ]);
});

it("a stop's facts name a stiffness by its number, and an estimate as one", () => {
  const [stop] = demoPack.stops;
  if (!stop) throw new Error("no stop");
  expect(facts(stop)).toBe(
    "HL-1060 · 60.0 mm high, 33.0 mm usable · class 250 N/mm, progressive · for impacts · tested slowly only · 62.0 mm across · threaded stud M10 × 1.5 · cellular polyurethane",
  );
  const estimate = { ...stop, estimated: { how: "from Shore A 60", forceShare: 0.25 } };
  expect(facts(estimate)).toContain("curve by estimate");
});
