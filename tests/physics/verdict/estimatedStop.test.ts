import { describe, expect, test } from "vitest";
import { assessStatic } from "../../../src/physics/assess.ts";
import type { CornerDynamics } from "../../../src/physics/stiffness/cornerDynamics.ts";
import { stiffnessCheck, stopClasses } from "../../../src/physics/verdict/stiffness.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { demoFitment } from "../demoFitments.ts";
import { given } from "../stopTests/outcomes.ts";

function dynamics(classesThatWork: readonly number[]): CornerDynamics {
  return {
    side: "left",
    events: [],
    undampedEvents: null,
    fromTest: null,
    stopItselfPasses: true,
    ownFailures: [],
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
      "The stop's curve is an estimate. Within its ± its class is 63 N/mm to 100 N/mm, and of these only 100 N/mm works here. Have the stop tested, or fit one that was.",
    );
  });

  test("is no where none does; a tested curve is decided by its own class alone", () => {
    expect(stiffnessCheck(stopClasses(100, estimated), dynamics([400]), []).state).toBe("no");
    expect(stiffnessCheck(stopClasses(100, undefined), dynamics([100]), []).state).toBe("ok");
    expect(stiffnessCheck(stopClasses(100, undefined), dynamics([63]), []).state).toBe("no");
  });
});

describe("a stop made to carry whose curve is an estimate", () => {
  const fitment = demoFitment("damper-shaft");
  const early = (forceShare: number | null, payload: number) => {
    const { ride, stop } = fitment;
    const assessed = given(
      assessStatic(
        {
          ...fitment,
          stop: {
            ...stop,
            duty: "carry",
            ...(forceShare === null ? {} : { estimated: { how: "estimate", forceShare } }),
          },
          ride: { ...ride, payloadPerCornerKg: payload },
        },
        { samples: 10_000 },
      ),
    );
    return assessed.corners[0]?.checks.find(({ id }) => id === "earlyContact");
  };

  test("is not sure at some payload where a tested one is decided, and no otherwise than it elsewhere", () => {
    let unsure = 0;
    for (let payload = 0; payload <= 400; payload += 10) {
      const tested = early(null, payload);
      const estimate = early(0.25, payload);
      expect(tested?.state).not.toBe("unsure");
      if (estimate?.state === "unsure") {
        unsure++;
        expect(estimate.reading).toBe("stop.curve");
      } else {
        expect(estimate?.state).toBe(tested?.state);
      }
      expect(early(0, payload)?.state).toBe(tested?.state);
    }
    expect(unsure).toBeGreaterThan(0);
  });
});
