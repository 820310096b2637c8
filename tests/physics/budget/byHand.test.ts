import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { assessStatic } from "../../../src/physics/assess.ts";
import { cornerAtMeans } from "../../../src/physics/budget/cornerAtMeans.ts";
import { handContactsOf } from "../../../src/physics/budget/handContacts.ts";
import { HandMotion } from "../../../src/physics/budget/handMotion.ts";
import type { Corner, Fitment, FullTravelCorner } from "../../../src/physics/fitment.ts";
import { layoutPlan } from "../../../src/physics/kinematics/layoutPlan.ts";
import { fitmentWithStop } from "../../../src/physics/prescription/fitmentWithStop.ts";
import { demoFitment, unwrapped } from "../demoFitments.ts";
import { exact, tyreLimit, uprightStrut, within } from "../staticFitments.ts";
import { budgetOf, idsOf } from "./preparedModel.ts";

const few = { samples: 10_000 };

/** A strut 60 mm high with a gap of 45 mm and 30 mm of usable compression, moved by hand. */
function byHand(found: Omit<FullTravelCorner, "side">, change: Partial<Fitment> = {}): Fitment {
  return uprightStrut({
    gap: exact(45),
    limits: [tyreLimit(exact(95))],
    fitment: {
      fullTravel: {
        measure: "wheelTravel",
        movement: "both",
        corners: [{ side: "left", ...found }],
      },
      ...change,
    },
  });
}

/** A block as high as the stop when fully pressed, met at a wheel travel. */
const block = (travel: number, height = 30) => ({
  reading: within(travel, 1),
  blockHeight: exact(height),
});

describe("contacts found by hand", () => {
  it("give these travels exactly, whatever the readings say: generated readings of an arm", () => {
    const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        number(120, 200),
        number(300, 450),
        number(-15, 20),
        number(10, 60),
        number(0.85, 1.18),
        number(0.85, 1.18),
        (toStop, toOuter, angle, gap, first, second) => {
          const usable = 20;
          const fitment: Fitment = {
            ...uprightStrut({ gap: exact(gap), limits: [] }),
            layout: {
              kind: "arm",
              readings: {
                pivotToStop: exact(toStop),
                pivotToOuter: exact(toOuter),
                armAngle: exact(angle),
              },
            },
          };
          const stop = { ...fitment.stop, usableCompressionMm: usable };
          const computed = budgetOf({ ...fitment, stop }).budget;
          const contact = first * computed.contactMm;
          const fullStop = contact + second * (computed.fullStopMm - computed.contactMm);
          const found = budgetOf({
            ...fitment,
            stop,
            fullTravel: {
              measure: "wheelTravel",
              movement: "both",
              corners: [
                {
                  side: "left",
                  contacts: { stop: exact(contact) },
                  block: { reading: exact(fullStop), blockHeight: exact(60 - usable) },
                },
              ],
            },
          }).budget;
          expect(found.contactMm).toBeCloseTo(contact, 8);
          expect(found.fullStopMm).toBeCloseTo(fullStop, 8);
        },
      ),
      { numRuns: 60 },
    );
  });

  it("go before the model: on a strut 45 to contact and 75 to full stop become 50 and 79", () => {
    const { budget } = budgetOf(byHand({ contacts: { stop: exact(50) }, block: block(79) }));
    expect([budget.contactMm, budget.fullStopMm]).toEqual([
      expect.closeTo(50, 9),
      expect.closeTo(79, 9),
    ]);
    // m is 50/45 up to contact: R at ride; from below at full stop m' z + m = (79/75 − 50/45)/30·75 + 79/75.
    expect(budget.leverRatio).toBeCloseTo(50 / 45, 9);
    const factor = (79 / 75 - 50 / 45) / 30;
    expect(budget.leverRatioAtFullStop).toBeCloseTo(factor * 75 + 79 / 75, 6);
  });

  it("beyond the last one go on as the model does, at its own factor", () => {
    const limits = [{ kind: "metal" as const, at: "stop" as const, reading: exact(85) }];
    const fitment = byHand({ contacts: { stop: exact(50) } });
    const corners = [{ ...(fitment.corners[0] as Corner), limits }];
    const { budget } = budgetOf({ ...fitment, corners });
    expect(budget.fullStopMm).toBeCloseTo(50 + (50 / 45) * 30, 9);
    expect(budget.limit?.hardLimitMm).toBeCloseTo(50 + (50 / 45) * 40, 9);
  });

  it("leave no doubt of the model's own up to them, only that of their readings", () => {
    const { intervals } = unwrapped(
      assessStatic(byHand({ contacts: { stop: within(50, 2) }, block: block(79) }), few),
    ).corners[0] as { intervals: { wheelTravelToContactMm: readonly [number, number] } };
    // 95 % of a rectangular ±2 mm.
    expect(intervals.wheelTravelToContactMm[0]).toBeCloseTo(50 - 1.9, 1);
    expect(intervals.wheelTravelToContactMm[1]).toBeCloseTo(50 + 1.9, 1);
  });

  it("belong to the stop they were taken with, and stay when another is tried", () => {
    const fitment = byHand({ contacts: { stop: exact(50) }, block: block(79) });
    const taller = { ...fitment.stop, name: "Taller", freeHeight: exact(70) };
    const changed = unwrapped(fitmentWithStop(fitment, taller));
    const { budget } = budgetOf(changed);
    // Gap 35: still at the factor that holds up to the recorded contact at 45.
    expect(budget.gapMm).toBeCloseTo(35, 12);
    expect(budget.contactMm).toBeCloseTo((35 * 50) / 45, 9);
  });

  it("of something hard replace that kind's limits, or are added", () => {
    const touched = budgetOf(byHand({ contacts: { tyre: exact(88) } }));
    expect(touched.budget.limit).toMatchObject({ kind: "tyre", hardLimitMm: 88 });
    expect(idsOf(touched)).not.toContain("left.limits.0");
    const metal = budgetOf(byHand({ contacts: { metal: exact(81) } }));
    expect(metal.budget.limit).toMatchObject({ kind: "metal", hardLimitMm: 81 });
    expect(idsOf(metal)).toContain("left.limits.0");
  });

  it("are heights from hub to arch, less the one height at ride", () => {
    const { budget } = budgetOf(
      byHand(
        { atRide: exact(500), contacts: { stop: exact(450), tyre: exact(410) } },
        {
          fullTravel: {
            measure: "hubToArch",
            movement: "both",
            corners: [
              {
                side: "left",
                atRide: exact(500),
                contacts: { stop: exact(450), tyre: exact(410) },
              },
            ],
          },
        },
      ),
    );
    expect(budget.contactMm).toBeCloseTo(50, 9);
    expect(budget.limit?.hardLimitMm).toBeCloseTo(90, 9);
  });
});

