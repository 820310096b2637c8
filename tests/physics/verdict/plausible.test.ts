import { describe, expect, it } from "vitest";
import type { Fitment, Layout, Reading } from "../../../src/physics/fitment.ts";
import { plausibleCheck } from "../../../src/physics/verdict/plausible.ts";
import { exact, tyreLimit, uprightStrut, within } from "../staticFitments.ts";
import { evidenceOf, toldOf } from "./evidenceOf.ts";

function told(fitment: Fitment): string {
  return toldOf(plausibleCheck(evidenceOf(fitment)));
}

const well = "plausible ok -: No odd readings.";
const strut = (change: Parameters<typeof uprightStrut>[0]) =>
  uprightStrut({ gap: exact(45), limits: [tyreLimit(exact(95))], ...change });
/** On a stop that gives little, so that layouts of any size can press it. */
const laidOut = (layout: Layout, gap = 8): Fitment => {
  const fitment = uprightStrut({ gap: exact(gap), limits: [], fitment: { layout } });
  return { ...fitment, stop: { ...fitment.stop, usableCompressionMm: 2 } };
};

/* Lengths seen on vehicles, common practice, no source: each typical one typed in inches as if in mm. */
describe("a length that fits only if inches and millimeters were mixed up", () => {
  const arm = (pivotToStop: number, pivotToOuter: number): Layout => ({
    kind: "arm",
    wheelPerOuter: 1,
    readings: { pivotToStop: exact(pivotToStop), pivotToOuter: exact(pivotToOuter) },
  });
  const damper = (pivotToMount: number, damperLength: number): Layout => ({
    kind: "damper",
    readings: {
      pivotToMount: exact(pivotToMount),
      pivotToOuter: exact(400),
      damperLength: exact(damperLength),
    },
  });
  const axle = (track: number, stopSpacing: number): Layout => ({
    kind: "axle",
    readings: { track: exact(track), stopSpacing: exact(stopSpacing) },
  });
  const stop = (freeHeight: number): Fitment => {
    const fitment = strut({});
    return {
      ...fitment,
      stop: { ...fitment.stop, freeHeight: exact(freeHeight), usableCompressionMm: 1 },
    };
  };

  it.each<[string, string, Fitment, string, string]>([
    ["pivotToStop", "The distance from pivot to stop", laidOut(arm(15, 60)), "15.0", "381.0"],
    [
      "pivotToOuter",
      "The distance from pivot to outer joint",
      laidOut(arm(60, 16)),
      "16.0",
      "406.4",
    ],
    [
      "pivotToMount",
      "The distance from pivot to shock mount",
      laidOut(damper(15, 500)),
      "15.0",
      "381.0",
    ],
    ["damperLength", "The shock length", laidOut(damper(300, 20)), "20.0", "508.0"],
    ["track", "The track", laidOut(axle(60, 40)), "60.0", "1524.0"],
    ["stopSpacing", "The spacing of the stops", laidOut(axle(1500, 40)), "40.0", "1016.0"],
    ["left.gap", "The left gap", strut({ gap: exact(0.9) }), "0.9", "22.9"],
    ["stop.freeHeight", "The free height of the stop", stop(2.5), "2.5", "63.5"],
    [
      "left.limits.0",
      "The left clearance over the tire",
      strut({ gap: exact(4), limits: [tyreLimit(exact(4))] }),
      "4.0",
      "101.6",
    ],
    [
      "left.rideHeight",
      "The left ride height",
      strut({ corner: { rideHeight: exact(20) } }),
      "20.0",
      "508.0",
    ],
  ])("%s in inches", (reading, words, fitment, typed, meant) => {
    expect(told(fitment)).toContain(
      `plausible unsure ${reading}: ${words} would be ${typed} mm, which fits only if inches and millimeters were mixed up (then ${meant} mm). Re-measure it.`,
    );
  });

  it("in hundreds of millimetres where inches were asked for: 1016 / 25.4 = 40", () => {
    expect(told(strut({ gap: exact(1016), limits: [] }))).toBe(
      "plausible unsure left.gap: The left gap would be 1016.0 mm, which fits only if inches and millimeters were mixed up (then 40.0 mm). Re-measure it.",
    );
  });

  it("is not one that fits as it is, though it would fit in inches too", () => {
    // 8 · 25.4 = 203 mm and 120 / 25.4 = 4.7 mm are gaps as well.
    for (const gap of [4, 8, 120, 250])
      expect(told(strut({ gap: exact(gap), limits: [] }))).toBe(well);
  });

  it("is not one that fits neither way", () => {
    // 0.03 · 25.4 = 0.8 mm is no gap either.
    expect(told(strut({ gap: exact(0.03) }))).toBe(well);
  });

  it("is not a gap of a few millimetres: what is believed while it is typed is believed here", () => {
    for (const gap of [1, 2, 3.9]) expect(told(strut({ gap: exact(gap) }))).toBe(well);
  });

  it("is not a small gap of a stop made to carry, which touches; its other lengths may be", () => {
    const carrying = (change: Parameters<typeof uprightStrut>[0]): Fitment => {
      const fitment = strut(change);
      return { ...fitment, stop: { ...fitment.stop, duty: "carry" } };
    };
    for (const gap of [0, 0.5]) expect(told(carrying({ gap: exact(gap) }))).toBe(well);
    expect(told(strut({ gap: exact(0) }))).toBe(well);
    expect(told(strut({ gap: exact(0.5) }))).toMatch(/^plausible unsure left\.gap/);
    expect(told(carrying({ corner: { rideHeight: exact(20) } }))).toMatch(
      /^plausible unsure left\.rideHeight/,
    );
  });

  it("is never a weight or an angle", () => {
    expect(told(strut({ corner: { cornerMassKg: exact(3) } }))).toBe(well);
    const layout: Layout = { kind: "strut", readings: { stopLean: exact(3) } };
    expect(told(strut({ fitment: { layout } }))).toBe(well);
  });
});

