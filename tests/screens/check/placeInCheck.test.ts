import { describe, expect, it } from "vitest";
import { newStoredCheck } from "../../../src/records/check/storedCheck.ts";
import { chooseLayout } from "../../../src/records/filling/changes.ts";
import { withChoice } from "../../../src/records/filling/choice.ts";
import { withSides } from "../../../src/records/filling/sides.ts";
import { storedFromRecord } from "../../../src/records/filling/storedFromRecord.ts";
import { partsOf, placeInCheck, placeWords } from "../../../src/screens/guide/placeInCheck.ts";
import { stepsOf } from "../../../src/screens/guide/steps.ts";
import { demoNames, demoRecord } from "../answer/demoChecks.ts";

const partsIn = (stored: ReturnType<typeof newStoredCheck>) => partsOf(stepsOf(stored)).length;

describe("how far a check is", () => {
  it("has as many parts at the first screen as when all of both sides is there", () => {
    const fresh = newStoredCheck();
    const sided = withSides(fresh, "both");
    const laidOut = chooseLayout(sided, "arm");
    const byHand = withChoice(laidOut, "stop.source", "hand");
    const whole = storedFromRecord(demoRecord("arm-fits"));
    expect([fresh, sided, laidOut, byHand, whole].map(partsIn)).toEqual([9, 9, 9, 9, 9]);
    expect(stepsOf(whole).length).toBeGreaterThan(2 * stepsOf(fresh).length);
  });

  it("has one part less where one side is measured", () => {
    expect(partsIn(chooseLayout(withSides(newStoredCheck(), "right"), "strut"))).toBe(8);
  });

  it.each(demoNames)("counts every step of %s once, part by part", (name) => {
    const all = stepsOf(storedFromRecord(demoRecord(name)));
    const places = all.map((_, at) => placeInCheck(all, at));
    for (const [at, place] of places.entries()) {
      const before = places[at - 1];
      const begins = before?.section !== place?.section;
      expect(place?.step).toBe(begins ? 1 : (before?.step ?? 0) + 1);
      if (begins) expect(place?.part).toBe((before?.part ?? 0) + 1);
      if (begins && before) expect(before.step).toBe(before.steps);
    }
    expect(places.at(-1)).toMatchObject({ part: places[0]?.parts });
  });

  it("says a part's name, and the step in it where there are several", () => {
    const all = stepsOf(chooseLayout(withSides(newStoredCheck(), "both"), "arm"));
    const wordsOf = (id: string) => {
      const place = placeInCheck(
        all,
        all.findIndex((step) => step.id === id),
      );
      return place && placeWords(place);
    };
    expect(wordsOf("vehicle")).toBe("Vehicle");
    expect(wordsOf("standing")).toBe("Safety: 2 of 2");
    expect(wordsOf("nothing")).toBeNull();
  });
});
