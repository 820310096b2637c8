import { describe, expect, it } from "vitest";
import type { Corner } from "../../../src/physics/fitment.ts";
import { cornerDynamics } from "../../../src/physics/stiffness/cornerDynamics.ts";
import { exact, ride, uprightStrut } from "../staticFitments.ts";

describe("a payload that only the stiffer stops hold within the layout's reach", () => {
  // A level arm of 100 and 250 mm: the spring alone would have to sag by 3000·9.80665/26 = 1132 mm.
  const fitment = uprightStrut({
    gap: exact(20),
    limits: [],
    fitment: {
      layout: { kind: "arm", readings: { pivotToStop: exact(100), pivotToOuter: exact(250) } },
      ride: { ...ride, payloadPerCornerKg: 3000 },
      rules: { events: [{ kind: "landing", heightM: 0.001 }] },
    },
  });
  const dynamics = cornerDynamics(fitment, fitment.corners[0] as Corner);

  it("leaves the softer classes not computed, and the stop's own with its figures", () => {
    expect(dynamics.faults).toEqual([]);
    expect(dynamics.events).toHaveLength(1);
    const lost = dynamics.failures.filter(({ kind }) => kind === "notComputed");
    expect(lost.length).toBeGreaterThan(0);
    expect(lost[0]).toEqual({
      stiffnessClass: 10,
      eventIndex: 0,
      kind: "notComputed",
      laden: true,
    });
    expect(Math.max(...lost.map(({ stiffnessClass }) => stiffnessClass))).toBeLessThan(160);
  });
});
