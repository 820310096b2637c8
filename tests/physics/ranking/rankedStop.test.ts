import { describe, expect, it } from "vitest";
import { type AssessOptions, assessFitment } from "../../../src/physics/assess.ts";
import type {
  Assessment,
  Check,
  CheckId,
  CornerAssessment,
  EventResult,
  Fitment,
  Stop,
} from "../../../src/physics/fitment.ts";
import { spacersByMm } from "../../../src/physics/prescription/candidates.ts";
import { judge } from "../../../src/physics/prescription/judgement.ts";
import {
  compareRanked,
  faultyStop,
  type RankedStop,
  rankedStop,
} from "../../../src/physics/ranking/rankedStop.ts";
import { rankStops } from "../../../src/physics/ranking/rankStops.ts";
import { rulesOf } from "../../../src/physics/road/useRules.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { unwrapped } from "../demoFitments.ts";
import { exact, tyreLimit, uprightStrut, within } from "../staticFitments.ts";

const fitment = uprightStrut({});
const rules = rulesOf("daily");
const base = unwrapped(assessFitment(fitment, { samples: 10_000 }));

/** The same assessment with one corner's figures and its failing checks as told. */
function withCorner(
  change: Partial<CornerAssessment>,
  ...failing: readonly (readonly [CheckId, Check["state"]])[]
): Assessment {
  const [corner] = base.corners;
  if (corner === undefined) throw new Error("no corner");
  const checks = failing.map(([id, state]): Check => ({ id, state, sentence: ["Told."] }));
  return { ...base, corners: [{ ...corner, ...change, checks }] };
}

function rowOf(assessment: Assessment, stop: Partial<Stop> = {}): RankedStop {
  const tried = { ...fitment, stop: { ...fitment.stop, ...stop } };
  const judgement = judge(assessment, tried, { keepsTravel: true, heightMm: 50 });
  const combination = {
    candidate: { id: "tried", stop: tried.stop },
    spacerMm: 0,
    change: "stop",
  } as const;
  return rankedStop({ combination, fitment: tried, assessment, judgement }, rules);
}

describe("failing by a little", () => {
  // 10 mm, common practice; the reserve wanted is 5 mm.
  it.each([
    [-5, "nearly"],
    [-5.01, "doesNotFit"],
    [null, "doesNotFit"],
  ])("a reserve of %s mm: %s", (reserveMm, group) => {
    expect(rowOf(withCorner({ reserveMm }, ["clearance", "no"])).group).toBe(group);
  });

  it.each<[number, number | null, string]>([
    [40, 50, "nearly"],
    [40, 50.01, "doesNotFit"],
    [40, null, "doesNotFit"],
  ])("met after %d mm where %s are needed: %s", (contact, needed, group) => {
    const assessment = withCorner({ wheelTravelToContactMm: contact, freeTravelNeededMm: needed }, [
      "earlyContact",
      "no",
    ]);
    expect(rowOf(assessment).group).toBe(group);
  });

  // Half of δu, and a tenth more: 18 of 30 mm.
  it.each<[number | undefined, string]>([
    [18, "nearly"],
    [18.1, "doesNotFit"],
    [undefined, "doesNotFit"],
  ])("a stop made to carry, pressed by %s of 30 mm: %s", (pressed, group) => {
    const change = pressed === undefined ? {} : { loadedCompressionMm: pressed };
    const row = rowOf(withCorner(change, ["earlyContact", "no"]), { duty: "carry" });
    expect(row.group).toBe(group);
    expect(row.margins.freeTravelMm).toBeNull();
  });

  it.each<[readonly number[] | null, string]>([
    [[160, 250], "nearly"],
    [[250, 400], "doesNotFit"],
    [[], "doesNotFit"],
    [null, "doesNotFit"],
  ])("a class of 100 N/mm where %s work: %s", (classesThatWork, group) => {
    const assessment = withCorner({ stopRateClass: 100, classesThatWork }, ["stiffness", "no"]);
    expect(rowOf(assessment).group).toBe(group);
  });

  it("a class of 10 N/mm, the softest, is beside none where none is known to work", () => {
    const assessment = withCorner({ stopRateClass: 10, classesThatWork: null }, [
      "stiffness",
      "no",
    ]);
    expect(rowOf(assessment).group).toBe("doesNotFit");
  });

  it("is all that fails failing by a little, on the side where it does", () => {
    const near = withCorner({ reserveMm: 0, stopRateClass: 100, classesThatWork: [160] }, [
      "clearance",
      "no",
    ]);
    expect(rowOf(near).group).toBe("nearly");
    const far = withCorner(
      { reserveMm: 0, stopRateClass: 100, classesThatWork: [250] },
      ["clearance", "no"],
      ["stiffness", "no"],
    );
    expect(rowOf(far).group).toBe("doesNotFit");
    const [left] = near.corners as [CornerAssessment];
    const right: CornerAssessment = {
      ...left,
      side: "right",
      classesThatWork: [400],
      checks: [{ id: "stiffness", state: "no", sentence: ["Told."] }],
    };
    expect(rowOf({ ...near, corners: [left, right] }).group).toBe("doesNotFit");
    expect(rowOf({ ...near, corners: [left, { ...right, classesThatWork: [63] }] }).group).toBe(
      "nearly",
    );
  });

  it("is nothing that readings can do which do not fit together", () => {
    expect(rowOf(withCorner({}, ["plausible", "no"])).group).toBe("doesNotFit");
  });
});

