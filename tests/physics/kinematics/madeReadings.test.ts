import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Layout } from "../../../src/physics/fitment.ts";
import { kinematicsOf } from "../../../src/physics/kinematics/kinematics.ts";
import { publishedLayout, publishedStops } from "../../published/publishedSuspensions.ts";
import { unwrapped } from "../demoFitments.ts";
import { number, readingsOf } from "./arbitraryLayouts.ts";
import { radians } from "./planarSolver.ts";

type Space = readonly [number, number, number];
const distance = (a: Space, b: Space) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

/** s at 60 mm and the ratio at ride: enough to tell whether two layouts are the same. */
function signature(layout: Layout): readonly [number, number] {
  const kinematics = unwrapped(kinematicsOf(layout));
  return [unwrapped(kinematics.closing(60)), unwrapped(kinematics.ratio(0))];
}

describe("lengths by tape alone, against plain coordinates", () => {
  // The pivot line along x, the point square to it at `across`, anywhere along it, also beyond the bolts.
  it("three distances from the bolts give the length square to the pivot line", () => {
    fc.assert(
      fc.property(
        number(120, 450),
        number(60, 400),
        number(-300, 300),
        number(200, 600),
        number(-300, 300),
        (boltSpacing, stop, stopAlong, outer, outerAlong) => {
          const front: Space = [boltSpacing / 2, 0, 0];
          const rear: Space = [-boltSpacing / 2, 0, 0];
          const at = (along: number, across: number): Space => [
            along,
            across * Math.cos(0.2),
            -across * Math.sin(0.2),
          ];
          const made = {
            boltSpacing,
            frontBoltToStop: distance(front, at(stopAlong, stop)),
            rearBoltToStop: distance(rear, at(stopAlong, stop)),
            frontBoltToOuter: distance(front, at(outerAlong, outer)),
            rearBoltToOuter: distance(rear, at(outerAlong, outer)),
          };
          const role = { kind: "arm", armRole: "carriesWheel" } as const;
          const [s, ratio] = signature({ ...role, readings: readingsOf(made) });
          const direct = { pivotToStop: stop, pivotToOuter: outer };
          const [wanted, wantedRatio] = signature({ ...role, readings: readingsOf(direct) });
          expect(Math.abs(s - wanted)).toBeLessThan(1e-9);
          expect(Math.abs(ratio / wantedRatio - 1)).toBeLessThan(1e-10);
        },
      ),
      { numRuns: 200 },
    );
  });

  it("two heights above the ground give the angle of each line, of a damper's and the other arm's too", () => {
    fc.assert(
      fc.property(
        number(-25, 25),
        number(-25, 25),
        number(-20, 20),
        number(250, 700),
        (armAngle, mountLineAngle, otherArmAngle, pivotHeight) => {
          const lengths = {
            pivotToMount: 260,
            pivotToOuter: 400,
            damperLength: 420,
            otherArmLength: 300,
            jointHeight: 280,
            tyreOffset: 90,
          };
          const fall = (length: number, degrees: number) => length * Math.sin(radians(degrees));
          const heights = {
            pivotHeight,
            outerHeight: pivotHeight - fall(400, armAngle),
            mountHeight: pivotHeight - fall(260, mountLineAngle),
            otherPivotHeight: pivotHeight + 250,
            otherOuterHeight: pivotHeight + 250 - fall(300, otherArmAngle),
          };
          const role = { kind: "damper", armRole: "lower" } as const;
          const angles = { armAngle, mountLineAngle, otherArmAngle };
          const direct = kinematicsOf({ ...role, readings: readingsOf({ ...lengths, ...angles }) });
          const made = kinematicsOf({ ...role, readings: readingsOf({ ...lengths, ...heights }) });
          fc.pre(direct.ok && unwrapped(direct).range[1] > 60);
          const [one, other] = [unwrapped(made), unwrapped(direct)];
          expect(one.linkage).toBe("fourBar");
          expect(Math.abs(unwrapped(one.closing(60)) - unwrapped(other.closing(60)))).toBeLessThan(
            1e-9,
          );
        },
      ),
      { numRuns: 100 },
    );
  });

  it("a direct reading goes before one made of others", () => {
    const direct = { pivotToStop: 150, pivotToOuter: 400, armAngle: 10 };
    const more = { boltSpacing: 300, frontBoltToStop: 250, rearBoltToStop: 260 };
    const heights = { pivotHeight: 400, outerHeight: 400, stopHeight: 400 };
    const kind = "arm";
    expect(signature({ kind, readings: readingsOf({ ...direct, ...more }) })).toEqual(
      signature({ kind, readings: readingsOf(direct) }),
    );
    // The stop's line was made of heights, the arm's angle was not: level against 10° down.
    const lined = { ...direct, ...heights };
    expect(signature({ kind, readings: readingsOf(lined) })).toEqual(
      signature({ kind, readings: readingsOf({ ...direct, stopLineAngle: 0 }) }),
    );
  });
});

describe("the hard points of published suspensions", () => {
  const between = (a: readonly number[], b: readonly number[]) =>
    Math.hypot(...a.map((value, index) => value - (b[index] ?? 0)));
  const withTwoBolts = publishedStops.filter(({ stop }) => stop.startsWith("lower f0.6 b0"));

  // tests/vectors/geometry.json: lower arm's bolts and ball joint, and the length square to the pivot line.
  it.each(withTwoBolts)("$geometry: three distances by tape give the arm's length", (stop) => {
    const points: Readonly<Record<string, readonly number[]>> = stop.hardPointsMm;
    const { lca_f: front = [], lca_b: rear = [], lbj: joint = [] } = points;
    const bolts = readingsOf({
      boltSpacing: between(front, rear),
      frontBoltToOuter: between(front, joint),
      rearBoltToOuter: between(rear, joint),
    });
    const direct = publishedLayout(stop);
    const made = publishedLayout(stop, ["pivotToOuter"]);
    const [s, ratio] = signature({ ...made, readings: { ...made.readings, ...bolts } } as Layout);
    const [wanted, wantedRatio] = signature(direct);
    expect(s).toBeCloseTo(wanted, 3);
    expect(ratio).toBeCloseTo(wantedRatio, 5);
    expect(withTwoBolts).toHaveLength(3);
  });
});
