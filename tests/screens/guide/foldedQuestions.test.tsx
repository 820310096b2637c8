import { cleanup, fireEvent, render, screen } from "@testing-library/preact";
import { afterEach, beforeEach, expect, it } from "vitest";
import record from "../../../demo-data/checks/arm-fits.json";
import { readCheckValue } from "../../../src/records/check/readCheck.ts";
import { newStoredCheck, type StoredCheck } from "../../../src/records/check/storedCheck.ts";
import { storedFromRecord } from "../../../src/records/filling/storedFromRecord.ts";
import { StepContent } from "../../../src/screens/check/StepContent.tsx";
import { cautionsOf, levelCautions } from "../../../src/screens/guide/cautions.ts";
import { noteMeasured } from "../../../src/screens/guide/practice.ts";
import { standingSteps } from "../../../src/screens/guide/standing.ts";
import { stepsOf } from "../../../src/screens/guide/steps.ts";
import {
  changePreferences,
  forgetPreferencesInMemory,
  preferences,
} from "../../../src/screens/preferences.ts";

// What somebody who has made three checks is no longer asked openly, and what they are asked all the same.

beforeEach(() => {
  localStorage.clear();
  forgetPreferencesInMemory();
  changePreferences({ length: "mm" });
});

afterEach(cleanup);

function filled(): StoredCheck {
  const read = readCheckValue(record, "The demo check");
  if (!read.ok) throw new Error("The demo check can't be read.");
  return storedFromRecord(read.value, { unit: "mm" });
}

function show(stored: StoredCheck, id: string): StoredCheck[] {
  const all = stepsOf(stored);
  const step = all.find((each) => each.id === id);
  if (!step) throw new Error(`no step ${id}`);
  const changed: StoredCheck[] = [];
  render(
    <StepContent
      stored={stored}
      step={step}
      all={all}
      preferences={preferences()}
      change={(update) => changed.push(update(stored))}
      go={() => undefined}
      next={() => undefined}
      waiting={undefined}
    />,
  );
  return changed;
}

const practise = () => ["a", "b", "c"].forEach(noteMeasured);
const folded = (words: string | RegExp) => screen.getByText(words).closest("details");

it.each([
  ["left.rideHeight", "How do you read it?", "Read once, as it stands"],
  ["pivotToStop", "How do you take the arm's lengths?", "Taken square to the pivot line"],
  ["left.limits.0", "Where was it measured?", "Place: At the part itself"],
  ["left.limits.1", "Moved or bounced since the gap was read?", "Not moved since the gap was read"],
  ["rules", "Obstacle", "Change the requirements"],
])("%s: “%s” stands open at first, and after three checks behind “%s”", (step, question, line) => {
  show(filled(), step);
  expect(screen.getByText(question).closest("details")).toBeNull();
  cleanup();
  practise();
  show(filled(), step);
  expect(folded(question)?.open).toBe(false);
  expect(folded(question)).toBe(folded(line));
});

it("what was folded is still changed behind its line", () => {
  practise();
  const changed = show(filled(), "left.rideHeight");
  fireEvent.click(screen.getByRole("radio", { name: "Lifted, then pushed", hidden: true }));
  expect(changed).toHaveLength(1);
});

it("how it is measured, repeats and photos stand behind lines; the caution of the place stays open", () => {
  const energy = levelCautions.find(({ id }) => id === "caution.energy")?.words ?? "";
  show(filled(), "left.limits.1");
  for (const words of ["Take photo", "Add a repeat", energy]) expect(folded(words)).toBeNull();
  cleanup();
  practise();
  show(filled(), "left.limits.1");
  const line = folded("Repeat, photo");
  expect(line?.open).toBe(false);
  for (const words of ["Take photo", "Add a repeat"]) expect(folded(words)).toBe(line);
  expect(folded("How")?.open).toBe(false);
  expect(folded("How")?.textContent).toContain("What goes wrong");
  expect(folded(energy)).toBeNull();
});

it("whether the vehicle was moved is asked openly at each side's first clearance", () => {
  practise();
  for (const side of ["left", "right"]) {
    show(filled(), `${side}.limits.0`);
    expect(folded("Moved or bounced since the gap was read?")).toBeNull();
    cleanup();
  }
});

it("cautions are told in full to everybody, and so is what the vehicle must be", () => {
  practise();
  show(newStoredCheck("New"), "cautions");
  for (const { words } of cautionsOf("level")) expect(folded(words)).toBeNull();
  cleanup();
  show(newStoredCheck("New"), "standing");
  for (const { words } of standingSteps) expect(folded(words)).toBeNull();
});