describe("the group of a row", () => {
  it("fits, but for the balance, which no stop changes", () => {
    expect(rowOf(withCorner({})).group).toBe("fits");
    for (const state of ["care", "no"] as const)
      expect(rowOf(withCorner({}, ["balance", state])).group).toBe("fits");
    expect(rowOf(withCorner({}, ["plausible", "ok"])).group).toBe("fits");
  });

  it("may fit, where nothing but the balance fails", () => {
    for (const state of ["care", "unsure"] as const)
      expect(rowOf(withCorner({}, ["balance", "no"], ["clearance", state])).group).toBe("mayFit");
  });

  it("has its shortcomings with their side and their own sentence, what is ok left out", () => {
    const row = rowOf(withCorner({}, ["clearance", "ok"], ["stiffness", "care"]));
    expect(row.shortcomings).toEqual([
      { check: "stiffness", state: "care", side: "left", sentence: ["Told."] },
    ]);
    expect(row.fault).toBeNull();
  });

  it("is marked where its curve is an estimate, and only there", () => {
    const estimated = { how: "from 60 Shore A", forceShare: 0.25 };
    expect(rowOf(withCorner({}), { estimated }).estimated).toEqual(estimated);
    expect(rowOf(withCorner({}))).not.toHaveProperty("estimated");
  });
});

describe("margins", () => {
  it("are not known where the figures behind them are not", () => {
    const row = rowOf(
      withCorner({ reserveMm: null, freeTravelNeededMm: null, events: null }, [
        "clearance",
        "unsure",
      ]),
    );
    expect(row.group).toBe("mayFit");
    expect(row.margins).toEqual({
      reserveMm: null,
      freeTravelMm: null,
      accelerationG: null,
      compressionShare: null,
    });
  });

  it("are none of an event where none was set", () => {
    expect(rowOf(withCorner({ events: [] })).margins.accelerationG).toBeNull();
  });

  it("are those of the hardest event: below the cap of 2.5 g, and what of 30 mm is left", () => {
    const event = (peakAccelerationG: number, peakCompressionMm: number) =>
      ({ peakAccelerationG, peakCompressionMm }) as EventResult;
    const { margins } = rowOf(withCorner({ events: [event(1.5, 24), event(2, 12)] }));
    expect(margins.accelerationG).toBeCloseTo(0.5, 12);
    expect(margins.compressionShare).toBeCloseTo(0.2, 12);
  });
});

describe("a stop that cannot be assessed", () => {
  const estimated = { how: "from 60 Shore A", forceShare: 0.25 };
  const fault = { code: "curveEmpty", sentence: ["No curve."] };

  it("keeps the mark of its estimate, and is unsure", () => {
    const row = faultyStop({ id: "a", stop: { ...fitment.stop, estimated } }, fault);
    expect(row).toEqual({
      id: "a",
      name: "Test stop",
      estimated,
      spacerMm: 0,
      group: "doesNotFit",
      verdict: "unsure",
      margins: {
        reserveMm: null,
        freeTravelMm: null,
        accelerationG: null,
        compressionShare: null,
      },
      shortcomings: [],
      placed: null,
      fitment: null,
      assessment: null,
      fault,
    });
  });

  it("fails where it would be pressed, and carries no mark where its curve was tested", () => {
    const row = faultyStop({ id: "a", stop: fitment.stop }, { ...fault, code: "stopPresses" });
    expect(row.verdict).toBe("no");
    expect(row).not.toHaveProperty("estimated");
  });
});

