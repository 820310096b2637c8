import { describe, expect, it } from "vitest";
import { assessStatic } from "../../../src/physics/assess.ts";
import { secantRate, stiffnessClassOf } from "../../../src/physics/stop/stiffnessClass.ts";
import { stopCurve } from "../../../src/physics/stop/stopCurve.ts";
import { completeRecord } from "../../../src/records/check/completeRecord.ts";
import { fitmentOf } from "../../../src/records/check/fitmentOf.ts";
import { changeRecord } from "../../../src/records/check/storedCheck.ts";
import { similarStop, withSimilarStop } from "../../../src/records/filling/similarStop.ts";
import { storedFromRecord } from "../../../src/records/filling/storedFromRecord.ts";
import { demoPack } from "../../../src/records/pack/demoPack.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { demoRecord } from "../../screens/answer/demoChecks.ts";

describe("a stop without a test sheet", () => {
  const own = { name: "Unknown", duty: "impact", freeHeight: { values: [64], tol: 1 } } as const;
  const bare = changeRecord(storedFromRecord(demoRecord("arm-fits")), (record) => ({
    ...record,
    stop: own,
  }));
  const similar = similarStop(demoPack, own);
  if (similar === null) throw new Error("no stop is similar");
  const taken = withSimilarStop(bare, similar, "mm", inModelUnits);

  it("takes the nearest of the same duty, its distance told", () => {
    const distances = demoPack.stops
      .filter(({ duty }) => duty === "impact")
      .map(({ freeHeight }) => Math.abs((freeHeight.values[0] ?? 0) - 64));
    expect(Math.abs(similar.tallerMm)).toBe(Math.min(...distances));
    expect(taken.record.stop?.estimated?.how).toMatch(
      /as “.+” of the library, \d+\.\d mm (taller|shorter)$/,
    );
  });

  it("keeps what was measured of it, and the class of the other", () => {
    expect(taken.record.stop).toMatchObject(own);
    const [mine, theirs] = [taken.record.stop, similar.stop].map((stop) => {
      const curve = stop?.curve && stopCurve(stop as typeof similar.stop);
      if (!curve?.ok) throw new Error("no curve");
      return stiffnessClassOf(secantRate(curve.value));
    });
    expect(mine).toBe(theirs);
    expect(taken.record.stop?.damping).toBeNull();
  });

  it("still ends in an answer", () => {
    const completion = completeRecord(taken);
    if (!completion.ok) throw new Error(JSON.stringify(completion.missing));
    expect(assessStatic(fitmentOf(completion.value), { samples: 10_000 }).ok).toBe(true);
  });

  it("there is none for a stop whose height is not known", () => {
    expect(similarStop(demoPack, { duty: "impact" })).toBeNull();
  });
});
