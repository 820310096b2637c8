import { describe, expect, it } from "vitest";
import type { Interval, LimitKind } from "../../../src/physics/fitment.ts";
import { clearanceCheck } from "../../../src/physics/verdict/clearance.ts";
import { exact, tyreLimit, uprightStrut } from "../staticFitments.ts";
import { type EvidenceChange, evidenceOf, toldOf } from "./evidenceOf.ts";

/* An upright strut: gap 45 mm and δu 30 mm make 75 mm to full compression, so that a limit at 87 mm leaves 12 mm. */
function limited(atMm: number, kind: LimitKind = "tyre") {
  return uprightStrut({ gap: exact(45), limits: [{ ...tyreLimit(exact(atMm)), kind }] });
}

const told = (atMm: number, change: EvidenceChange, kind?: LimitKind) =>
  toldOf(clearanceCheck(evidenceOf(limited(atMm, kind), change)));

const reserveOf = (reserve: Interval) => ({
  intervals: {
    contact: null,
    fullStop: null,
    hardLimit: null,
    reserve,
    spacer: null,
    taller: null,
  },
});
const gapAndLimit = [
  { reading: "left.limits.0" as const, share: 0.7 },
  { reading: "left.gap" as const, share: 0.3 },
];

describe("clearance, decided by P(reserve ≥ 5 mm) and P(reserve ≥ 0)", () => {
  it("ok", () => {
    expect(told(87, { draws: { reserveWanted: 0.95, reserveAboveZero: 0.999 } })).toBe(
      "clearance ok P 0.95 -: The stop is fully compressed 12.0 mm of wheel travel before the tire touches.",
    );
  });

  it("care, with the 95 % interval and the reading most in doubt", () => {
    const draws = { reserveWanted: 0.6, reserveAboveZero: 0.97, ...reserveOf([1, 11]) };
    expect(told(81, { draws, doubt: { reserve: gapAndLimit, contact: [] } })).toBe(
      "clearance care P 0.6 left.limits.0: The stop is fully compressed first, but you can't count on the 5.0 mm wanted before the tire touches: there are 6.0 mm (95 %: 1.0 mm to 11.0 mm).",
    );
  });

  it.each<[LimitKind, string]>([
    ["tyre", "The tire touches"],
    ["damper", "The shock reaches its end"],
    ["spring", "The spring closes up"],
    ["metal", "Metal touches metal"],
    ["other", "Something hard touches"],
  ])("no, before the %s: 75 − 71 = 4 mm too early", (kind, words) => {
    const draws = { reserveWanted: 0, reserveAboveZero: 0.05 };
    expect(told(71, { draws }, kind)).toBe(
      `clearance no P 0 left.gap: ${words} 4.0 mm of wheel travel before the stop is fully compressed.`,
    );
  });

  it("no, told as 0 mm where it is the doubt alone that fails it", () => {
    const draws = { reserveWanted: 0, reserveAboveZero: 0.04 };
    expect(told(76, { draws })).toMatch(/: The tire touches 0\.0 mm of wheel travel before/);
  });

  it("unsure, with the interval and what to measure again", () => {
    const draws = { reserveWanted: 0.3, reserveAboveZero: 0.7, ...reserveOf([-3, 7]) };
    const doubt = { reserve: gapAndLimit, contact: [] };
    expect(told(77, { draws, doubt })).toBe(
      "clearance unsure P 0.3 left.limits.0: Can't tell whether the stop is fully compressed before the tire touches. The readings say 2.0 mm to spare (95 %: 3.0 mm short to 7.0 mm to spare). Re-measure the left clearance over the tire, more closely if you can: 70 % of the margin of error comes from it.",
    );
    expect(told(77, { draws: { reserveWanted: 0.3, reserveAboveZero: 0.7 } })).toBe(
      "clearance unsure P 0.3 left.gap: Can't tell whether the stop is fully compressed before the tire touches. The readings say 2.0 mm to spare. Re-measure the left gap, more closely if you can.",
    );
  });

  it("unsure, and without a probability, where there is no limit to draw", () => {
    const noLimit =
      "clearance unsure left.limits.0: No clearance was measured on the left, so the answer can't say what touches first. Measure how far the wheel can rise before the tire, the shock, the spring or metal touches.";
    const check = clearanceCheck(
      evidenceOf(uprightStrut({ limits: [] }), {
        draws: { reserveWanted: null, reserveAboveZero: null },
      }),
    );
    expect(toldOf(check)).toBe(noLimit);
    expect(check).not.toHaveProperty("probability");
    expect(told(87, { draws: { reserveWanted: null } })).toBe(noLimit);
    expect(told(87, { draws: { reserveAboveZero: null } })).toBe(noLimit);
    const drawn = evidenceOf(uprightStrut({ limits: [] }), { draws: { reserveWanted: 1 } });
    expect(toldOf(clearanceCheck(drawn))).toBe(noLimit);
  });

  it("unsure, where more than 5 % of the draws are outside the layout's reach", () => {
    const contact = [{ reading: "right.pivotToStop" as const, share: 1 }];
    const change = (outsideShare: number): EvidenceChange => ({
      draws: { outsideShare, reserveWanted: 0.95, reserveAboveZero: 0.95 },
      doubt: { reserve: gapAndLimit, contact },
    });
    expect(told(87, change(0.05))).toMatch(/^clearance ok/);
    expect(told(87, change(0.06))).toBe(
      "clearance unsure P 0.95 right.pivotToStop: Within their ± the readings also allow a suspension that can't move this far (6 % of the cases). So the answer can't tell. Re-measure the right distance from pivot to stop, more closely if you can.",
    );
  });
});

describe("the reading most in doubt", () => {
  const draws = { reserveWanted: 0.3, reserveAboveZero: 0.7 };

  it("is a hard limit by its own kind, not by that of the first", () => {
    const limits = [tyreLimit(exact(120)), { ...tyreLimit(exact(77)), kind: "damper" as const }];
    const evidence = evidenceOf(uprightStrut({ gap: exact(45), limits }), {
      draws,
      doubt: { reserve: [{ reading: "left.limits.1" as const, share: 0.9 }], contact: [] },
    });
    expect(toldOf(clearanceCheck(evidence))).toMatch(
      /before the shock reaches its end\. .* Re-measure the left shock travel left, more closely if you can: 90 % /,
    );
  });

  it("is found, not measured, where it is a ride value", () => {
    const doubt = {
      reserve: [{ reading: "ride.wheelRateNPerMm" as const, share: 0.8 }],
      contact: [],
    };
    expect(told(77, { draws, doubt })).toMatch(
      / Find the wheel rate again, more closely if you can: 80 % of the margin of error comes from it\.$/,
    );
  });
});