describe("a contact that is not used", () => {
  const usedOf = (fitment: Fitment) => handContactsOf(fitment, fitment.corners[0] as Corner);

  it("lies within 5 mm of travel or of closing, judged at the means", () => {
    expect(usedOf(byHand({ contacts: { stop: exact(4.9) } }))).toBeNull();
    expect(usedOf(byHand({ contacts: { tyre: exact(4.9) } }))).toBeNull();
    expect(usedOf(byHand({ contacts: { stop: exact(5) } }))?.stop).not.toBeNull();
    const near = byHand({ contacts: { stop: exact(20) } });
    const corners = [{ ...(near.corners[0] as Corner), gap: exact(4) }];
    expect(usedOf({ ...near, corners })).toBeNull();
  });

  it("was taken with one wheel of a beam axle raised", () => {
    const axle: Fitment["layout"] = {
      kind: "axle",
      readings: { track: exact(1600), stopSpacing: exact(900) },
    };
    const of = (movement: "both" | "one") => {
      const fitment = byHand({ contacts: { stop: exact(50), tyre: exact(90) } }, { layout: axle });
      const { fullTravel } = fitment;
      return usedOf({
        ...fitment,
        ...(fullTravel && { fullTravel: { ...fullTravel, movement } }),
      });
    };
    expect(of("one")).toBeNull();
    expect(of("both")?.limits).toHaveLength(1);
  });

  it("has no height at ride to be taken off, or is a hose, which ends no travel", () => {
    const heights = byHand({ contacts: { stop: exact(450) } });
    expect(
      usedOf({
        ...heights,
        fullTravel: {
          measure: "hubToArch",
          movement: "both",
          corners: [{ side: "left", contacts: { stop: exact(450) } }],
        },
      }),
    ).toBeNull();
    expect(usedOf(byHand({ contacts: { hose: exact(60) } }))).toBeNull();
  });

  it("is told where stop and block contradict each other", () => {
    const outcome = cornerAtMeans(
      byHand({ contacts: { stop: exact(80) }, block: block(30) }),
      byHand({ contacts: {} }).corners[0] as Corner,
    );
    expect(outcome.ok ? "" : outcome.fault.code).toBe("contactsByHandApart");
  });
});

describe("the motion led through contacts", () => {
  const plan = unwrapped(layoutPlan(demoFitment("arm-fits").layout));
  const means = Float64Array.from(plan.places, ({ drawn }) => drawn.mean);
  const led = (stop: number, blockAt: number): HandMotion => {
    plan.motion.set(means);
    const motion = new HandMotion(plan.motion);
    expect(motion.lead(plan.motion, 20, stop, 50, blockAt, 0.02)).toBe(true);
    return motion;
  };

  it("inverts, and its slopes are those of its travel, in every part", () => {
    const motion = led(57, 135);
    const slopes = new Float64Array(3);
    for (const s of [-10, 5, 19.9, 25, 40, 49.9, 55, 65]) {
      const z = motion.wheelTravel(s);
      expect(motion.closing(z)).toBeCloseTo(s, 8);
      motion.evaluate(z, slopes);
      const step = 1e-4;
      const rise = (motion.wheelTravel(s + step) - motion.wheelTravel(s - step)) / (2 * step);
      expect(slopes[0]).toBeCloseTo(s, 8);
      expect(slopes[1]).toBeCloseTo(1 / rise, 6);
      motion.evaluate(z + 0.01, slopes);
      const above = slopes[1] as number;
      motion.evaluate(z - 0.01, slopes);
      const below = slopes[1] as number;
      motion.evaluate(z, slopes);
      expect(slopes[2]).toBeCloseTo((above - below) / 0.02, 5);
    }
  });

  it("passes the contacts whichever was met first, and refuses what does not rise", () => {
    plan.motion.set(means);
    const motion = new HandMotion(plan.motion);
    expect(motion.lead(plan.motion, 50, 135, 20, 57, 0)).toBe(true);
    expect(motion.wheelTravel(50)).toBeCloseTo(135, 9);
    expect(motion.wheelTravel(20)).toBeCloseTo(57, 9);
    expect(motion.lead(plan.motion, 20, 57, 50, 40, 0)).toBe(false);
    expect(motion.lead(plan.motion, -5, 57, Number.NaN, Number.NaN, 0)).toBe(false);
    expect(motion.lead(plan.motion, 20, 57, Number.NaN, Number.NaN, -1.5)).toBe(false);
  });
});
