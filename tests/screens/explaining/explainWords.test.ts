import { describe, expect, it } from "vitest";
import { assessFitment } from "../../../src/physics/assess.ts";
import { prescribeSteps } from "../../../src/physics/prescription/index.ts";
import { demoPack } from "../../../src/records/pack/demoPack.ts";
import { prescribable, searchOptionsOf } from "../../../src/records/pack/packCandidates.ts";
import { withPlainSpaces } from "../../../src/saying/quantityText.ts";
import { sentenceText } from "../../../src/saying/sentenceText.ts";
import { explained } from "../../../src/screens/explaining/explainWords.ts";
import { demoFitment } from "../../physics/demoFitments.ts";
import { finished } from "../../physics/prescription/exhaustive.ts";

/** Words of the trade that no customer has to know. */
const jargon =
  /jounce|lever ratio|motion ratio|secant|class|N\/mm|reserve|clearance|compress|damping|kinematic|prescri|quarter car|σ|percentile|stiffness/i;

interface Part {
  readonly heading: string;
  readonly text: string;
}

const known = new Map<string, readonly Part[]>();

/** What is told of a demo check, worked out once. */
function told(name: string): readonly Part[] {
  const parts = known.get(name) ?? partsOf(name);
  known.set(name, parts);
  return parts;
}

function partsOf(name: string): readonly Part[] {
  const fitment = demoFitment(name);
  const assessed = assessFitment(fitment, { samples: 10_000 });
  const check = { ...fitment, vehicle: { platformId: null } };
  const found = finished(
    prescribeSteps(fitment, prescribable(demoPack, check, fitment), {
      ...searchOptionsOf(demoPack, check, fitment, "mm"),
    }),
  );
  if (!assessed.ok) throw new Error(name);
  return explained(assessed.value, found).map(({ heading, sentences }) => ({
    heading,
    text: withPlainSpaces(
      sentences.map((each) => sentenceText(each, "mm", { coarse: true })).join(" "),
    ),
  }));
}

describe("the answer for a customer", () => {
  it.each(["arm-needs-taller", "arm-fits", "sitting-on-its-stop", "few-readings"])(
    "%s: short sentences without jargon, from what was worked out",
    (name) => {
      const parts = told(name);
      expect(parts.map(({ heading }) => heading)).toEqual(
        expect.arrayContaining(["Today", "What the part changes", "What remains unsure"]),
      );
      for (const { text } of parts) {
        expect(text).not.toMatch(jargon);
        expect(text).not.toMatch(/NaN|Infinity|undefined|-\d/);
        for (const sentence of text.split(/[.:;](?:\s|$)/)) {
          expect(sentence.split(/\s+/).length, sentence).toBeLessThanOrEqual(20);
        }
      }
    },
    60_000,
  );

  it("a stop that is met too late names what is hit, and that no part alone mends it", () => {
    const parts = Object.fromEntries(
      told("arm-needs-taller").map((each) => [each.heading, each.text]),
    );
    expect(parts.Today).toMatch(/before the stop is pressed all the way/);
    expect(parts["What the part changes"]).toMatch(/^No part that was tried makes it right/);
    expect(parts["What remains unsure"]).toMatch(/no certificate/);
  }, 60_000);

  it("what a part changes is said for both sides", () => {
    const parts = told("checked-by-hand").map((each) => [each.heading, each.text]);
    expect(Object.fromEntries(parts)["What the part changes"]).toMatch(/on both sides/);
  }, 60_000);

  it("where nothing that was tried does it, it says so, and what does not hold today", () => {
    const parts = Object.fromEntries(
      told("strut-too-stiff").map((each) => [each.heading, each.text]),
    );
    expect(parts.Today).toMatch(/too hard: the hits of this use come through/);
    expect(parts["What the part changes"]).toMatch(/^No part that was tried makes it right/);
  }, 60_000);

  it("one side that was measured is told as that side, and what the part takes that today's does not", () => {
    const parts = Object.fromEntries(told("damper-shaft").map((each) => [each.heading, each.text]));
    expect(parts.Today).toMatch(/hits of this use/);
    const changed = parts["What the part changes"];
    expect(changed).toMatch(/goes in on the left\./);
    expect(changed).toMatch(/The right was not measured/);
    expect(changed).toMatch(/It takes the hits of this use/);
    expect(changed).not.toMatch(/both sides/);
  }, 60_000);
});
