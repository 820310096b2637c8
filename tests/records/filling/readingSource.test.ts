import { describe, expect, it } from "vitest";
import { newStoredCheck } from "../../../src/records/check/storedCheck.ts";
import { sourceIn } from "../../../src/records/entry/readingSource.ts";
import { setEntry } from "../../../src/records/filling/changes.ts";
import { withChoice } from "../../../src/records/filling/choice.ts";
import { withSides } from "../../../src/records/filling/sides.ts";
import { withPackStop } from "../../../src/records/filling/stopSources.ts";
import { withEstimates } from "../../../src/records/filling/withEstimates.ts";
import { demoPack } from "../../../src/records/pack/demoPack.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";

const mm = (...texts: string[]) => ({ texts, unit: "mm", tol: "" }) as const;

describe("who says a reading", () => {
  const [stop] = demoPack.stops;
  if (!stop) throw new Error("the pack has stops");

  it("is the pack for the height of its stop, until a person types another one over it", () => {
    const taken = withPackStop(newStoredCheck(), stop, demoPack, "mm");
    expect(sourceIn(taken.record, "stop.freeHeight")).toBe("pack");
    const entry = taken.entries["stop.freeHeight"];
    if (!entry) throw new Error("the height stands in the entries");
    const wider = setEntry(taken, "stop.freeHeight", { ...entry, tol: "3" });
    expect(sourceIn(wider.record, "stop.freeHeight")).toBe("pack");
    const typed = setEntry(taken, "stop.freeHeight", mm("61.5"));
    expect(sourceIn(typed.record, "stop.freeHeight")).toBe("measured");
  });

  it("is an estimate for half of an axle's weight, and the person for a wheel scale", () => {
    const sided = withSides(newStoredCheck(), "both");
    const weighed = setEntry(withChoice(sided, "left.cornerMassKg.way", "axle"), "axleMassKg", {
      texts: ["1120"],
      unit: "kg",
      tol: "",
    });
    const halved = withEstimates(weighed, "mm", demoPack, inModelUnits);
    expect(halved.record.corners[0]?.cornerMassKg?.values).toEqual([560]);
    expect(sourceIn(halved.record, "left.cornerMassKg")).toBe("estimated");
    const scale = setEntry(sided, "right.cornerMassKg", { texts: ["560"], unit: "kg", tol: "" });
    expect(sourceIn(scale.record, "right.cornerMassKg")).toBe("measured");
    expect(sourceIn(scale.record, "left.gap")).toBeNull();
  });
});
