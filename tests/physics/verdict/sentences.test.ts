import { describe, expect, it } from "vitest";
import type { Check, Corner, CornerAssessment, Reading } from "../../../src/physics/fitment.ts";
import { balanceCheck } from "../../../src/physics/verdict/balance.ts";
import { decide, decideCarry, worstState } from "../../../src/physics/verdict/decisions.ts";
import { missingCheck, missingRideData } from "../../../src/physics/verdict/missingRideData.ts";
import { reasonOf, verdictOf } from "../../../src/physics/verdict/reason.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import * as messages from "../../../src/words/compiled/physics/verdict.ts";
import { ride, uprightStrut } from "../staticFitments.ts";

const exactly = (...values: number[]): Reading => ({ values, tol: 0 });

function corner(side: "left" | "right", gap: number, rideHeight?: number): Corner {
  return {
    side,
    gap: exactly(gap),
    limits: [],
    ...(rideHeight !== undefined && { rideHeight: exactly(rideHeight) }),
  };
}

function told(check: Check | null): string {
  if (check === null) return "none";
  return `${check.id} ${check.state} ${check.reading ?? "-"}: ${inModelUnits(check.sentence)}`;
}

describe("balance left to right", () => {
  const gaps = (differ: string) =>
    `The gaps differ by ${differ} left to right. Look for a sagged spring or a bent part, and check that the vehicle stands level.`;
  const heights = (differ: string) =>
    `The ride heights differ by ${differ} left to right. Look for a sagged spring, and check tire pressures and that the vehicle stands level.`;
  const level = "balance ok -: Left and right agree within 10.0 mm.";
  it.each<[readonly Corner[], string]>([
    [[corner("left", 40)], "none"],
    [[], "none"],
    [[corner("left", 40), corner("right", 40)], level],
    [[corner("left", 40), corner("right", 50)], level],
    [[corner("left", 40), corner("right", 50.5)], `balance care right.gap: ${gaps("10.5 mm")}`],
    [[corner("left", 51), corner("right", 40)], `balance care left.gap: ${gaps("11.0 mm")}`],
    [[corner("left", 40, 500), corner("right", 40, 510)], level],
    [
      [corner("left", 40, 500), corner("right", 40, 512)],
      `balance care left.rideHeight: ${heights("12.0 mm")}`,
    ],
    [
      [corner("left", 40, 515), corner("right", 40, 500)],
      `balance care right.rideHeight: ${heights("15.0 mm")}`,
    ],
    [[corner("left", 40, 500), corner("right", 40)], level],
    [[corner("left", 40), corner("right", 40, 500)], level],
    // The gap is what the stop feels: it is told first.
    [
      [corner("left", 40, 500), corner("right", 60, 560)],
      `balance care right.gap: ${gaps("20.0 mm")}`,
    ],
  ])("%#", (corners, words) => {
    expect(told(balanceCheck({ ...uprightStrut({}), corners }, 10))).toBe(words);
  });
});

describe("decisions", () => {
  it.each<[number, number, string]>([
    [0.95, 0, "ok"],
    [0.9499, 0.95, "care"],
    [0.9499, 0.9499, "unsure"],
    [0, 0.0501, "unsure"],
    [0, 0.05, "no"],
  ])("wanted %d, lesser %d: %s", (wanted, lesser, state) => {
    expect(decide(wanted, lesser)).toBe(state);
  });

  it.each([
    [0, "ok"],
    [0.25, "ok"],
    [0.2501, "care"],
    [0.5, "care"],
    [0.5001, "no"],
  ])("a carried share of %d: %s", (share, state) => {
    expect(decideCarry(share)).toBe(state);
  });

  it("the worst is no, then unsure, then care", () => {
    expect(worstState([])).toBe("ok");
    expect(worstState(["ok", "care"])).toBe("care");
    expect(worstState(["unsure", "care"])).toBe("unsure");
    expect(worstState(["unsure", "no", "ok"])).toBe("no");
  });
});

describe("ride data that are not known", () => {
  it("are named, the corner's own first", () => {
    const weighed = { ...corner("left", 40), cornerMassKg: exactly(450) };
    expect(missingRideData(weighed, ride)).toEqual([]);
    expect(missingRideData(corner("left", 40), ride)).toEqual(["cornerMassKg"]);
    const { tyreRateNPerMm: _, ...noTyre } = ride;
    expect(missingRideData(weighed, noTyre)).toEqual(["tyreRateNPerMm"]);
    expect(missingRideData(corner("left", 40), undefined)).toHaveLength(7);
  });

  it("make a check that cannot be made, in one sentence", () => {
    expect(
      told(missingCheck("stiffness", messages.whichStiffnessWorks, "right", ["cornerMassKg"])),
    ).toMatch(
      /^stiffness unsure right\.cornerMassKg: Can.t tell which stiffness works: not known is .+\. Weigh, look up or estimate it\.$/,
    );
    expect(
      told(
        missingCheck("earlyContact", messages.howOftenStopTouches, "left", [
          "cornerMassKg",
          "wheelRateNPerMm",
          "tyreRateNPerMm",
        ]),
      ),
    ).toBe(
      "earlyContact unsure left.cornerMassKg: Can't tell how often the stop touches: not known are the left corner weight, the wheel rate and the tire rate. Weigh, look up or estimate them.",
    );
  });
});

