import { describe, expect, it, vi } from "vitest";
import { assessStatic } from "../../../src/physics/assess.ts";
import type { DoubtShare, Fitment, Reading, Ride } from "../../../src/physics/fitment.ts";
import { cornerDoubt } from "../../../src/physics/uncertainty/cornerDoubt.ts";
import { demoFitment, unwrapped } from "../demoFitments.ts";
import { exact, ride, uprightStrut, within } from "../staticFitments.ts";
import { aboveRest } from "./aboveRest.ts";
import { preparedCorner } from "./preparedCorner.ts";

vi.mock("../../../src/physics/kinematics/modelDoubt.ts", () => import("../noModelDoubt.ts"));

/** The fitment with no doubt but that of one reading, by the last part of its id. */
function onlyInDoubt(fitment: Fitment, kept: (path: readonly string[]) => boolean): Fitment {
  const visit = (value: unknown, path: readonly string[]): unknown => {
    if (typeof value !== "object" || value === null) return value;
    if (Array.isArray(value))
      return value.map((entry, index) => visit(entry, [...path, `${index}`]));
    if ("values" in value && "tol" in value) {
      const reading = value as unknown as Reading;
      return kept(path) ? reading : { ...reading, tol: 0 };
    }
    return Object.fromEntries(
      Object.entries(value).map(([key, entry]) => [key, visit(entry, [...path, key])]),
    );
  };
  const sure = visit(fitment, []) as Fitment;
  const usable = kept(["stop", "usableCompressionMm"]) ? {} : { usableTolMm: 0 };
  return { ...sure, stop: { ...sure.stop, ...usable } };
}

describe("shares of the margin of error", () => {
  // One reading at a time in doubt: a rectangular reading makes a nearly rectangular result, whose 95 %
  // width is in proportion to its contribution.
  it.each(["damper-shaft", "strut-too-stiff"] as const)("of %s are those of the draws", (name) => {
    const fitment = demoFitment(name);
    const [first] = fitment.corners;
    if (first === undefined) throw new Error(name);
    const alone = { ...fitment, corners: [first] };
    const shares = unwrapped(assessStatic(alone)).corners[0]?.doubt;
    for (const [about, figure] of [
      ["reserve", "reserveMm"],
      ["contact", "wheelTravelToContactMm"],
    ] as const) {
      const widths = new Map<string, number>();
      for (const { reading } of shares?.[about] ?? []) {
        const tail = reading.replace("left.", "").split(".");
        const [corner] = unwrapped(
          assessStatic(
            onlyInDoubt(
              alone,
              (path) => tail.every((part) => path.includes(part)) && tail[0] !== undefined,
            ),
          ),
        ).corners;
        const [low, high] = corner?.intervals[figure] ?? [0, 0];
        widths.set(reading, high - low);
      }
      const total = [...widths.values()].reduce((sum, width) => sum + width * width, 0);
      for (const { reading, share } of shares?.[about] ?? []) {
        expect(Math.abs((widths.get(reading) ?? 0) ** 2 / total - share), reading).toBeLessThan(
          0.01,
        );
      }
    }
  });

  it("add up to 1, greatest first", () => {
    for (const name of ["arm-fits", "damper-shaft", "axle-towing-early"] as const) {
      for (const { doubt } of unwrapped(assessStatic(demoFitment(name))).corners) {
        for (const shares of [doubt.reserve, doubt.contact]) {
          const values = shares.map(({ share }) => share);
          expect(values.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
          expect(values).toEqual([...values].sort((a, b) => b - a));
        }
      }
    }
  });

  it("hold an angle that stands in for another once", () => {
    const [left] = unwrapped(assessStatic(demoFitment("arm-fits"))).corners;
    const ids = left?.doubt.reserve.map(({ reading }) => reading) ?? [];
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids).toContain("armAngle");
    expect(ids).not.toContain("stopLineAngle");
  });

  it("are empty where nothing is in doubt, and of the reserve where no limit was measured", () => {
    const sure = onlyInDoubt(demoFitment("strut-too-stiff"), () => false);
    const [corner] = unwrapped(assessStatic(sure)).corners;
    expect(corner?.doubt).toEqual({ reserve: [], contact: [] });
    const [low, high] = corner?.intervals.reserveMm ?? [Number.NaN, Number.NaN];
    expect(low).toBeCloseTo(Number(corner?.reserveMm), 12);
    expect(high).toBeCloseTo(Number(corner?.reserveMm), 12);
    expect(unwrapped(assessStatic(uprightStrut({ limits: [] }))).corners[0]?.doubt.reserve).toEqual(
      [],
    );
  });

  it("count estimated ride data to the contact, by how much the free travel wanted moves", () => {
    const estimated = uprightStrut({
      gap: within(45, 1.5),
      fitment: { ride: { ...ride, tolerances: { wheelRateNPerMm: 6 } } },
    });
    const shares: readonly DoubtShare[] =
      unwrapped(assessStatic(estimated)).corners[0]?.doubt.contact ?? [];
    // Sag = 20 kg·g/26 N/mm; half its change from 26 − 6/√3 to 26 + 6/√3 against 1.5/√3 of the gap.
    const sag = (rate: number) => (20 * 9.80665) / rate;
    const u = 6 / Math.sqrt(3);
    const bySag = ((sag(26 - u) - sag(26 + u)) / 2) ** 2;
    const byGap = 1.5 ** 2 / 3;
    expect(shares.find(({ reading }) => reading === "ride.wheelRateNPerMm")?.share).toBeCloseTo(
      bySag / (bySag + byGap),
      9,
    );
  });
});

describe("ride data in doubt, of a wheel whose laden travel is not known", () => {
  const u = 20 / Math.sqrt(3);
  const gapVariance = 1.5 ** 2 / 3;
  const doubtOf = (values: Ride) => {
    const fitment = uprightStrut({
      gap: within(45, 1.5),
      corner: { cornerMassKg: exact(450) },
      fitment: { ride: values },
    });
    const { budget, road, rules } = preparedCorner(fitment);
    return cornerDoubt(budget, fitment, road, rules).contact;
  };
  const needed = (tyreRate: number) => aboveRest(450, tyreRate, 2.7);
  const byTyre = ((needed(220 + u) - needed(220 - u)) / 2) ** 2;
  const wanted = [
    { reading: "left.gap", share: expect.closeTo(gapVariance / (gapVariance + byTyre), 9) },
    {
      reading: "ride.tyreRateNPerMm",
      share: expect.closeTo(byTyre / (gapVariance + byTyre), 9),
    },
  ];
  const tolerances = { tyreRateNPerMm: 20 };

  it("counts by the unladen travel wanted, where the payload is not known", () => {
    const { payloadPerCornerKg: _, ...unladen } = ride;
    expect(doubtOf({ ...unladen, tolerances })).toEqual(wanted);
  });

  it("counts so where the payload is known but the spring's rate is not", () => {
    const { wheelRateNPerMm: _, ...unsprung } = ride;
    expect(doubtOf({ ...unsprung, tolerances })).toEqual(wanted);
  });

  it("counts nothing, the gap all, where no travel wanted is known at the means", () => {
    expect(doubtOf({ ...ride, tyreRateNPerMm: 0, tolerances })).toEqual([
      { reading: "left.gap", share: 1 },
    ]);
  });
});
