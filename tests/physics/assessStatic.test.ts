import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { assessFitment, assessStatic } from "../../src/physics/assess.ts";
import type { Fitment } from "../../src/physics/fitment.ts";
import { inModelUnits } from "../../src/saying/modelUnits.ts";
import { type DemoName, demoFitment, unwrapped } from "./demoFitments.ts";
import { anyFitment, exact, ride, tyreLimit, uprightStrut, within } from "./staticFitments.ts";

/** Every number of a value, however deep. */
function numbersOf(value: unknown): number[] {
  if (typeof value === "number") return [value];
  if (typeof value !== "object" || value === null) return [];
  return Object.values(value).flatMap(numbersOf);
}

const few = { samples: 10_000 };

describe("an assessment", () => {
  it("is made of finite numbers, or is one named fault, whatever it is given", () => {
    let tried = 0;
    let assessed = 0;
    fc.assert(
      fc.property(anyFitment, (fitment) => {
        tried++;
        const outcome = assessStatic(fitment, few);
        if (!outcome.ok) {
          expect(outcome.fault.code).toMatch(/^[a-zA-Z]+$/);
          expect(inModelUnits(outcome.fault.sentence)).toMatch(/^.{20,}[.]$/s);
          expect(inModelUnits(outcome.fault.sentence)).not.toMatch(/NaN|Infinity/);
          return;
        }
        assessed++;
        expect(numbersOf(outcome.value).filter((number) => !Number.isFinite(number))).toEqual([]);
        for (const corner of outcome.value.corners) {
          for (const { state, sentence, reading, id } of corner.checks) {
            expect(inModelUnits(sentence)).not.toMatch(/NaN|Infinity|undefined|null/);
            if (state === "unsure" && corner.missing.length > 0) expect(reading).toBeDefined();
            if (state === "unsure" && id !== "stiffness") expect(reading).toBeDefined();
          }
        }
      }),
      { numRuns: 150 },
    );
    // Not mostly of faults: else it would say little of numbers.
    expect(assessed / tried).toBeGreaterThan(0.2);
  }, 60_000);

  it("has a figure inside its interval, or within the doubt of it, when readings scatter little", () => {
    for (const name of ["arm-fits", "damper-shaft", "axle-towing-early"] as const) {
      for (const corner of unwrapped(assessStatic(demoFitment(name), few)).corners) {
        for (const figure of [
          "wheelTravelToContactMm",
          "wheelTravelToFullStopMm",
          "wheelTravelToHardLimitMm",
          "reserveMm",
          "spacerMm",
          "tallerMm",
        ] as const) {
          const [low, high] = corner.intervals[figure] ?? [Number.NaN, Number.NaN];
          expect(Number(corner[figure])).toBeGreaterThan(low);
          expect(Number(corner[figure])).toBeLessThan(high);
        }
      }
    }
  });

  it("never meets a taller stop later", () => {
    const names: readonly DemoName[] = [
      "arm-fits",
      "damper-shaft",
      "strut-too-stiff",
      "axle-towing-early",
    ];
    fc.assert(
      fc.property(
        fc.constantFrom(...names),
        fc.double({ min: 0, max: 20, noNaN: true }),
        (name, extra) => {
          const fitment = demoFitment(name);
          const taller: Fitment = {
            ...fitment,
            corners: fitment.corners.map((corner) => ({
              ...corner,
              gap: {
                tol: corner.gap?.tol ?? 0,
                values: corner.gap?.values.map((value) => Math.max(0, value - extra)) ?? [],
              },
            })),
            stop: {
              ...fitment.stop,
              freeHeight: {
                ...fitment.stop.freeHeight,
                values: fitment.stop.freeHeight.values.map((value) => value + extra),
              },
            },
          };
          const before = unwrapped(assessStatic(fitment, few)).corners;
          const after = unwrapped(assessStatic(taller, few)).corners;
          for (const [index, corner] of after.entries()) {
            expect(corner.wheelTravelToContactMm).toBeLessThanOrEqual(
              before[index]?.wheelTravelToContactMm ?? Number.NaN,
            );
          }
        },
      ),
      { numRuns: 25 },
    );
  }, 60_000);

  it("has the wanted reserve, exactly, with the spacer or the taller stop it asks for", () => {
    for (const name of ["arm-needs-taller", "damper-shaft", "strut-too-stiff"] as const) {
      const fitment = demoFitment(name);
      const [corner] = fitment.corners;
      const [before] = unwrapped(assessStatic(fitment, few)).corners;
      if (corner === undefined || before === undefined) throw new Error(name);
      const withExtra = (extra: number, usable: number) =>
        unwrapped(
          assessStatic(
            {
              ...fitment,
              corners: [{ ...corner, gap: exact((corner.gap?.values[0] ?? 0) - extra) }],
              stop: { ...fitment.stop, freeHeight: exact(500), usableCompressionMm: usable },
            },
            few,
          ),
        ).corners[0]?.reserveMm;
      const share =
        fitment.stop.usableCompressionMm / (fitment.stop.freeHeight.values[0] ?? Number.NaN);
      const { spacerMm, tallerMm } = before;
      const usable = fitment.stop.usableCompressionMm;
      expect(withExtra(Number(spacerMm), usable)).toBeCloseTo(5, 6);
      expect(withExtra(Number(tallerMm), usable + share * Number(tallerMm))).toBeCloseTo(5, 6);
    }
  });

  it("is the same to the last digit whatever the order of fields and corners", () => {
    const reversed = (value: unknown): unknown => {
      if (Array.isArray(value)) return value.map(reversed);
      if (typeof value !== "object" || value === null) return value;
      return Object.fromEntries(
        Object.entries(value)
          .reverse()
          .map(([key, entry]) => [key, reversed(entry)]),
      );
    };
    const fitment = demoFitment("arm-needs-taller");
    const straight = unwrapped(assessStatic(fitment));
    const turned = reversed(fitment) as Fitment;
    expect(unwrapped(assessStatic(turned))).toEqual(straight);
    const swapped = unwrapped(assessStatic({ ...turned, corners: [...turned.corners].reverse() }));
    expect([...swapped.corners].reverse()).toEqual(straight.corners);
  });

  it("draws a reading alike whatever else was measured", () => {
    const two = demoFitment("arm-fits");
    const one = { ...two, corners: two.corners.slice(0, 1) };
    expect(unwrapped(assessStatic(one)).corners[0]?.intervals).toEqual(
      unwrapped(assessStatic(two)).corners[0]?.intervals,
    );
  });

  it("changes with the seed, a little", () => {
    const fitment = demoFitment("strut-too-stiff");
    const one = unwrapped(assessStatic(fitment)).corners[0]?.intervals.reserveMm ?? [0, 0];
    const other = unwrapped(assessStatic(fitment, { seed: 7 })).corners[0]?.intervals.reserveMm;
    expect(other).not.toEqual(one);
    expect(Math.abs((other?.[0] ?? 0) - one[0])).toBeLessThan(0.02 * (one[1] - one[0]));
  });

  it("takes a corner's own geometry before the layout's", () => {
    const fitment = demoFitment("arm-fits");
    const own = unwrapped(
      assessStatic(
        {
          ...fitment,
          corners: fitment.corners.map((corner) =>
            corner.side === "right"
              ? { ...corner, geometry: { pivotToStop: within(205.5, 2) } }
              : corner,
          ),
        },
        few,
      ),
    );
    const [left, right] = own.corners;
    expect(left?.leverRatio).toBeCloseTo(2.742052, 5);
    expect(right?.leverRatio).toBeCloseTo((2.742052 * (457 / 3)) / 205.5, 5);
    expect(right?.doubt.reserve.some(({ reading }) => reading === "right.pivotToStop")).toBe(true);
    expect(right?.doubt.reserve.some(({ reading }) => reading === "pivotToStop")).toBe(false);
  });

  it("gives a lone corner's whole answer a verdict and a reason", () => {
    const two = demoFitment("arm-fits");
    const one = { ...two, corners: two.corners.slice(0, 1) };
    const { verdict, reason } = unwrapped(assessFitment(one, few));
    expect(verdict).toBe("ok");
    expect(inModelUnits(reason)).toMatch(/^The stop touches after 57\.9 mm/);
  });
});

