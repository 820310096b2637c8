import { describe, expect, it } from "vitest";
import { assessStatic } from "../../../src/physics/assess.ts";
import type {
  Check,
  CheckId,
  Corner,
  CornerAssessment,
  Fitment,
  State,
} from "../../../src/physics/fitment.ts";
import { rulesOf } from "../../../src/physics/road/useRules.ts";
import { inModelUnits } from "../../../src/physics/sentence.ts";
import { advise } from "../../../src/physics/verdict/advice.ts";
import { unwrapped } from "../demoFitments.ts";
import { exact, uprightStrut } from "../staticFitments.ts";

const fitment = uprightStrut({});
const rules = rulesOf("daily");
let assessedOnce: CornerAssessment | undefined;
function base(): CornerAssessment {
  assessedOnce ??= unwrapped(assessStatic(fitment, { samples: 10_000 })).corners[0];
  if (assessedOnce === undefined) throw new Error("no corner");
  return assessedOnce;
}

type Intervals = Partial<CornerAssessment["intervals"]>;

function told(
  states: Partial<Record<CheckId, State | Partial<Check>>>,
  figures: Partial<CornerAssessment>,
  { intervals = {}, on = fitment }: { intervals?: Intervals; on?: Fitment } = {},
): string[] {
  const checks = Object.entries(states).map(([id, given]): Check => {
    const change = typeof given === "string" ? { state: given } : given;
    return { id: id as CheckId, state: "ok", sentence: ["Told."], ...change };
  });
  const assessed: CornerAssessment = {
    ...base(),
    hardLimit: "tyre",
    leverRatio: 2,
    ...figures,
    intervals: { ...base().intervals, spacerMm: null, tallerMm: null, ...intervals },
    checks,
  };
  const corner = on.corners[0] as Corner;
  return advise(on, corner, assessed, rules).map((advice) => {
    const named = "reading" in advice ? ` (${advice.reading})` : "";
    return `${advice.kind}${named}: ${inModelUnits(advice.sentence)}`;
  });
}

describe("more height", () => {
  it("a taller stop or a spacer, and from how much on it is too early", () => {
    const figures = { spacerMm: 4, tallerMm: 8, mostExtraHeightMm: 12 };
    expect(told({ clearance: "no" }, figures)).toEqual([
      "taller: Fit a stop of the same build taller by 8.0 mm, or a spacer of 4.0 mm. More than 12.0 mm would be met too early.",
    ]);
    const intervals: Intervals = { spacerMm: [3, 5], tallerMm: [6, 10] };
    expect(
      told({ clearance: "no" }, { ...figures, mostExtraHeightMm: null }, { intervals }),
    ).toEqual([
      "taller: Fit a stop of the same build taller by 8.0 mm (95 %: 6.0 mm to 10.0 mm), or a spacer of 4.0 mm (95 %: 3.0 mm to 5.0 mm). From how much on it would be met too early is not known.",
    ]);
  });

  it("a taller stop that just may be, and a spacer that just may be", () => {
    const figures = { spacerMm: 4, tallerMm: 8 };
    expect(told({ clearance: "no" }, { ...figures, mostExtraHeightMm: 8 })[0]).toMatch(
      /^taller: Fit a stop of the same build taller by 8\.0 mm/,
    );
    expect(told({ clearance: "no" }, { ...figures, mostExtraHeightMm: 4 })[0]).toMatch(
      /^taller: Fit a spacer of 4\.0 mm, and no more than 4\.0 mm\./,
    );
    expect(told({ clearance: "no" }, { ...figures, mostExtraHeightMm: 0 })[0]).toMatch(
      /the stop must grow by at least 4\.0 mm, but not to be met too early it may grow by no more than 0\.0 mm\./,
    );
  });

  it("none where the reserve is sure, or where it is just what is wanted", () => {
    expect(told({ clearance: "ok" }, { spacerMm: 4, tallerMm: 8, mostExtraHeightMm: 12 })).toEqual(
      [],
    );
    expect(
      told({ clearance: "care" }, { spacerMm: 0, tallerMm: 0, mostExtraHeightMm: 12 }),
    ).toEqual(["taller: A spacer of 0.0 mm makes it sure; so may a closer reading."]);
  });

  it("comes before less height", () => {
    const figures = { spacerMm: 4, tallerMm: 8, mostExtraHeightMm: -3 };
    expect(told({ clearance: "no", earlyContact: "no" }, figures)).toEqual([
      "noHeightFits: No height fits: to keep 5.0 mm of reserve the stop must grow by at least 4.0 mm, but not to be met too early it must shrink by at least 3.0 mm. What would help: more room before the tyre touches (about 14.0 mm of wheel travel), a stop of another build that does its work in less compression, or less payload.",
    ]);
  });

  it("a spacer alone where a taller stop would be met too early", () => {
    expect(told({ clearance: "no" }, { spacerMm: 4, tallerMm: 8, mostExtraHeightMm: 6 })).toEqual([
      "taller: Fit a spacer of 4.0 mm, and no more than 6.0 mm. A taller stop of the same build would be met too early.",
    ]);
  });

  it("no height where even the spacer would: 3 mm short at 2 : 1 are 6 mm of wheel travel", () => {
    const figures = { spacerMm: 4, tallerMm: 8, mostExtraHeightMm: 1 };
    const words = (limit: string) =>
      `noHeightFits: No height fits: to keep 5.0 mm of reserve the stop must grow by at least 4.0 mm, but not to be met too early it may grow by no more than 1.0 mm. What would help: more room before ${limit} (about 6.0 mm of wheel travel), a stop of another build that does its work in less compression, or less payload.`;
    expect(told({ clearance: "no" }, figures)).toEqual([words("the tyre touches")]);
    expect(told({ clearance: "no" }, { ...figures, hardLimit: null })).toEqual([
      words("the hard limit"),
    ]);
  });

  it("a spacer that makes it sure, or a closer reading where that would be met too early", () => {
    const figures = { spacerMm: -1, tallerMm: -2, mostExtraHeightMm: 10 };
    const intervals: Intervals = { spacerMm: [-4, 2] };
    const named = { state: "care" as const, reading: "pivotToStop" };
    const sure = "A spacer of 2.0 mm makes it sure; so may a closer reading.";
    expect(told({ clearance: named }, figures, { intervals })).toEqual([
      `taller (pivotToStop): ${sure}`,
    ]);
    expect(told({ clearance: "care" }, figures, { intervals })).toEqual([`taller: ${sure}`]);
    const early = { ...figures, mostExtraHeightMm: 1.5 };
    const again = (name: string) =>
      `Measure ${name} again, more closely: the spacer of 2.0 mm that would make it sure would be met too early.`;
    expect(told({ clearance: named }, early, { intervals })).toEqual([
      `measureAgain (pivotToStop): ${again("the distance from pivot to stop")}`,
    ]);
    expect(told({ clearance: "care" }, early, { intervals })).toEqual([
      `measureAgain: ${again("the left gap")}`,
    ]);
    for (const mostExtraHeightMm of [2, null]) {
      expect(told({ clearance: "care" }, { ...figures, mostExtraHeightMm }, { intervals })).toEqual(
        [`taller: ${sure}`],
      );
    }
    const last = { earlyContact: { state: "unsure" as const, reading: "left.gap" } };
    expect(told({ ...last, clearance: named }, figures, { intervals })).toEqual([
      `taller (pivotToStop): ${sure}`,
      "measureAgain (left.gap): Told.",
    ]);
    expect(told({ clearance: "care" }, figures)).toEqual([
      "taller: A spacer of 0.0 mm makes it sure; so may a closer reading.",
    ]);
  });
});

