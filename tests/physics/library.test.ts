import { describe, expect, it } from "vitest";
import {
  type Fitment,
  kinematicsOf,
  mean,
  stiffnessClassOf,
  stopCurve,
} from "../../src/physics/index.ts";
import { answerLines, front } from "./libraryExample.ts";

describe("the calculation as a library", () => {
  it("answers one question in a few lines", () => {
    const lines = answerLines(front);
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
    expect(answerLines(broken)).toEqual([expect.stringMatching(/^[A-Z].+\.$/)]);
  });
});
