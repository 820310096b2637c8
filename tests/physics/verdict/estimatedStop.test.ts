import { describe, expect, test } from "vitest";
import { inModelUnits } from "../../../src/physics/sentence.ts";
import type { CornerDynamics } from "../../../src/physics/stiffness/cornerDynamics.ts";
import { stiffnessCheck, stopClasses } from "../../../src/physics/verdict/stiffness.ts";

function dynamics(classesThatWork: readonly number[]): CornerDynamics {
  return {
    side: "left",
    events: [],
    classesThatWork,
    classWindow: [classesThatWork[0] ?? 0, classesThatWork.at(-1) ?? 0],
    failures: [],
    stiffnessSide: null,
    faults: [],
  };
}

const estimated = { how: "estimate from 60 Shore A", forceShare: 0.25 };

describe("a stop whose curve is an estimate of ± 25 %", () => {
  test("spans every class within its ±", () => {
    expect(stopClasses(130, undefined).estimated).toBeNull();
    expect(stopClasses(130, estimated)).toEqual({ own: 160, estimated: [100, 160] });
    expect(stopClasses(100, estimated).estimated).toEqual([63, 100]);
  });

  test("is ok where all of them work", () => {
    const check = stiffnessCheck(stopClasses(100, estimated), dynamics([63, 100, 160]), []);
    expect(check.state).toBe("ok");
  });

  test("is not sure where only some do, and says to have the stop tested", () => {
    const check = stiffnessCheck(stopClasses(100, estimated), dynamics([100, 160]), []);
    expect(check).toMatchObject({ state: "unsure", reading: "stop.curve" });
    expect(inModelUnits(check.sentence)).toBe(
      "The stop's curve is an estimate: within its ± its class is 63 N/mm to 100 N/mm, and of these only 100 N/mm works here. Have the stop tested, or fit one that was.",
    );
  });

  test("is no where none does; a tested curve is decided by its own class alone", () => {
    expect(stiffnessCheck(stopClasses(100, estimated), dynamics([400]), []).state).toBe("no");
    expect(stiffnessCheck(stopClasses(100, undefined), dynamics([100]), []).state).toBe("ok");
    expect(stiffnessCheck(stopClasses(100, undefined), dynamics([63]), []).state).toBe("no");
  });
});