describe("less height", () => {
  const carrying = ". Carrying less, or a stiffer or higher spring, frees travel too.";

  it("a shorter stop, as far as the reserve allows", () => {
    const figures = { spacerMm: -9, tallerMm: -18, mostExtraHeightMm: -6 };
    expect(told({ clearance: "ok", earlyContact: "no" }, figures)).toEqual([
      `shorter: Fit a stop shorter by 6.0 mm or a little more; up to 18.0 mm there is still enough left before the hard limit${carrying}`,
    ]);
  });

  it("a shorter stop, where no limit was measured", () => {
    const figures = { spacerMm: null, tallerMm: null, mostExtraHeightMm: -6 };
    expect(told({ clearance: "unsure", earlyContact: "care" }, figures)).toEqual([
      `shorter: Fit a stop shorter by 6.0 mm${carrying}`,
    ]);
  });

  it("no height, where the reserve lets it shrink less: 3 mm at 2 : 1", () => {
    const figures = { spacerMm: -3, tallerMm: -5, mostExtraHeightMm: -6 };
    expect(told({ clearance: "ok", earlyContact: "no" }, figures)).toEqual([
      "noHeightFits: No height fits: to keep 5.0 mm of reserve the stop may shrink by no more than 3.0 mm, but not to be met too early it must shrink by at least 6.0 mm. What would help: more room before the tyre touches (about 6.0 mm of wheel travel), a stop of another build that does its work in less compression, or less payload.",
    ]);
  });

  it("a shorter stop, where the reserve lets it shrink just as far", () => {
    const figures = { spacerMm: -3, tallerMm: -6, mostExtraHeightMm: -6 };
    expect(told({ clearance: "ok", earlyContact: "no" }, figures)).toEqual([
      `shorter: Fit a stop shorter by 6.0 mm or a little more; up to 6.0 mm there is still enough left before the hard limit${carrying}`,
    ]);
  });

  it("none where it is met late enough, or not known to be early", () => {
    const figures = { spacerMm: -9, tallerMm: -18 };
    for (const mostExtraHeightMm of [2, 0, null]) {
      expect(
        told({ clearance: "ok", earlyContact: "no" }, { ...figures, mostExtraHeightMm }),
      ).toEqual([]);
    }
    const early = { ...figures, mostExtraHeightMm: -6 };
    expect(told({ clearance: "ok", earlyContact: "unsure" }, early)).toEqual([]);
  });
});

