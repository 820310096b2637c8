import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ClosingTable } from "../../../src/physics/kinematics/closingTable.ts";
import { kinematicsFrom } from "../../../src/physics/kinematics/kinematics.ts";
import { layoutPlan } from "../../../src/physics/kinematics/layoutPlan.ts";
import { unwrapped } from "../demoFitments.ts";
import { layouts, number, sides } from "./arbitraryLayouts.ts";

describe("the table of a motion", () => {
  it("gives closing and both derivatives of the motion itself, to 1e-9, over the whole reach", () => {
    const byTable = new Float64Array(3);
    const itself = new Float64Array(3);
    fc.assert(
      fc.property(
        layouts,
        sides,
        fc.array(number(0, 1), { minLength: 8 }),
        (layout, side, shares) => {
          const { motion, places } = unwrapped(layoutPlan(layout, side));
          fc.pre(motion.set(Float64Array.from(places, ({ drawn }) => drawn.mean)) === null);
          const kinematics = kinematicsFrom(motion);
          const least = Math.max(kinematics.range[0], -400);
          const greatest = Math.min(kinematics.range[1], 600);
          for (const share of shares) {
            const z = Math.min(least + share * (greatest - least), greatest);
            kinematics.evaluate(z, byTable);
            motion.evaluate(z, itself);
            const [s = 0, slope = 0, bend = 0] = itself;
            expect(Math.abs((byTable[0] ?? Number.NaN) - s)).toBeLessThan(1e-9);
            expect(Math.abs((byTable[1] ?? Number.NaN) - slope)).toBeLessThan(1e-9);
            expect(Math.abs((byTable[2] ?? Number.NaN) - bend)).toBeLessThan(
              1e-8 * Math.max(1, Math.abs(bend)),
            );
          }
        },
      ),
      { numRuns: 100 },
    );
  });

  it("gives the same to the last digit whatever was asked before", () => {
    fc.assert(
      fc.property(
        layouts,
        sides,
        fc.array(number(0, 1), { minLength: 2, maxLength: 6 }),
        (layout, side, shares) => {
          const asked = (order: readonly number[]): Map<number, readonly number[]> => {
            const { motion, places } = unwrapped(layoutPlan(layout, side));
            fc.pre(motion.set(Float64Array.from(places, ({ drawn }) => drawn.mean)) === null);
            const kinematics = kinematicsFrom(motion);
            const [least, greatest] = kinematics.range;
            const found = new Float64Array(3);
            return new Map(
              order.map((share) => {
                const z = Math.min(least + share * (greatest - least), greatest);
                kinematics.evaluate(z, found);
                const closing = kinematics.closing(z);
                const travel = kinematics.wheelTravel(found[0] ?? Number.NaN);
                const exact = [closing, travel].map((each) => (each.ok ? each.value : Number.NaN));
                return [share, [...found, ...exact]] as const;
              }),
            );
          };
          const one = asked(shares);
          for (const [share, found] of asked([...shares].reverse())) {
            expect(found).toEqual(one.get(share));
          }
        },
      ),
      { numRuns: 100 },
    );
  });

  it("leaves what has a kink between two rows to the motion itself", () => {
    const kinked = {
      evaluate(z: number, out: Float64Array) {
        out.set(z < 11 ? [z, 1, 0] : [11 + 2 * (z - 11), 2, 0]);
      },
    };
    const table = new ClosingTable({ ...kinked, fromRide: () => {} }, [0, 100]);
    const out = new Float64Array(3);
    for (const [z, s, slope] of [
      [10.7, 10.7, 1],
      [11.3, 11.6, 2],
      [40, 69, 2],
      [99.9, 188.8, 2],
    ] as const) {
      table.evaluate(z, out);
      expect(out[0]).toBeCloseTo(s, 10);
      expect(out[1]).toBeCloseTo(slope, 10);
    }
  });
});
