import { describe, expect, it } from "vitest";
import { cornerAtMeans } from "../../../src/physics/budget/cornerAtMeans.ts";
import { gapOf } from "../../../src/physics/budget/gap.ts";
import type { Corner, Fitment, Stop } from "../../../src/physics/fitment.ts";
import { fitmentWithStop } from "../../../src/physics/prescription/fitmentWithStop.ts";
import { unwrapped } from "../demoFitments.ts";
import { refusal } from "../refusal.ts";
import { exact, uprightStrut, within } from "../staticFitments.ts";

/* The stop of the check is 60 ± 0 mm high, its gap 45 ± 1 mm. */
const fitment = uprightStrut({});
const fitted = fitment.stop;
const gap = (changed: Fitment) => unwrapped(gapOf(changed, changed.corners[0] as Corner));

describe("the stop that is fitted", () => {
  it("keeps its gap, whatever it is called and however closely its height is known", () => {
    const same: Stop = { ...fitted, name: "The library's", freeHeight: within(60, 2) };
    const changed = unwrapped(fitmentWithStop(fitment, same));
    expect(changed).toEqual(fitment);
    expect(gap(unwrapped(fitmentWithStop(fitment, same, 4)))).toBe(41);
  });

  it("has the same height in other repeats", () => {
    const same = { ...fitted, freeHeight: { values: [59, 61], tol: 0 } };
    expect(unwrapped(fitmentWithStop(fitment, same))).toEqual(fitment);
  });

  const damping = [[10, 0.5, 0.2]] as const;
  it.each<[string, Partial<Stop>]>([
    ["usable compression", { usableCompressionMm: 29 }],
    ["duty", { duty: "carry" }],
    ["curve", { curve: [[15, 1500]] }],
    ["damping", { damping }],
    ["test at speed", { testedAtSpeed: true }],
    ["height", { freeHeight: exact(60.5) }],
  ])("is another where its %s is another", (_, change) => {
    const other = { ...fitted, ...change };
    expect(unwrapped(fitmentWithStop(fitment, other)).stop).toEqual(other);
  });
});

describe("another stop", () => {
  const other = (height: number, tol = 0): Stop => ({
    ...fitted,
    name: "Another",
    usableCompressionMm: 25,
    freeHeight: within(height, tol),
  });

  it("closes the gap by what it is taller: 66 − 60 + 2 = 8 mm", () => {
    const repeats = uprightStrut({ gap: { values: [44, 46], tol: 1 } });
    expect(gap(unwrapped(fitmentWithStop(repeats, other(66), 2)))).toBe(37);
    expect(gap(unwrapped(fitmentWithStop(repeats, other(50))))).toBe(55);
  });

  it("draws both heights, each by itself", () => {
    const doubtful = { ...fitment, stop: { ...fitted, freeHeight: within(60, 6) } };
    const changed = unwrapped(fitmentWithStop(doubtful, other(60, 3)));
    const { places } = unwrapped(cornerAtMeans(changed, changed.corners[0] as Corner));
    const heights = places.all.filter(({ id }) => id.endsWith("freeHeight"));
    expect(heights.map(({ id, drawn }) => [id, drawn.halfWidth])).toEqual([
      ["stop.freeHeight", 3],
      ["recordedStop.freeHeight", 6],
    ]);
  });

  it("may just touch, but not be pressed with the vehicle standing", () => {
    const corner = fitment.corners[0] as Corner;
    const both: Fitment = {
      ...fitment,
      corners: [corner, { ...corner, side: "right", gap: within(40, 1) }],
    };
    expect(gap(unwrapped(fitmentWithStop(fitment, other(105))))).toBe(0);
    expect(refusal(fitmentWithStop(both, other(103)))).toBe(
      "stopPresses (right.gap): On the right it is taller than the gap allows: it would be pressed by 3.0 mm with the vehicle standing.",
    );
    expect(refusal(fitmentWithStop(fitment, fitted, 45.5))).toBe(
      "stopPresses (left.gap): On the left it is taller than the gap allows: it would be pressed by 0.5 mm with the vehicle standing.",
    );
  });
});
