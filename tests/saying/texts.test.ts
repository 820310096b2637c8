import { describe, expect, it } from "vitest";
import { capital, length, margin, marginRange, small } from "../../src/physics/sentence.ts";
import { inModelUnits } from "../../src/saying/modelUnits.ts";
import { firstSentence, sentenceText, withoutRanges } from "../../src/saying/sentenceText.ts";
import { addTexts, said, sentenceOf, worded } from "../../src/saying/texts.ts";
import type { MessageValue } from "../../src/words/message.ts";

addTexts({
  "tests.gap": ({ name, gap }) => `the gap of ${name} is ${gap}.`,
  "tests.stop": "The stop",
});
const gap = (values: { name: MessageValue; gap: MessageValue }) => ({ code: "tests.gap", values });

describe("a message that is named by its code", () => {
  it("is said with its quantities in their places, and messages within it", () => {
    expect(worded(gap({ name: "Bay 1", gap: length(20) }))).toEqual([
      "the gap of Bay 1 is ",
      length(20),
      ".",
    ]);
    expect(worded([{ code: "tests.stop" }, ": ", gap({ name: 2, gap: margin(-3) })])).toEqual([
      "The stop: the gap of 2 is ",
      length(3),
      " short.",
    ]);
    const nested = gap({ name: gap({ name: "A", gap: length(1) }), gap: length(2) });
    expect(inModelUnits(nested)).toBe("the gap of the gap of A is 1.0 mm. is 2.0 mm.");
    expect(sentenceText(nested, "in")).toMatch(/^the gap of the gap of A is 0.04.in. is 0.08.in.$/);
  });

  it("begins as its place in the sentence asks", () => {
    expect(said(capital(gap({ name: "A", gap: "open" })))).toBe("The gap of A is open.");
    expect(said(small({ code: "tests.stop" }))).toBe("the stop");
    expect(said(small("Typed"))).toBe("typed");
  });

  it("puts no quantity where a typed name says so", () => {
    expect(worded(gap({ name: "\uE0000\uE001", gap: length(20) }))).toEqual([
      "the gap of 0 is ",
      length(20),
      ".",
    ]);
  });

  it("is told as not known where a later version has sent it", () => {
    expect(said({ code: "physics.saidByALaterVersion" })).toBe(
      "This version can't say what stands here.",
    );
  });
});

it("keeps the quantities of a screen's own message in their places", () => {
  const message = ({ name, gap: read }: { name: string | number; gap: string | number }) =>
    `The gap of ${name} is ${read}.`;
  expect(sentenceOf(message, { name: "Bay 1", gap: margin(-3) })).toEqual([
    "The gap of Bay 1 is ",
    length(3),
    " short.",
  ]);
});

it("leaves out ranges, and what follows the first sentence", () => {
  const travel = gap({ name: "A", gap: [length(20), marginRange([-1, 3])] });
  expect(inModelUnits(travel)).toBe(
    "the gap of A is 20.0 mm (95 %: 1.0 mm short to 3.0 mm to spare).",
  );
  expect(inModelUnits(withoutRanges([travel]))).toBe("the gap of A is 20.0 mm.");
  expect(inModelUnits(firstSentence([travel, " ", { code: "tests.stop" }, "."]))).toBe(
    inModelUnits(travel),
  );
});
