import { describe, expect, test } from "vitest";
import { assessFitment } from "../../../src/physics/assess.ts";
import { gapOf } from "../../../src/physics/budget/gap.ts";
import type { Fitment, Side } from "../../../src/physics/fitment.ts";
import { leastStopHeightMm, spacersByMm } from "../../../src/physics/prescription/candidates.ts";
import { withStop } from "../../../src/physics/prescription/fitmentWithStop.ts";
import { comparePlaced, judge } from "../../../src/physics/prescription/judgement.ts";
import { type Prescription, prescribeSteps } from "../../../src/physics/prescription/prescribe.ts";
import { combinationsOf } from "../../../src/physics/prescription/searchSteps.ts";
import { Trials } from "../../../src/physics/prescription/trials.ts";
import { meanOf } from "../../../src/physics/uncertainty/readingMean.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { unwrapped } from "../demoFitments.ts";
import { exhaustive, finished, searched } from "./exhaustive.ts";
import { generatedFitment, shelf } from "./generated.ts";

const options = { samples: 10_000, spacersMm: spacersByMm };

function prescribed(fitment: Fitment): Prescription {
  return finished(prescribeSteps(fitment, shelf, options));
}

/** Generated vehicles, the same at every run; `npm run prescriptions` tries five hundred. */
const seeds = Array.from({ length: 15 }, (_, n) => n + 1);
const tried = seeds.map((seed) => {
  const fitment = generatedFitment(seed);
  return { seed, fitment, prescription: prescribed(fitment) };
});

describe("a prescription", () => {
  test.each(tried)("gives the verdict that was promised: vehicle $seed", (each) => {
    const { fitment, prescription } = each;
    if (prescription.none) {
      expect(prescription.blockedBy.length).toBeGreaterThan(0);
      return;
    }
    const changed = withStop(fitment, prescription.candidate.stop, prescription.spacerMm);
    expect(unwrapped(assessFitment(changed, options)).verdict).toBe(prescription.verdict);
  });

  test.each(tried)("presses no stop made for impacts at rest: vehicle $seed", (each) => {
    const { fitment, prescription } = each;
    if (prescription.none) return;
    const { stop } = prescription.candidate;
    const changed = withStop(fitment, stop, prescription.spacerMm);
    for (const corner of changed.corners) {
      expect(unwrapped(gapOf(changed, corner))).toBeGreaterThanOrEqual(0);
    }
    expect(meanOf(stop.freeHeight)).toBeGreaterThanOrEqual(leastStopHeightMm);
  });

  test.each(tried)("is one short text: vehicle $seed", ({ prescription }) => {
    for (const sentence of [prescription.message, ...prescription.remarks]) {
      expect(inModelUnits(sentence)).toMatch(/\.$/);
      expect(inModelUnits(sentence)).not.toMatch(/NaN|Infinity|undefined/);
    }
  });

  test("both kinds come up, with care and without", () => {
    const kinds = new Set(
      tried.map(({ prescription }) => (prescription.none ? "none" : prescription.state)),
    );
    expect([...kinds].sort()).toEqual(["care", "none", "ok"]);
  });
});

describe("the pruned search", () => {
  test.each([1, 4, 10, 12])("finds what trying all of them finds: vehicle %d", (seed) => {
    const fitment = generatedFitment(seed);
    const all = exhaustive(fitment, shelf, options);
    const found = searched(fitment, shelf, options).best;
    expect(found?.combination ?? null).toEqual(all?.combination ?? null);
    expect(found?.assessment.verdict).toBe(all?.assessment.verdict);
  });
});

describe("what blocks where nothing fits", () => {
  const blocked = tried.filter(
    ({ prescription }) => prescription.none && prescription.blockedBy.length > 0,
  );

  test.each(blocked)("is of the one that fails least, of all that stand: vehicle $seed", (each) => {
    const { fitment, prescription } = each;
    const combinations = combinationsOf(fitment, [], options.spacersMm);
    const trials = new Trials(fitment, options, combinations);
    const all = combinations.flatMap((combination) => {
      const trial = finished(trials.whole(combination));
      return trial.ok ? [trial.value] : [];
    });
    const failing = ({ judgement }: (typeof all)[number]) =>
      (judgement.state === "no" ? 100 : 0) + judgement.blocked.length;
    const [nearest] = all.sort(
      (one, other) => failing(one) - failing(other) || comparePlaced(one, other),
    );
    if (nearest !== undefined && prescription.none)
      expect(prescription.blockedBy).toEqual(nearest.judgement.blocked);
  });
});

