import { describe, expect, it } from "vitest";
import {
  assessFitment,
  type Fitment,
  inModelUnits,
  kinematicsOf,
  mean,
  type Reading,
  stiffnessClassOf,
  stopCurve,
} from "../../src/physics/index.ts";

/*
 * The calculation as a library: one axle described, one question asked, through the door alone. This is
 * how a script of one's own begins.
 */

const read = (tol: number, ...values: number[]): Reading => ({ values, tol });

const front: Fitment = {
  use: "daily",
  layout: {
    kind: "arm",
    wheelPerOuter: 1,
    readings: {
      pivotToStop: read(1.5, 152, 153, 152),
      pivotToOuter: read(2, 411),
      armAngle: read(0.5, 8),
      stopLean: read(1, 5),
    },
  },
  corners: [
    {
      side: "left",
      gap: read(1, 21, 21.5),
      limits: [{ kind: "tyre", at: "wheel", reading: read(3, 168) }],
    },
  ],
  stop: {
    name: "Block 60",
    duty: "impact",
    freeHeight: read(0.5, 60),
    usableCompressionMm: 33,
    curve: [
      [5, 900],
      [12, 2500],
      [20, 5400],
      [28, 10_500],
      [33, 17_000],
    ],
    damping: null,
    testedAtSpeed: false,
  },
};

describe("the calculation as a library", () => {
  it("answers one question in a few lines", () => {
    const answer = assessFitment(front);
    if (!answer.ok) throw new Error(inModelUnits(answer.fault.sentence));
    const [left] = answer.value.corners;
    const lines = [
      `R = ${left?.leverRatio.toFixed(2)} : 1`,
      `contact after ${left?.wheelTravelToContactMm.toFixed(1)} mm`,
      `full stop after ${left?.wheelTravelToFullStopMm.toFixed(1)} mm`,
      ...(left?.checks ?? []).map(({ sentence }) => inModelUnits(sentence)),
    ];
    // R = b·cos θ0 / (a·cos(φ0 + β)) = 411·cos 8° / (152.33·cos 13°), by hand.
    const degree = Math.PI / 180;
    const ratio = (411 * Math.cos(8 * degree)) / ((457 / 3) * Math.cos(13 * degree));
    expect(lines[0]).toBe(`R = ${ratio.toFixed(2)} : 1`);
    expect(lines.length).toBeGreaterThan(3);
    expect(lines.join(" ")).not.toMatch(/NaN|Infinity|undefined/);
  });

  it("gives its parts one by one", () => {
    const motion = kinematicsOf(front.layout);
    const curve = stopCurve(front.stop);
    if (!motion.ok || !curve.ok) throw new Error("neither should fail");
    const gap = mean([21, 21.5]);
    const contact = motion.value.wheelTravel(gap);
    expect(contact.ok && motion.value.closing(contact.value)).toMatchObject({ ok: true });
    expect(curve.value.force(12)).toBeCloseTo(2500, 9);
    expect(stiffnessClassOf(240)).toBe(250);
  });

  it("says in a sentence what it cannot compute with", () => {
    const broken: Fitment = { ...front, stop: { ...front.stop, curve: [[5, -900]] } };
    const answer = assessFitment(broken);
    expect(!answer.ok && inModelUnits(answer.fault.sentence)).toMatch(/^[A-Z].+\.$/);
  });
});
