import { describe, expect, it } from "vitest";
import type { Corner, EventResult, Fitment, UseRules } from "../../../src/physics/fitment.ts";
import { impactSetupOf } from "../../../src/physics/impact/impactSetup.ts";
import {
  cornerDynamics,
  cornerDynamicsSteps,
  sideOf,
} from "../../../src/physics/stiffness/cornerDynamics.ts";
import { type EventsTried, tryEvents } from "../../../src/physics/stiffness/eventFailures.ts";
import {
  heightClassMap,
  type MapCell,
  mapHeights,
} from "../../../src/physics/stiffness/heightClassMap.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { unwrapped } from "../demoFitments.ts";
import { exact, ride, tyreLimit, uprightStrut } from "../staticFitments.ts";

/** A small landing alone, so that little time goes into events where they are not looked at. */
const softLanding: Partial<UseRules> = { events: [{ kind: "landing", heightM: 0.002 }] };

function strut(change: {
  readonly gap?: number;
  readonly limit?: number | null;
  readonly payloadKg?: number;
  readonly rules?: Partial<UseRules>;
  readonly forceHalfway?: number;
}): Fitment {
  const { gap = 45, limit = 95, payloadKg = 0, rules, forceHalfway = 1500 } = change;
  const plain = uprightStrut({
    gap: exact(gap),
    limits: limit === null ? [] : [tyreLimit(exact(limit))],
    corner: { cornerMassKg: exact(450) },
  });
  return {
    ...plain,
    stop: {
      ...plain.stop,
      curve: [
        [15, forceHalfway],
        [30, 6000],
      ],
    },
    ride: { ...ride, payloadPerCornerKg: payloadKg },
    rules: { ...softLanding, roadKurtosis: 3, ...rules },
  };
}

const cornerOf = (fitment: Fitment) => fitment.corners[0] as Corner;

describe("the side on which a class lies", () => {
  it.each<[number, readonly number[], "soft" | "stiff" | null]>([
    [100, [], null],
    [100, [63, 100], null],
    [100, [160, 250], "soft"],
    [100, [40, 63], "stiff"],
    // Nearest by ratio, not by difference: 100/25 = 4, 250/100 = 2.5.
    [100, [25, 250], "soft"],
    [100, [10, 25, 250, 1000], "soft"],
    // 1000/400 = 2.5, 400/100 = 4 and the other way round: 400/160 = 2.5.
    [400, [100, 1000], "soft"],
    [400, [160, 1000], "stiff"],
    [400, [10, 160], "stiff"],
  ])("%s N/mm beside %j: %s", (own, classes, side) => {
    expect(sideOf(own, classes)).toBe(side);
  });
});

describe("the work of a stiffness window", () => {
  const pieces = (forceHalfway: number) => {
    const fitment = strut({ forceHalfway });
    return [...cornerDynamicsSteps(fitment, cornerOf(fitment))].length;
  };

  it("is not done twice for a stop that is a class itself: 1500 N at 15 mm are 100 N/mm", () => {
    expect(pieces(1500)).toBe(11);
    expect(pieces(1500.001)).toBe(12);
  });

  it("is done laden and unladen where there is a payload", () => {
    const fitment = strut({ payloadKg: 20 });
    expect(cornerDynamics(fitment, cornerOf(fitment)).classesThatWork).toHaveLength(11);
    expect([...cornerDynamicsSteps(fitment, cornerOf(fitment))]).toHaveLength(22);
  });

  it("says what to set where no event is", () => {
    const fitment = strut({ rules: { events: [] } });
    const { faults } = cornerDynamics(fitment, cornerOf(fitment));
    expect(faults.map(({ sentence }) => inModelUnits(sentence))).toEqual([
      "No design event is set, so the stiffness cannot be judged. Set a bump or a landing.",
    ]);
  });
});

describe("the acceleration cap", () => {
  function tried(fitment: Fitment, rules: UseRules): EventsTried {
    const setup = unwrapped(impactSetupOf(fitment, cornerOf(fitment), { loaded: true }));
    const steps = tryEvents(setup, rules);
    let step = steps.next();
    while (!step.done) step = steps.next();
    return step.value;
  }

  it("is passed by more than it, not by as much", () => {
    const fitment = strut({});
    const landing: UseRules = {
      roadClass: "C",
      speedKmPerH: 60,
      allowedContactsPerKm: 2,
      accelerationCapG: 100,
      events: [{ kind: "landing", heightM: 0.05 }],
      reserveMm: 5,
      balanceMm: 10,
      roadKurtosis: 5,
    };
    const { peakAccelerationG } = tried(fitment, landing).results[0] as EventResult;
    const failuresAt = (accelerationCapG: number) =>
      tried(fitment, { ...landing, accelerationCapG }).failures;
    expect(failuresAt(peakAccelerationG)).toEqual([]);
    expect(failuresAt(peakAccelerationG * (1 - 1e-12))).toEqual([
      { eventIndex: 0, kind: "acceleration" },
    ]);
  });
});