describe("what cannot be computed", () => {
  const limit = tyreLimit(within(95, 1));
  const armLayout: Fitment["layout"] = {
    kind: "arm",
    readings: { pivotToStop: exact(50), pivotToOuter: exact(200) },
  };
  const cases: readonly [string, string | undefined, Fitment][] = [
    ["cornersWrong", undefined, uprightStrut({ fitment: { corners: [] } })],
    [
      "cornersWrong",
      undefined,
      uprightStrut({
        fitment: {
          corners: [1, 2].map(() => ({ side: "left" as const, gap: exact(40), limits: [limit] })),
        },
      }),
    ],
    ["gapNegative", "left.gap", uprightStrut({ gap: exact(-3) })],
    ["readingNotFinite", "left.gap", uprightStrut({ gap: exact(Number.NaN) })],
    ["readingMissing", "left.gap", uprightStrut({ gap: { values: [], tol: 1 } })],
    ["toleranceNegative", "left.gap", uprightStrut({ gap: within(40, -1) })],
    ["gapOutOfReach", "left.gap", uprightStrut({ gap: exact(51), fitment: { layout: armLayout } })],
    [
      "fullStopOutOfReach",
      "left.gap",
      uprightStrut({ gap: exact(45), fitment: { layout: armLayout } }),
    ],
    [
      "limitOutOfReach",
      "left.limits.0",
      uprightStrut({
        gap: exact(10),
        limits: [tyreLimit(exact(300))],
        fitment: { layout: armLayout },
      }),
    ],
    ["perWheelNotPositive", "left.limits.0", uprightStrut({ limits: [{ ...limit, perWheel: 0 }] })],
    ["lengthNotPositive", "left.limits.0", uprightStrut({ limits: [tyreLimit(exact(0))] })],
    [
      "rideOutOfRange",
      "ride.wheelRateNPerMm",
      uprightStrut({ fitment: { ride: { ...ride, wheelRateNPerMm: Number.NaN } } }),
    ],
    [
      "rideOutOfRange",
      "ride.payloadPerCornerKg",
      uprightStrut({ fitment: { ride: { ...ride, tolerances: { payloadPerCornerKg: -1 } } } }),
    ],
    ["rulesOutOfRange", undefined, uprightStrut({ fitment: { rules: { speedKmPerH: 0 } } })],
    ["rulesOutOfRange", undefined, uprightStrut({ fitment: { rules: { reserveMm: -5 } } })],
    ["massNotPositive", "left.cornerMassKg", uprightStrut({ corner: { cornerMassKg: exact(0) } })],
  ];

  it.each(cases)("is named %s (%s)", (code, reading, fitment) => {
    const outcome = assessStatic(fitment, few);
    expect(outcome).toMatchObject({ ok: false, fault: { code } });
    if (!outcome.ok) {
      expect(outcome.fault.reading).toBe(reading);
      expect(inModelUnits(outcome.fault.sentence)).toMatch(/\.$/);
    }
  });
});
