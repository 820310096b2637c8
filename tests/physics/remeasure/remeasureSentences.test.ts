import { describe, expect, it } from "vitest";
import type { CornerAssessment } from "../../../src/physics/fitment.ts";
import type { ReadingId } from "../../../src/physics/readings/readingId.ts";
import type { Margin } from "../../../src/physics/remeasure/margin.ts";
import type { OpenQuestion } from "../../../src/physics/remeasure/openQuestions.ts";
import type { RemeasureWay } from "../../../src/physics/remeasure/readAgain.ts";
import type { RemeasureForecast } from "../../../src/physics/remeasure/remeasureForecast.ts";
import {
  firstSentence,
  hopelessSentence,
  remeasureSentence,
} from "../../../src/physics/remeasure/remeasureSentences.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";

const tool = (name: string, halfWidth: number): RemeasureWay => ({
  kind: "tool",
  tool: { id: name, name, halfWidth },
});

function forecast(way: RemeasureWay, about: RemeasureForecast["about"]): RemeasureForecast {
  return {
    way,
    about,
    side: "left",
    halfWidthNowMm: 6,
    halfWidthThenMm: 3.25,
    removed: 0.5,
    settlesQuestion: 0.5,
    settlesVerdict: 0.5,
  };
}

describe("what taking a reading again does, in one sentence", () => {
  it.each<[ReadingId, RemeasureWay, RemeasureForecast["about"], boolean, string]>([
    [
      "left.gap",
      { kind: "repeat", more: 3 },
      "reserve",
      false,
      "Left gap, 3 more repeats: takes the margin of error of the reserve from ±6.0 mm to ±3.3 mm.",
    ],
    [
      "ride.wheelRateNPerMm",
      { kind: "halve" },
      "freeTravel",
      true,
      "Wheel rate, known twice as exactly: takes the margin of error of the left free travel against what is needed from ±6.0 mm to ±3.3 mm.",
    ],
    [
      "armAngle",
      tool("a digital angle gauge", 0.2),
      "reserve",
      true,
      "Arm angle, again with a digital angle gauge (±0.2°): takes the margin of error of the left reserve from ±6.0 mm to ±3.3 mm.",
    ],
    [
      "right.stopLean",
      tool("a digital angle gauge", 0.2),
      "reserve",
      true,
      "Right lean of the stop, again with a digital angle gauge (±0.2°): takes the margin of error of the left reserve from ±6.0 mm to ±3.3 mm.",
    ],
    [
      "left.cornerMassKg",
      tool("wheel scales", 2),
      "freeTravel",
      false,
      "Left corner weight, again with wheel scales (±2 kg): takes the margin of error of the free travel against what is needed from ±6.0 mm to ±3.3 mm.",
    ],
    [
      "pivotToStop",
      tool("a caliper", 0.2),
      "reserve",
      false,
      "Distance from pivot to stop, again with a caliper (±0.2 mm): takes the margin of error of the reserve from ±6.0 mm to ±3.3 mm.",
    ],
  ])("%s", (id, way, about, sided, words) => {
    expect(inModelUnits(remeasureSentence(id, undefined, forecast(way, about), sided))).toBe(words);
  });

  it("names a hard limit by its kind", () => {
    const words = remeasureSentence(
      "left.limits.0",
      "tyre",
      forecast(tool("a caliper", 0.2), "reserve"),
      false,
    );
    expect(inModelUnits(words)).toMatch(/^Left clearance over the tire, again with a caliper/);
  });
});

describe("a reading that was never taken", () => {
  const question = (id: "clearance" | "stiffness"): OpenQuestion => ({
    side: "right",
    why: "missing",
    check: { id, state: "unsure", sentence: ["Not known."] },
    readings: [],
  });

  it("is asked for by what cannot be said without it", () => {
    expect(inModelUnits(firstSentence("right.limits.0", undefined, question("clearance")))).toBe(
      "What could hit first on the right: never measured. Without it the reserve is unknown.",
    );
    expect(
      inModelUnits(firstSentence("ride.unsprungMassKg", undefined, question("stiffness"))),
    ).toBe(
      "Unsprung mass: not known. Without it how often and how hard the stop touches is unknown.",
    );
  });

  it("is told by its check where it cannot be right", () => {
    const odd: OpenQuestion = { ...question("stiffness"), why: "implausible" };
    expect(inModelUnits(firstSentence("right.gap", undefined, odd))).toBe("Not known.");
  });
});

describe("where no reading helps", () => {
  const corner = (spacerMm: readonly [number, number] | null, mostExtraHeightMm: number | null) =>
    ({ side: "left", mostExtraHeightMm, intervals: { spacerMm } }) as CornerAssessment;
  const margin = (about: Margin["about"]) => ({ about }) as Margin;
  const none = "Re-measuring with the tools at hand would not settle it: ";
  const some = "Even with every reading re-measured, it will most likely stay undecided: ";
  const near = "the left reserve is too close to the limit. What would settle it: ";
  const byHand = "having a qualified person go through the whole travel by hand.";

  it.each<[Margin["about"], readonly [number, number] | null, number | null, boolean, string]>([
    ["reserve", [1, 4], null, false, `${none}${near}a spacer of 4.0 mm, or ${byHand}`],
    ["reserve", [1, 4], 4, true, `${some}${near}a spacer of 4.0 mm, or ${byHand}`],
    // A spacer that would be met too early, none at all, or one of no height settles nothing.
    ["reserve", [1, 4], 3.9, true, `${some}${near}${byHand}`],
    ["reserve", null, null, false, `${none}${near}${byHand}`],
    ["reserve", [-3, 0], null, false, `${none}${near}${byHand}`],
    [
      "freeTravel",
      [1, 4],
      null,
      false,
      `${none}the free travel on the left is too close to what the use needs. What would settle it: measured damping and wheel rate, a shorter stop or less payload.`,
    ],
  ])("%s, spacer %o, most %s, some help %s", (about, spacer, most, someHelp, words) => {
    expect(inModelUnits(hopelessSentence(margin(about), corner(spacer, most), someHelp))).toBe(
      words,
    );
  });
});