describe("the cells of the map", () => {
  function cellAt(fitment: Fitment, height: number): MapCell {
    for (const cell of unwrapped(heightClassMap(fitment, cornerOf(fitment), [height])).cells()) {
      if (cell !== null && cell.extraHeightMm === height) return cell;
    }
    throw new Error("no cell");
  }

  it("are clear with just the reserve that is wanted", () => {
    // Full stop at 45 + 30; 5 mm on to the limit at 80.
    const just = cellAt(strut({ limit: 80 }), 0);
    expect(just.reserveMm).toBe(5);
    expect(just.failures).not.toContain("clearance");
    expect(cellAt(strut({ limit: 79.999 }), 0).failures).toContain("clearance");
    expect(cellAt(strut({ limit: 80 }), -0.001).failures).toContain("clearance");
  });

  it("are not met too early with just the travel that the road asks for", () => {
    // So many contacts a km are allowed that half of all passages count: σ·√(2·ln 2), with σ by hand.
    const rules = { ...softLanding, allowedContactsPerKm: 1e6 };
    const sigma = 1000 * Math.sqrt((Math.PI ** 2 * 0.01 * 256e-6 * (60 / 3.6) * 450) / 2700);
    const needed = sigma * Math.sqrt(2 * Math.LN2);
    const failuresAt = (gap: number) => cellAt(strut({ gap, rules }), 0).failures;
    expect(failuresAt(needed + 1e-6)).not.toContain("earlyContact");
    expect(failuresAt(needed - 1e-6)).toContain("earlyContact");
  });
});

describe("the heights of the map", () => {
  const heightsOf = (fitment: Fitment, heights?: readonly number[]) =>
    unwrapped(heightClassMap(fitment, cornerOf(fitment), heights)).heights;
  const spacingOf = (fitment: Fitment) => {
    const [first = 0, second = 0] = heightsOf(fitment);
    return second - first;
  };

  it("are those asked for and 0, rising, each once, without what is no number", () => {
    const asked = [20, -10, Number.NaN, 20, Number.POSITIVE_INFINITY, 5];
    expect(heightsOf(strut({}), asked)).toEqual([-10, 0, 5, 20]);
  });

  it("reach just as far as they must: six steps to each side", () => {
    expect(mapHeights(30, null).at(-1)).toBe(30);
    expect(mapHeights(30.001, null).at(-1)).toBe(60);
    expect(mapHeights(null, -60).at(-1)).toBe(60);
    expect(mapHeights(-120, 3).at(-1)).toBe(120);
    expect(mapHeights(-120.1, 3).at(-1)).toBe(300);
  });

  /*
   * At rest without payload an even road asks for σ·√(2·ln(ν0·1000/(V·N))) of free travel: M = 450 kg,
   * c = 2700 N·s/m, kt = 220 N/mm, road C at 60 km/h, 2 contacts a km, 20 for this progressive stop.
   */
  const level = (massKg: number) => {
    const variance = (Math.PI ** 2 * 0.01 * 256e-6 * (60 / 3.6) * massKg) / 2700;
    const upcrossings = Math.sqrt(220_000 / massKg) / (2 * Math.PI);
    const perKm = (upcrossings * 1000) / (60 / 3.6);
    return 1000 * Math.sqrt(variance) * Math.sqrt(2 * Math.log(perKm / 20));
  };

  it("hold the height that the reserve wants", () => {
    // 45 + 30 − (134 − 5) = −54, and early contact allows 45 less some 18: 10 mm apart.
    expect(45 - level(450)).toBeGreaterThan(0);
    expect(45 - level(450)).toBeLessThan(30);
    expect(spacingOf(strut({ limit: 134 }))).toBe(10);
    expect(spacingOf(strut({ limit: 109 }))).toBe(5);
    expect(spacingOf(strut({ limit: null }))).toBe(5);
  });

  it("hold the most that early contact allows under the payload", () => {
    // 100 kg on 26 N/mm sag by 37.7 mm; the road asks for some 20 mm more: 45 − 58 = −13.
    const most = 45 - (100 * 9.80665) / 26 - level(550);
    expect(most).toBeGreaterThan(-30);
    expect(most).toBeLessThan(0);
    expect(spacingOf(strut({ payloadKg: 100 }))).toBe(5);
    // A wide gap leaves 85 − 58 = 27 mm and wants 85 + 30 − 115 = 0; unladen 85 − 18 = 67.
    expect(spacingOf(strut({ gap: 85, limit: 120, payloadKg: 100 }))).toBe(5);
    expect(spacingOf(strut({ gap: 85, limit: 120 }))).toBe(20);
  });
});
