import { expect, it } from "vitest";
import { length, margin } from "../../src/physics/sentence.ts";

const message = ({ name, gap }: { name: string | number; gap: string | number }) =>
  `The gap of ${name} is ${gap}.`;

it("keeps the quantities of a message in their places, and sentences within it", () => {
  expect(sentenceOf(message, { name: "Bay 1", gap: length(20) })).toEqual([
    "The gap of Bay 1 is ",
    length(20),
    ".",
  ]);
  expect(sentenceOf(message, { name: 2, gap: margin(-3) })).toEqual([
    "The gap of 2 is ",
    length(3),
    " short",
    ".",
  ]);
});

it("puts no quantity where a typed name says so", () => {
  expect(sentenceOf(message, { name: "\uE0000\uE001", gap: length(20) })).toEqual([
    "The gap of 0 is ",
    length(20),
    ".",
  ]);
});