describe("left and right mirrored", () => {
  const other: Readonly<Record<Side, Side>> = { left: "right", right: "left" };
  const mirroring = tried.filter(({ seed }) => [2, 4, 9, 10, 12, 13].includes(seed));
  test.each(mirroring)("get the same: vehicle $seed", ({ fitment, prescription: one }) => {
    const mirrored: Fitment = {
      ...fitment,
      corners: fitment.corners.map((corner) => ({ ...corner, side: other[corner.side] })).reverse(),
    };
    const two = prescribed(mirrored);
    expect(two.none).toBe(one.none);
    if (one.none || two.none) return;
    expect([two.candidate.id, two.spacerMm, two.verdict]).toEqual([
      one.candidate.id,
      one.spacerMm,
      one.verdict,
    ]);
  });
});

describe("a stop that the vehicle sits on", () => {
  const pressed = (): Fitment => {
    const fitment = generatedFitment(3, { bare: 0 });
    return {
      ...fitment,
      corners: fitment.corners.map(({ gap: _, ...corner }) => ({
        ...corner,
        pressedHeight: { values: [meanOf(fitment.stop.freeHeight) - 12], tol: 1 },
      })),
    };
  };

  test("is said before anything else", () => {
    expect(inModelUnits(prescribed(pressed()).first)).toMatch(
      /^It sits on its stop, pressed by 12\.0 mm on the (left|right): look at springs and load first\.$/,
    );
  });

  test("is never left as it is", () => {
    const prescription = prescribed(pressed());
    expect(prescription.none || prescription.change !== "nothing").toBe(true);
  });
});

describe("what is not known", () => {
  test("without ride data the height alone is prescribed, and it says so", () => {
    const { ride: _, ...bare } = generatedFitment(1, { bare: 0 });
    const prescription = prescribed(bare);
    if (prescription.none) throw new Error("a height fits this vehicle");
    expect(prescription.verdict).toBe("unsure");
    expect(prescription.unknown).toEqual(["earlyContact", "stiffness"]);
    expect(prescription.remarks.map(inModelUnits).join(" ")).toContain("For height alone");
  });

  test("without a limit nothing is prescribed, and the reading is named", () => {
    const fitment = generatedFitment(1);
    const prescription = prescribed({
      ...fitment,
      corners: fitment.corners.map((corner) => ({ ...corner, limits: [] })),
    });
    expect(prescription.none && prescription.blockedBy).toContainEqual({
      side: "left",
      check: "clearance",
    });
    expect(inModelUnits(prescription.message)).toMatch(
      /^Nothing can be prescribed yet: measure the left clearance/,
    );
  });

  test("a reading that is not believed prescribes nothing", () => {
    const fitment = generatedFitment(1);
    const prescription = prescribed({
      ...fitment,
      corners: fitment.corners.map((corner) => ({ ...corner, gap: { values: [20, 60], tol: 1 } })),
    });
    expect(prescription.none && prescription.blockedBy.map(({ check }) => check)).toContain(
      "plausible",
    );
  });
});

describe("what frees a stop where none fits", () => {
  const last = tried.at(-1);
  if (last === undefined) throw new Error("no vehicle was tried");
  const { fitment, prescription: none } = last;

  test("is told as it is found, least work first, before all is tried", () => {
    const told: number[] = [];
    for (const { soFar } of prescribeSteps(fitment, shelf, options)) {
      if (soFar === undefined) continue;
      told.push(soFar.freed.length);
      expect(inModelUnits(soFar.remarks.at(-1) ?? [])).toMatch(/is being tried …$/);
    }
    if (!none.none) throw new Error("nothing should fit");
    expect(told).toEqual(Array.from({ length: none.freed.length + 1 }, (_, count) => count));
  });

  test("fits with it, through the whole model", () => {
    if (!none.none) throw new Error("nothing should fit");
    expect(none.freed.map(({ kind }) => kind)).toContain("room");
    for (const { decided } of none.freed) {
      const { keepsTravel, heightMm } = decided.judgement;
      const whole = unwrapped(assessFitment(decided.fitment, options));
      const place = { keepsTravel, heightMm };
      expect(judge(whole, decided.fitment, place)).toEqual(decided.judgement);
    }
    expect(inModelUnits(none.remarks[0] ?? [])).toMatch(/more room for the wheel/);
  });
});
