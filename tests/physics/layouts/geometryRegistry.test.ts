import { describe, expect, it } from "vitest";
import type { Layout, LayoutKind, Reading } from "../../../src/physics/fitment.ts";
import { layoutPlan } from "../../../src/physics/kinematics/layoutPlan.ts";
import {
  type GeometryReadingName,
  geometryNames,
  geometryRegistry,
  layoutReadingsInOrder,
  layoutRegistry,
  neededReadings,
} from "../../../src/physics/layouts/geometryRegistry.ts";
import { layoutKinds } from "../../../src/physics/layouts/layoutKinds.ts";
import { said } from "../../../src/saying/texts.ts";
import { unwrapped } from "../demoFitments.ts";

const kinds = layoutKinds;

/** In the middle of what is seen on vehicles; distances from bolts and heights such that they meet. */
const values: { readonly [Name in GeometryReadingName]?: number } = {
  boltSpacing: 300,
  frontBoltToStop: 260,
  rearBoltToStop: 270,
  frontBoltToMount: 280,
  rearBoltToMount: 290,
  frontBoltToOuter: 420,
  rearBoltToOuter: 430,
  pivotHeight: 420,
  outerHeight: 400,
  stopHeight: 410,
  mountHeight: 405,
  otherPivotHeight: 700,
  otherOuterHeight: 690,
  pivotToStop: 150,
  pivotToMount: 220,
  pivotToOuter: 400,
  damperLength: 430,
  jointInset: 30,
  tyreOffset: 90,
  wheelCentreAbove: 70,
  otherArmLength: 300,
  jointHeight: 280,
  jointToTop: 700,
};

function middleOf(name: GeometryReadingName): number {
  const [least, greatest] = geometryRegistry[name].believable;
  return values[name] ?? (geometryRegistry[name].sort === "angle" ? 6 : (least + greatest) / 2);
}

/** Every reading of a layout, but those that are made of others where `made` says so. */
function layoutOf(kind: LayoutKind, made: boolean): Layout {
  const names = layoutReadingsInOrder[kind].filter(
    (name) => !(made && geometryRegistry[name].madeOf !== undefined),
  );
  const readings = Object.fromEntries(
    names.map((name): [string, Reading] => [name, { values: [middleOf(name)], tol: 1 }]),
  );
  const role = layoutRegistry[kind].onArm ? { armRole: "lower" } : {};
  return { kind, ...role, readings } as Layout;
}

function usedBy(kind: LayoutKind): ReadonlySet<string> {
  return new Set(
    [false, true].flatMap((made) =>
      [layoutPlan(layoutOf(kind, made)), layoutPlan(layoutOf(kind, made), {}, "one")].flatMap(
        (plan) => unwrapped(plan).places.map(({ id }) => id),
      ),
    ),
  );
}

describe("the registry of the geometry's readings", () => {
  it.each(kinds)("%s: every reading of it enters its motion, none other does", (kind) => {
    const used = usedBy(kind);
    for (const name of layoutReadingsInOrder[kind]) expect(used, name).toContain(name);
    for (const name of geometryNames)
      if (!layoutReadingsInOrder[kind].includes(name)) expect(used).not.toContain(name);
  });

  it.each(kinds)(
    "%s: has no motion without one that is needed, or all that it is made of",
    (kind) => {
      for (const name of neededReadings[kind]) {
        const whole = layoutOf(kind, false);
        const { madeOf } = geometryRegistry[name];
        const without = Object.entries<Reading>(whole.readings).filter(
          ([one]) => one !== name && !(madeOf?.own as readonly string[] | undefined)?.includes(one),
        );
        const lacking = { ...whole, readings: Object.fromEntries(without) } as Layout;
        const plan = layoutPlan(lacking);
        expect(plan.ok ? "" : plan.fault.reading).toBe(name);
      }
    },
  );

  it("parts and stand-ins belong to the same layouts as what they serve", () => {
    for (const name of geometryNames) {
      const { madeOf, standIn } = geometryRegistry[name];
      const parts = madeOf === undefined ? [] : [...madeOf.common, ...madeOf.own];
      for (const kind of kinds) {
        const taken = layoutReadingsInOrder[kind];
        if (!taken.includes(name)) continue;
        for (const part of parts) {
          expect(taken).toContain(part);
          expect(geometryRegistry[part].use, part).toBe("part");
        }
        if (standIn !== undefined) expect(taken).toContain(standIn);
      }
    }
  });

  it("has names of their own, ranges that rise and a ± that is one", () => {
    expect(new Set(geometryNames.map((name) => said(geometryRegistry[name].name))).size).toBe(
      geometryNames.length,
    );
    for (const name of geometryNames) {
      const { believable, usualTolerance, sort } = geometryRegistry[name];
      expect(believable[0]).toBeLessThan(believable[1]);
      expect(usualTolerance).toBeGreaterThan(0);
      if (sort === "length") expect(believable[0]).toBeGreaterThan(0);
    }
  });
});