describe("the order of rows", () => {
  const plain = () => ({ ...rowOf(withCorner({})), id: "a", name: "Tern" });
  const { placed } = plain();
  if (placed === null) throw new Error("not placed");
  const scored = (leastProbability: number) => ({
    placed: { ...placed, judgement: { ...placed.judgement, leastProbability } },
  });
  const fault = { code: "any", sentence: ["Wrong."] };

  /* Each pair differs in one thing, and against all that follows it in the order. */
  it.each<[string, Partial<RankedStop>, Partial<RankedStop>]>([
    ["fits before may fit", { group: "fits", verdict: "no" }, { group: "mayFit", verdict: "ok" }],
    [
      "may fit before nearly",
      { group: "mayFit", verdict: "no" },
      { group: "nearly", verdict: "ok" },
    ],
    [
      "nearly before does not fit",
      { group: "nearly", verdict: "no" },
      { group: "doesNotFit", verdict: "ok" },
    ],
    ["ok before care", { verdict: "ok", fault }, { verdict: "care" }],
    ["care before unsure", { verdict: "care", fault }, { verdict: "unsure" }],
    ["unsure before no", { verdict: "unsure", fault }, { verdict: "no" }],
    ["no fault before a fault", scored(0.4), { fault, ...scored(1) }],
    ["as the prescription does", { ...scored(0.9), spacerMm: 3 }, { ...scored(0.8), spacerMm: 0 }],
    ["the smaller spacer", { spacerMm: 2, name: "Tern" }, { spacerMm: 3, name: "Brant" }],
    ["the name", { name: "Brant", id: "b" }, { name: "Tern", id: "a" }],
    ["the id", { id: "a" }, { id: "b" }],
  ])("%s", (_, before, after) => {
    const one = { ...plain(), ...before };
    const other = { ...plain(), ...after };
    expect(compareRanked(one, other)).toBeLessThan(0);
    expect(compareRanked(other, one)).toBeGreaterThan(0);
    expect(compareRanked(one, { ...one })).toBe(0);
  });
});

describe("the order of rows that are alike", () => {
  it("is by name, then by id", () => {
    const row = (name: string, id: string) => ({ ...rowOf(withCorner({})), name, id });
    expect(compareRanked(row("Brant", "b"), row("Tern", "a"))).toBe(-1);
    expect(compareRanked(row("Tern", "a"), row("Brant", "b"))).toBe(1);
    expect(compareRanked(row("Tern", "a"), row("Tern", "b"))).toBe(-1);
    expect(compareRanked(row("Tern", "b"), row("Tern", "a"))).toBe(1);
    expect(compareRanked(row("Tern", "a"), row("Tern", "a"))).toBe(0);
  });
});

describe("ranking, and what of it cannot be done", () => {
  function rank(one: Fitment, options: AssessOptions = {}, stop: Stop = one.stop) {
    const steps = rankStops(one, [{ id: "own", stop }], { spacersMm: spacersByMm, ...options });
    for (let step = steps.next(); ; step = steps.next()) if (step.done) return step.value;
  }

  it("draws with the seed and as often as asked, by default as the answer does", () => {
    const seeded = rank(fitment, { samples: 10_000, seed: 5 })[0];
    expect(seeded?.assessment).toEqual(
      unwrapped(assessFitment(fitment, { samples: 10_000, seed: 5 })),
    );
    expect(rank(fitment)[0]?.assessment).toEqual(unwrapped(assessFitment(fitment)));
  });

  it("a stop without a curve is a row that says so", () => {
    const row = rank(fitment, {}, { ...fitment.stop, curve: [] }).find(({ id }) => id === "own");
    expect(row?.fault?.code).toBe("curveEmpty");
    expect(row?.fault && inModelUnits(row.fault.sentence)).toBe(
      "The stop has no force curve. Give at least one tested point.",
    );
  });

  it("no spacer is tried where no limit was measured and nothing is known of the ride", () => {
    const { ride: _, ...unknown } = uprightStrut({ limits: [] });
    const rows = rank(unknown, { samples: 10_000 });
    expect(rows.map(({ group, spacerMm }) => [group, spacerMm])).toEqual([["mayFit", 0]]);
  });

  it("a spacer that makes nothing better is not offered", () => {
    // The stop is met after 20 mm already, far too early; only its stiffness could want a spacer.
    const early = uprightStrut({ gap: within(20, 1), limits: [tyreLimit(exact(51))] });
    const rows = rank(early, { samples: 10_000 });
    expect(rows.map(({ spacerMm }) => spacerMm)).toEqual([0]);
    expect(rows[0]?.verdict).toBe("no");
  });
});
