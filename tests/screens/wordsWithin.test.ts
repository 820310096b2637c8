import { expect, it } from "vitest";
import { checkIds, states } from "../../src/physics/choices.ts";
import { ruleValueNames } from "../../src/physics/readings/index.ts";
import { defaultRules } from "../../src/physics/road/index.ts";
import { figuresOf } from "../../src/screens/answer/formulas/figures.ts";
import {
  checkTitles,
  checkTitlesWithin,
  verdictWithin,
  verdictWords,
} from "../../src/screens/assessment/stateWords.ts";
import { uses } from "../../src/screens/check/UseChoice.tsx";
import { checkWords } from "../../src/screens/desk/findings/findingsWords.ts";
import { verdictShort } from "../../src/screens/desk/words.ts";
import { fieldName } from "../../src/screens/pack/platformDraft.ts";
import * as check from "../../src/words/compiled/screens/check.ts";
import * as findings from "../../src/words/compiled/screens/desk/findings.ts";
import * as desk from "../../src/words/compiled/screens/desk.ts";
import * as pack from "../../src/words/compiled/screens/pack.ts";

it("names states, checks and uses within a sentence as it does alone", () => {
  for (const state of states) {
    expect(verdictWithin[state]).toBe(verdictWords[state].toLowerCase());
    expect(desk.axleOfJob({ axle: "rear", verdict: state })).toBe(
      `Rear axle, ${verdictShort[state].toLowerCase()}`,
    );
  }
  expect(desk.axleOfJob({ axle: "front", verdict: undefined })).toBe("Front axle");
  for (const id of checkIds) {
    expect(checkTitlesWithin[id]).toBe(checkTitles[id].toLowerCase());
    const missed = checkWords[id].toLowerCase();
    expect(findings.missed({ check: id })).toBe(`Missed: ${missed}`);
    expect(findings.missed3({ check: id })).toBe(`missed: ${missed}`);
  }
  for (const { value: use, name } of uses) {
    const within = name.toLowerCase();
    expect(check.useWithin({ use })).toBe(within);
    expect(pack.obstaclesWithin({ use })).toBe(`${within}: obstacles`);
    expect(pack.landingsWithin({ use })).toBe(`${within}: landings`);
  }
  expect(check.useWithin({ use: undefined })).toBe("daily driving");
});

it("names a field of the parts library within a sentence as it does alone", () => {
  for (const name of ruleValueNames) {
    const { label, within } = fieldName(name);
    expect(within).toBe(label.toLowerCase());
  }
});

it("names a figure of an event alone with its event", () => {
  const figures = figuresOf(defaultRules.offroad, "mm").filter(({ about }) => about !== undefined);
  expect(figures.length).toBeGreaterThan(8);
  for (const { about, title, titleAlone } of figures) {
    expect(titleAlone).toBe(`${about}: ${title.toLowerCase()}`);
  }
});