function assessed(
  side: "left" | "right",
  checks: readonly Partial<Check>[],
  change: Partial<CornerAssessment> = {},
): CornerAssessment {
  return {
    side,
    wheelTravelToContactMm: 40,
    reserveMm: 12,
    hardLimit: "tyre",
    checks: checks.map((check) => ({
      id: "clearance",
      state: "ok",
      sentence: ["All well."],
      ...check,
    })),
    ...change,
  } as unknown as CornerAssessment;
}

describe("the reason of a verdict", () => {
  const because = (...corners: CornerAssessment[]) => inModelUnits(reasonOf(corners));

  it("says that nothing was measured", () => {
    expect(because()).toBe("No corner was measured. Measure at least one side.");
    expect(verdictOf([])).toBe("ok");
  });

  it("where all is well, tells the tightest side's travel", () => {
    const left = assessed("left", [{}], { reserveMm: 12 });
    const right = assessed("right", [{}], { reserveMm: 9, wheelTravelToContactMm: 38 });
    expect(because(left, right)).toMatch(
      /^The stop touches after 38\.0 mm of wheel travel and is fully compressed 9\.0 mm before .*tire.*\.$/,
    );
    expect(because(right, left)).toBe(because(left, right));
    const alike = assessed("right", [{}], { wheelTravelToContactMm: 44 });
    expect(because(left, alike)).toMatch(/^The stop touches after 40\.0 mm/);
    expect(because(assessed("left", [{}], { reserveMm: null }), alike)).toMatch(
      /^The stop touches after 44\.0 mm/,
    );
    expect(because(assessed("left", [{}], { hardLimit: null, reserveMm: null }))).toBe(
      "The stop touches after 40.0 mm of wheel travel and is fully compressed 0.0 mm before hard contact.",
    );
  });

  it("is the worst check's own sentence, with its side where there are two", () => {
    const bad: Partial<Check> = { state: "no", sentence: ["The stop is too low."] };
    expect(because(assessed("left", [{}, bad]))).toBe("The stop is too low.");
    expect(because(assessed("left", [{}]), assessed("right", [bad]))).toBe(
      "Right: the stop is too low.",
    );
    expect(because(assessed("left", [bad]), assessed("right", [{}]))).toBe(
      "Left: the stop is too low.",
    );
  });

  it("keeps a sentence that begins with a number as it is", () => {
    const bad: Partial<Check> = {
      state: "no",
      sentence: [{ kind: "length", value: 3 }, " are missing."],
    };
    expect(because(assessed("left", [bad]), assessed("right", [{}]))).toBe(
      "Left: 3.0 mm are missing.",
    );
  });

  it("of balance names no side", () => {
    const bad: Partial<Check> = { id: "balance", state: "care", sentence: ["The gaps differ."] };
    expect(because(assessed("left", [bad]), assessed("right", [{}]))).toBe("The gaps differ.");
  });

  it("takes the weightiest check, then the least likely, then the least reserve", () => {
    const order = ["clearance", "earlyContact", "stiffness", "plausible", "balance"] as const;
    const all = order.map((id): Partial<Check> => ({ id, state: "care", sentence: [`By ${id}.`] }));
    for (let from = 0; from < order.length; from++) {
      const some = all.slice(from).reverse();
      expect(because(assessed("left", some))).toBe(`By ${order[from]}.`);
    }
    const unlikely: Partial<Check> = { state: "care", probability: 0.2, sentence: ["Unlikely."] };
    const likely: Partial<Check> = { state: "care", probability: 0.6, sentence: ["Likelier."] };
    const untold: Partial<Check> = { state: "care", sentence: ["Untold."] };
    expect(because(assessed("left", [likely, untold, unlikely]))).toBe("Unlikely.");
    expect(because(assessed("left", [untold, likely]))).toBe("Likelier.");
    const here: Partial<Check> = { state: "care", sentence: ["Here."] };
    expect(
      because(
        assessed("left", [here], { reserveMm: 8 }),
        assessed("right", [here], { reserveMm: 4 }),
      ),
    ).toBe("Right: here.");
    expect(
      because(
        assessed("left", [here], { reserveMm: null }),
        assessed("right", [here], { reserveMm: 4 }),
      ),
    ).toBe("Left: here.");
  });

  it("passes over lesser checks", () => {
    const care: Partial<Check> = { id: "clearance", state: "care", sentence: ["Care."] };
    const no: Partial<Check> = { id: "balance", state: "no", sentence: ["No."] };
    expect(because(assessed("left", [care, no]))).toBe("No.");
    expect(verdictOf([assessed("left", [care]), assessed("right", [no])])).toBe("no");
  });
});