describe("a lever ratio outside 0.8 to 6", () => {
  const words = (ratio: string, name: string) =>
    `The lever ratio would be ${ratio} : 1, outside what is seen on vehicles (0.8 to 6). Re-measure ${name}.`;

  it("names the reading it most likely comes from, by layout", () => {
    const arm: Layout = {
      kind: "arm",
      wheelPerOuter: 1,
      readings: { pivotToStop: exact(80), pivotToOuter: exact(520) },
    };
    expect(told(laidOut(arm))).toBe(
      `plausible unsure pivotToStop: ${words("6.50", "the distance from pivot to stop")}`,
    );
    // Level arm, upright damper: R = b/a, 440/800.
    const damper: Layout = {
      kind: "damper",
      wheelPerOuter: 1,
      readings: { pivotToMount: exact(800), pivotToOuter: exact(440), damperLength: exact(500) },
    };
    expect(told(laidOut(damper))).toBe(
      `plausible unsure pivotToMount: ${words("0.55", "the distance from pivot to shock mount")}`,
    );
    // R = 1/cos 82° = 7.185.
    const leant = { stopLean: exact(82) };
    const leaning = words("7.19", "the lean of the stop");
    expect(told(laidOut({ kind: "strut", readings: leant }))).toBe(
      `plausible unsure stopLean: ${leaning}`,
    );
    const track = { track: exact(1500), stopSpacing: exact(1000) };
    expect(told(laidOut({ kind: "axle", readings: { ...track, ...leant } }))).toBe(
      `plausible unsure stopLean: ${leaning}`,
    );
  });

  it("is not one on the bound: b/a of 0.8 and of 6", () => {
    const ratio = (pivotToStop: number, pivotToOuter: number) =>
      told(
        laidOut({
          kind: "arm",
          wheelPerOuter: 1,
          readings: { pivotToStop: exact(pivotToStop), pivotToOuter: exact(pivotToOuter) },
        }),
      );
    expect(ratio(100, 80)).toBe(well);
    expect(ratio(100, 600)).toBe(well);
    expect(ratio(100.5, 80)).toMatch(/^plausible unsure pivotToStop/);
    expect(ratio(99.5, 600)).toMatch(/^plausible unsure pivotToStop/);
  });
});