describe("a stop made to carry", () => {
  const carry: Fitment = { ...fitment, stop: { ...fitment.stop, duty: "carry" } };

  it("is to be pressed by a quarter of δu: 0.25·30 + 45 − 60 = 7.5 mm less", () => {
    const found = told(
      { clearance: "ok", earlyContact: "care" },
      { spacerMm: -20, tallerMm: -40, loadedSagMm: 60 },
      { on: carry },
    );
    expect(found[0]).toMatch(/^shorter: Fit a stop shorter by 7\.5 mm or a little more; up to 40/);
  });

  it("has no height of its own where sag or layout give none", () => {
    const figures = { spacerMm: -20, tallerMm: -40, loadedSagMm: 60 };
    const states = { clearance: "ok", earlyContact: "care" } as const;
    expect(told(states, { ...figures, loadedSagMm: null }, { on: carry })).toEqual([]);
    expect(told(states, { ...figures, loadedSagMm: 2e6 }, { on: carry })).toEqual([]);
    const flat: Fitment = {
      ...carry,
      layout: { kind: "strut", readings: { stopLean: exact(89.96) } },
    };
    expect(told(states, figures, { on: flat })).toEqual([]);
    const fits = { clearance: "ok", earlyContact: "ok" } as const;
    const unknown = ["fits: It could be shorter by 20.0 mm."];
    expect(told(fits, { ...figures, loadedSagMm: null }, { on: carry })).toEqual(unknown);
    expect(told(fits, { ...figures, loadedSagMm: 2e6 }, { on: carry })).toEqual(unknown);
    expect(told(fits, figures, { on: flat })).toEqual(unknown);
    // 0.25·30 + 45 − 40 = 12.5 mm.
    expect(told(fits, { ...figures, loadedSagMm: 40 }, { on: carry })).toEqual([
      "fits: Its height is right: it could be shorter by 20.0 mm or taller by 12.5 mm and still fit.",
    ]);
  });
});

describe("another stiffness", () => {
  it.each<[Check["side"], string]>([
    ["soft", "a stiffer stop"],
    ["stiff", "a softer stop"],
    [undefined, "a stop"],
  ])("%s: %s", (side, words) => {
    const stiffness = { state: "no" as const, ...(side === undefined ? {} : { side }) };
    expect(told({ stiffness }, { classWindow: [100, 250] })).toEqual([
      `otherStiffness: Fit ${words} of 100 N/mm to 250 N/mm at this height.`,
    ]);
    expect(told({ stiffness }, { classWindow: [160, 160] })).toEqual([
      `otherStiffness: Fit ${words} of 160 N/mm at this height.`,
    ]);
  });

  it("none at this height", () => {
    expect(told({ stiffness: "no" }, { classWindow: null })).toEqual([
      "otherStiffness: Change the height first: at this height no stiffness works. If none does at any height, move the hard limit or expect less of the suspension.",
    ]);
  });
});

describe("readings to take again, and what fits", () => {
  it("each reading once", () => {
    const unsure = { state: "unsure" as const, reading: "left.gap" };
    expect(told({ earlyContact: unsure, plausible: unsure, stiffness: "unsure" }, {})).toEqual([
      "measureAgain (left.gap): Told.",
    ]);
  });

  it("says how much shorter or taller it could be", () => {
    const fits = { clearance: "ok", earlyContact: "ok" } as const;
    const figures = { spacerMm: -7, tallerMm: -14, mostExtraHeightMm: 9 };
    expect(told(fits, figures)).toEqual([
      "fits: Its height is right: it could be shorter by 7.0 mm or taller by 9.0 mm and still fit.",
    ]);
    expect(told(fits, { ...figures, mostExtraHeightMm: null })).toEqual([
      "fits: It could be shorter by 7.0 mm.",
    ]);
    expect(told(fits, { spacerMm: null, tallerMm: null, mostExtraHeightMm: -1 })).toEqual([
      "fits: Its height is right: it could be shorter by 0.0 mm or taller by 0.0 mm and still fit.",
    ]);
    expect(told(fits, { ...figures, spacerMm: 1, mostExtraHeightMm: null })).toEqual([
      "fits: It could be shorter by 0.0 mm.",
    ]);
    for (const state of ["care", "no"] as const)
      expect(told({ ...fits, balance: state }, figures)).toEqual([]);
    const unsure = { state: "unsure" as const, reading: "left.gap" };
    expect(told({ ...fits, plausible: unsure }, figures).map((one) => one.split(":")[0])).toEqual([
      "fits",
      "measureAgain (left.gap)",
    ]);
  });

  it("says that it fits of nothing that is not sure", () => {
    const figures = { spacerMm: -7, tallerMm: -14, mostExtraHeightMm: 9 };
    expect(told({ clearance: "unsure", earlyContact: "ok" }, figures)).toEqual([]);
    expect(told({ clearance: "ok", earlyContact: "unsure" }, figures)).toEqual([]);
    expect(told({ stiffness: "ok", plausible: "ok" }, figures)).toEqual([]);
  });
});
