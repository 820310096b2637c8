import { describe, expect, it } from "vitest";
import type { newStoredCheck } from "../../../src/records/check/storedCheck.ts";
import { storedFromRecord } from "../../../src/records/filling/storedFromRecord.ts";
import { besideStep, withShortWalk } from "../../../src/screens/guide/shortWalk.ts";
import { stepsOf } from "../../../src/screens/guide/steps.ts";
import { demoRecord } from "../answer/demoChecks.ts";

/** Every step that "Next" leads to, from the first on. */
function walked(stored: ReturnType<typeof newStoredCheck>): readonly string[] {
  const all = stepsOf(stored);
  const ids: string[] = [];
  for (let step = all.at(0); step !== undefined; ) {
    ids.push(step.id);
    step = besideStep(stored, all, all.indexOf(step)).after;
  }
  return ids;
}

describe("a short walk", () => {
  const whole = storedFromRecord(demoRecord("arm-fits"));
  const short = withShortWalk(whole);

  it("measures one side with a tape, and asks no weight, rate or requirement", () => {
    const ids = walked(short);
    expect(ids.filter((id) => /^right\.|^ride\.|cornerMassKg$|^rules$/.test(id))).toEqual([]);
    expect(ids).toEqual(expect.arrayContaining(["cautions", "left.gap", "stop", "finish"]));
    expect(ids.length).toBeLessThan(walked(whole).length - 8);
  });

  it("leads back the same way, and on among the others once one was asked for", () => {
    const all = stepsOf(short);
    const at = (id: string) => all.findIndex((step) => step.id === id);
    expect(besideStep(short, all, at("finish")).before?.id).not.toMatch(/^ride\.|^rules$/);
    expect(besideStep(short, all, at("ride.wheelRateNPerMm")).after?.id).toBe(
      "ride.tyreRateNPerMm",
    );
  });

  it("is no other walk for a check that is begun as usual", () => {
    const all = stepsOf(whole);
    expect(walked(whole)).toEqual(all.map(({ id }) => id));
  });
});