describe("readings that do not fit together", () => {
  // κ = 1 + e·τ, τ = (tan 20° + tan 10°)/(150 + 0) and e = 100: 1.36; with e = 60 1.22.
  it("two arms by which the wheel would rise far more than its outer joint", () => {
    const fitment = (tyreOffset: number) =>
      laidOut({
        kind: "arm",
        armRole: "lower",
        readings: {
          pivotToStop: exact(150),
          pivotToOuter: exact(400),
          armAngle: exact(20),
          otherArmAngle: exact(-10),
          jointHeight: exact(150),
          tyreOffset: exact(tyreOffset),
        },
      });
    expect(told(fitment(100))).toBe(
      "plausible unsure otherArmAngle: With these readings the wheel rises 1.36 times as far as its outer joint. Vehicles have 0.85 to 1.3. Re-measure the other arm and the joints.",
    );
    expect(told(fitment(60))).toBe(well);
  });

  it("a gap larger than all travel: 90 mm where the limit closes the stop by 80 mm", () => {
    const fitment = (gap: number) => strut({ gap: exact(gap), limits: [tyreLimit(exact(80))] });
    expect(told(fitment(90))).toBe(
      "plausible unsure left.gap: The left gap, 90.0 mm, is larger than all the travel. The stop would close by 80.0 mm at the hard contact and never touch. Re-measure it.",
    );
    expect(told(fitment(80))).toBe(well);
  });

  it("stops that stand wider apart than the wheels", () => {
    const axle = (stopSpacing: number) =>
      told(
        laidOut({
          kind: "axle",
          readings: { track: exact(1500), stopSpacing: exact(stopSpacing) },
        }),
      );
    expect(axle(1501)).toBe(
      "plausible unsure stopSpacing: The stops would stand wider apart than the wheels. Re-measure the spacing of the stops.",
    );
    expect(axle(1500)).toBe(well);
    expect(axle(900)).toBe(well);
  });

  it("repeats that differ, greatest less least, by more than 3 times their ±", () => {
    const words = (name: string) =>
      `The repeats of ${name} differ more than 3 times their ± allows. Re-measure it.`;
    const gap = (tol: number, ...values: number[]): Reading => ({ values, tol });
    expect(told(strut({ gap: gap(0.5, 44, 45, 45.5) }))).toBe(well);
    expect(told(strut({ gap: gap(0.5, 45, 44, 45.6) }))).toBe(
      `plausible unsure left.gap: ${words("the left gap")}`,
    );
    expect(told(strut({ gap: gap(2, 42, 48) }))).toBe(well);
    expect(told(strut({ corner: { cornerMassKg: gap(5, 440, 460) } }))).toBe(
      `plausible unsure left.cornerMassKg: ${words("the left corner weight")}`,
    );
    expect(told(strut({ corner: { rideHeight: gap(2, 500, 510) } }))).toBe(
      `plausible unsure left.rideHeight: ${words("the left ride height")}`,
    );
  });

  it("names every other reading once", () => {
    const fitment = strut({
      gap: { values: [0.4, 0.8], tol: 0.1 },
      corner: { rideHeight: exact(20), cornerMassKg: { values: [440, 460], tol: 5 } },
    });
    expect(told(fitment)).toMatch(
      /^plausible unsure left\.gap: The left gap would be 0\.6 mm.* Re-measure it\. Also look at the left ride height, the left gap, the left corner weight\.$/,
    );
  });

  it("a reading that fills two places is looked at once", () => {
    const layout: Layout = {
      kind: "arm",
      wheelPerOuter: 1,
      readings: {
        pivotToStop: exact(150),
        pivotToOuter: exact(400),
        armAngle: { values: [5, 9], tol: 0.5 },
      },
    };
    expect(told(laidOut(layout))).toBe(
      "plausible unsure armAngle: The repeats of the arm angle differ more than 3 times their ± allows. Re-measure it.",
    );
  });

  it("is nothing that a wide ± does", () => {
    expect(told(strut({ gap: within(45, 20) }))).toBe(well);
  });
});
