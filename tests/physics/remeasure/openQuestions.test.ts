import { describe, expect, it } from "vitest";
import type { Assessment, Check, CornerAssessment, Side } from "../../../src/physics/fitment.ts";
import { isBetween, openQuestions } from "../../../src/physics/remeasure/openQuestions.ts";

/*
 * Model section 6: the verdict is the worst of its checks, no > unsure > care > ok; a check is decided at
 * a probability of 0.95 or 0.05.
 */

const check = (id: Check["id"], state: Check["state"], more: Partial<Check> = {}): Check => ({
  id,
  state,
  sentence: [`${id} ${state}`],
  ...more,
});

/** What the questions are read from; nothing else of a corner counts. */
function corner(
  checks: readonly Check[],
  change: Partial<CornerAssessment> = {},
  side: Side = "left",
): CornerAssessment {
  const known = { side, reserveMm: 8, freeTravelNeededUnladenMm: 40, missing: [], checks };
  return { ...known, ...change } as unknown as CornerAssessment;
}

const asked = (...corners: CornerAssessment[]) => {
  const { level, questions } = openQuestions({ corners } as unknown as Assessment);
  return {
    level,
    questions: questions.map(({ side, check: { id }, why, readings }) => [side, id, why, readings]),
  };
};

const settled = { level: null, questions: [] };

describe("a probability between the limits", () => {
  it.each([
    [0.05, false],
    [0.0501, true],
    [0.5, true],
    [0.9499, true],
    [0.95, false],
  ])("%d: %s", (probability, between) => {
    expect(isBetween(probability)).toBe(between);
  });
});

describe("what the verdict hangs on", () => {
  it("is nothing where all fits", () => {
    expect(asked(corner([check("clearance", "ok"), check("stiffness", "ok")]))).toEqual(settled);
  });

  it("is nothing where a check fails, whatever else is unsure", () => {
    const failing = corner([check("clearance", "unsure"), check("stiffness", "no")]);
    expect(asked(failing)).toEqual(settled);
    const other = corner([check("stiffness", "no")], {}, "right");
    expect(asked(corner([check("clearance", "unsure")]), other)).toEqual(settled);
  });

  it("is a reading that cannot be right where a check fails, for it may be why", () => {
    const failing = corner([
      check("clearance", "unsure"),
      check("plausible", "unsure", { reading: "left.gap" }),
      check("stiffness", "no"),
    ]);
    expect(asked(failing)).toEqual({
      level: "unsure",
      questions: [["left", "plausible", "implausible", ["left.gap"]]],
    });
  });

  it("is what is unsure, each side's own, before what asks for care", () => {
    const both = asked(
      corner([check("clearance", "unsure"), check("earlyContact", "care", { probability: 0.5 })]),
      corner([check("earlyContact", "unsure")], {}, "right"),
    );
    expect(both).toEqual({
      level: "unsure",
      questions: [
        ["left", "clearance", "doubt", []],
        ["right", "earlyContact", "doubt", []],
      ],
    });
  });

  it("is what asks for care by its doubt alone, where all else fits", () => {
    const careful = corner([
      check("clearance", "care", { probability: 0.6 }),
      check("stiffness", "ok"),
    ]);
    expect(asked(careful)).toEqual({
      level: "care",
      questions: [["left", "clearance", "doubt", []]],
    });
  });

  it.each<[string, Check]>([
    ["sure to lack what is wanted", check("clearance", "care", { probability: 0.05 })],
    ["no probability", check("balance", "care")],
  ])("is nothing where a check asks for care for certain: %s", (_, certain) => {
    expect(asked(corner([certain]))).toEqual(settled);
    const doubtful = check("earlyContact", "care", { probability: 0.5 });
    expect(asked(corner([certain, doubtful]))).toEqual(settled);
  });

  it("does not take a probability between the limits for doubt where the check fits or fails", () => {
    // Of a corner that fits, the probability may be that of something else.
    expect(asked(corner([check("clearance", "ok", { probability: 0.5 })]))).toEqual(settled);
    expect(asked(corner([check("clearance", "no", { probability: 0.5 })]))).toEqual(settled);
  });
});

describe("why a check is unsure, and which readings it asks for", () => {
  const why = (one: Check, change: Partial<CornerAssessment> = {}, side: Side = "left") =>
    asked(corner([one], change, side)).questions[0]?.slice(2);

  it("a clearance without a hard limit: that was never measured", () => {
    const bare = { reserveMm: null };
    expect(why(check("clearance", "unsure"), bare, "right")).toEqual([
      "missing",
      ["right.limits.0"],
    ]);
    expect(why(check("clearance", "unsure"))).toEqual(["doubt", []]);
  });

  it("a reading that cannot be right: that one, where it is named", () => {
    const named = check("plausible", "unsure", { reading: "armAngle" });
    expect(why(named)).toEqual(["implausible", ["armAngle"]]);
    expect(why(check("plausible", "unsure"))).toEqual(["implausible", []]);
  });

  it("ride data that are not known, by their names, the corner's mass by its side", () => {
    const missing = { missing: ["wheelRateNPerMm", "cornerMassKg"] } as const;
    expect(why(check("stiffness", "unsure"), missing, "right")).toEqual([
      "missing",
      ["ride.wheelRateNPerMm", "right.cornerMassKg"],
    ]);
    expect(why(check("earlyContact", "unsure"), missing)?.[0]).toBe("missing");
  });

  it("a curve that a calculation failed on, also where ride data are missing", () => {
    const curve = check("stiffness", "unsure", { reading: "stop.curve" });
    expect(why(curve)).toEqual(["fault", ["stop.curve"]]);
    expect(why(curve, { missing: ["wheelRateNPerMm"] })).toEqual(["fault", ["stop.curve"]]);
  });

  it("early contact by doubt where the travel wanted is known, else by a calculation that failed", () => {
    const early = check("earlyContact", "unsure", { reading: "left.gap" });
    expect(why(early)).toEqual(["doubt", []]);
    expect(why(early, { freeTravelNeededUnladenMm: null })).toEqual(["fault", ["left.gap"]]);
  });

  it("a stiffness that is unsure with everything known: a calculation failed", () => {
    expect(why(check("stiffness", "unsure"))).toEqual(["fault", []]);
    const named = check("stiffness", "unsure", { reading: "left.gap" });
    expect(why(named)).toEqual(["fault", ["left.gap"]]);
  });
});
