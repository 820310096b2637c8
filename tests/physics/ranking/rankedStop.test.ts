import { describe, expect, it } from "vitest";
import { assessFitment } from "../../../src/physics/assess.ts";
import type {
  Assessment,
  Check,
  CheckId,
  CornerAssessment,
  EventResult,
  Fitment,
  Stop,
} from "../../../src/physics/fitment.ts";
import {
  compareRanked,
  faultyStop,
  marginScore,
  type RankedStop,
  rankedStop,
} from "../../../src/physics/ranking/rankedStop.ts";
import { type RankOptions, rankStops } from "../../../src/physics/ranking/rankStops.ts";
import { rulesOf } from "../../../src/physics/road/useRules.ts";
import { inModelUnits } from "../../../src/physics/sentence.ts";
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
  return rankedStop(
    { id: "tried", stop: { ...fitment.stop, ...stop } },
    0,
    fitment,
    assessment,
    rules,
  );
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

  it("is nothing that readings can do which do not fit together", () => {
    expect(rowOf(withCorner({}, ["plausible", "no"])).group).toBe("doesNotFit");
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
    expect(marginScore(row.margins)).toEqual([Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY]);
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
    expect(row).toMatchObject({ estimated, verdict: "unsure", group: "doesNotFit", fault });
  });

  it("fails where it would be pressed, and carries no mark where its curve was tested", () => {
    const row = faultyStop({ id: "a", stop: fitment.stop }, { ...fault, code: "stopPresses" });
    expect(row.verdict).toBe("no");
    expect(row).not.toHaveProperty("estimated");
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
  function rank(one: Fitment, options?: RankOptions, stop: Stop = one.stop) {
    const steps = rankStops(one, [{ id: "own", stop }], options);
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
    const [row, ...more] = rank(fitment, {}, { ...fitment.stop, curve: [] });
    expect(more).toEqual([]);
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
