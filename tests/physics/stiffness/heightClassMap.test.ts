import { describe, expect, it } from "vitest";
import { assessStatic } from "../../../src/physics/assess.ts";
import type { CornerAssessment, Fitment } from "../../../src/physics/fitment.ts";
import { cornerDynamics } from "../../../src/physics/stiffness/cornerDynamics.ts";
import {
  heightClassMap,
  type MapCell,
  mapHeights,
} from "../../../src/physics/stiffness/heightClassMap.ts";
import { type DemoCorner, demoCorners, loadedSetup, unwrapped } from "../demoFitments.ts";

function cellsOf(
  { fitment, corner }: Pick<DemoCorner, "fitment" | "corner">,
  heights: readonly number[] | null = null,
): MapCell[] {
  const map = unwrapped(heightClassMap(fitment, corner, heights));
  return [...map.cells()].filter((cell) => cell !== null);
}

/** The corner's own figures at rest. */
function staticOf({ fitment, corner }: Pick<DemoCorner, "fitment" | "corner">): CornerAssessment {
  const { corners } = unwrapped(assessStatic(fitment, { samples: 10_000 }));
  const assessed = corners.find(({ side }) => side === corner.side);
  if (assessed === undefined) throw new Error("no such corner");
  return assessed;
}

const demos = demoCorners.map((demo) => [demo.name, demo] as const);

describe("the map of extra height by stiffness class", () => {
  it.each(demos)("holds the stiffness window at this stop's own height: %s", (_, demo) => {
    const { classesThatWork } = cornerDynamics(demo.fitment, demo.corner);
    const impactKinds = ["fullStop", "hardContact", "acceleration", "notComputed"] as const;
    const working = cellsOf(demo, [0])
      .filter(({ failures }) => !impactKinds.some((kind) => failures.includes(kind)))
      .map(({ stiffnessClass }) => stiffnessClass);
    expect(working).toEqual(classesThatWork);
  });

  it.each(demos)("fails on clearance from the spacer height down: %s", (_, demo) => {
    const spacerMm = Number(staticOf(demo).spacerMm);
    const cells = cellsOf(demo, [spacerMm - 0.01, spacerMm + 0.01]);
    for (const { extraHeightMm, failures, reserveMm } of cells) {
      const fails = extraHeightMm !== 0 ? extraHeightMm < spacerMm : 0 < spacerMm;
      expect(failures.includes("clearance")).toBe(fails);
      expect(reserveMm).not.toBeNull();
    }
  });

  it.each(demos.filter(([, { fitment }]) => fitment.stop.duty === "impact"))(
    "fails on early contact from the most extra height up: %s",
    (_, demo) => {
      const mostExtraHeightMm = Number(staticOf(demo).mostExtraHeightMm);
      const cells = cellsOf(demo, [mostExtraHeightMm - 0.01, mostExtraHeightMm + 0.01]);
      for (const { extraHeightMm, failures } of cells) {
        const fails = extraHeightMm > mostExtraHeightMm;
        expect(failures.includes("earlyContact"), `${extraHeightMm}`).toBe(fails);
      }
    },
  );

  it("fails a carrying stop on early contact once it is pressed past half of δu at rest", () => {
    const demo = demoCorners.find(({ fitment }) => fitment.stop.duty === "carry") as DemoCorner;
    const usable = demo.fitment.stop.usableCompressionMm;
    const { kinematics, gapMm } = loadedSetup(demo.fitment, demo.corner);
    const cells = cellsOf(demo, [0, 20, 40, 60]);
    const seen = new Set<boolean>();
    for (const { extraHeightMm, restTravelMm, failures } of cells) {
      if (restTravelMm === null) throw new Error("no rest position");
      const pressed = unwrapped(kinematics.closing(restTravelMm)) - (gapMm - extraHeightMm);
      const fails = pressed > usable / 2;
      seen.add(fails);
      expect(failures.includes("earlyContact")).toBe(fails);
    }
    expect(seen.size).toBe(2);
  });

  it("shows this stop's own heights first, every cell once, with its figures", () => {
    const demo = demos[2]?.[1] as DemoCorner;
    const map = unwrapped(heightClassMap(demo.fitment, demo.corner));
    const cells = cellsOf(demo);
    expect(cells[0]?.extraHeightMm).toBe(0);
    const distances = cells.map(({ extraHeightMm }) => Math.abs(extraHeightMm));
    expect(distances).toEqual([...distances].sort((a, b) => a - b));
    expect(cells).toHaveLength(map.heights.length * map.classes.length);
    const keys = cells.map(
      ({ extraHeightMm, stiffnessClass }) => `${extraHeightMm}/${stiffnessClass}`,
    );
    expect(new Set(keys).size).toBe(cells.length);
    for (const { events } of cells) expect(events).toHaveLength(2);
  });

  it("a taller stop meets the wheel sooner and keeps more reserve", () => {
    const cells = cellsOf(demoCorners[0] as DemoCorner, [-10, 0, 10]).filter(
      ({ stiffnessClass }) => stiffnessClass === 250,
    );
    const rising = [...cells].sort((a, b) => a.extraHeightMm - b.extraHeightMm);
    const contacts = rising.map(({ contactMm }) => contactMm as number);
    const reserves = rising.map(({ reserveMm }) => reserveMm as number);
    expect(contacts).toEqual([...contacts].sort((a, b) => b - a));
    expect(reserves).toEqual([...reserves].sort((a, b) => a - b));
  });

  it("judges no clearance where no limit was measured", () => {
    const { fitment, corner } = demoCorners[0] as DemoCorner;
    const open = { ...corner, limits: [] };
    for (const cell of cellsOf({ fitment, corner: open }, [0])) {
      expect(cell.reserveMm).toBeNull();
      expect(cell.failures).not.toContain("clearance");
    }
  });

  it("says which ride value is missing", () => {
    const { fitment, corner } = demoCorners[0] as DemoCorner;
    const { tyreRateNPerMm: _, ...ride } = fitment.ride ?? {};
    const unknown: Fitment = { ...fitment, ride };
    expect(heightClassMap(unknown, corner)).toMatchObject({
      ok: false,
      fault: { code: "rideUnknown", reading: "ride.tyreRateNPerMm" },
    });
  });
});

describe("the heights of the map", () => {
  it("have 0 in the middle and reach what is wanted and what is allowed", () => {
    for (const [wanted, most] of [
      [11, 30],
      [-61, 8],
      [null, null],
      [1000, 0],
    ] as const) {
      const heights = mapHeights(wanted, most);
      expect(heights).toHaveLength(13);
      expect(heights[6]).toBe(0);
      const reach = Math.min(300, Math.max(Math.abs(wanted ?? 0), Math.abs(most ?? 0)));
      expect(heights.at(-1)).toBeGreaterThanOrEqual(reach);
      expect(heights[0]).toBe(-(heights.at(-1) as number));
    }
  });

  it("of the demo corners hold the spacer wanted and the most extra height", () => {
    for (const demo of demoCorners) {
      const { fitment, corner } = demo;
      const { spacerMm, mostExtraHeightMm } = staticOf(demo);
      const { heights } = unwrapped(heightClassMap(fitment, corner));
      const [least = 0, greatest = 0] = [heights[0], heights.at(-1)];
      for (const height of [spacerMm, mostExtraHeightMm]) {
        expect(height).toBeGreaterThanOrEqual(least);
        expect(height).toBeLessThanOrEqual(greatest);
      }
    }
  });
});
