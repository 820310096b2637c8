import { describe, expect, it } from "vitest";
import type { Layout, Reading } from "../../../src/physics/fitment.ts";
import { kinematicsOf } from "../../../src/physics/kinematics/kinematics.ts";
import { layoutPlan } from "../../../src/physics/kinematics/layoutPlan.ts";
import type { MeasuredSide } from "../../../src/physics/kinematics/measuredPlaces.ts";
import { unwrapped } from "../demoFitments.ts";
import { refusal } from "../refusal.ts";
import { exact } from "../staticFitments.ts";

/** The linkage, then each place: the reading's id and its mean. */
function told(layout: Layout, side?: MeasuredSide): string {
  const { linkage, places } = unwrapped(layoutPlan(layout, side));
  return [linkage, ...places.map(({ id, drawn }) => `${id} ${drawn.mean}`)].join(", ");
}

function readings<Names extends string>(values: Readonly<Record<Names, number>>) {
  const entries = Object.entries<number>(values).map(([name, value]) => [name, exact(value)]);
  return Object.fromEntries(entries) as Record<Names, Reading>;
}

const measured = { pivotToStop: exact(150), pivotToOuter: exact(400), armAngle: exact(12) };
const arm: Layout = { kind: "arm", wheelPerOuter: 1.1, readings: measured };

describe("the readings that a layout is computed from", () => {
  // record.md: angles default to 0, stopLineAngle and mountLineAngle to armAngle.
  it("are those that were measured, each once, with κ and the linkage's own factor", () => {
    const doubts = "wheelPerOuter 1.1, linkage 1";
    expect(told(arm)).toBe(`typed, pivotToStop 150, pivotToOuter 400, armAngle 12, ${doubts}`);
    expect(
      told({ ...arm, readings: { ...measured, stopLineAngle: exact(7), stopLean: exact(-3) } }),
    ).toBe(
      `typed, pivotToStop 150, pivotToOuter 400, armAngle 12, stopLineAngle 7, stopLean -3, ${doubts}`,
    );
    expect(told({ kind: "strut", readings: {} })).toBe("straight, linkage 1");
    expect(told({ kind: "axle", readings: readings({ track: 1500, stopSpacing: 900 }) })).toBe(
      "axle, track 1500, stopSpacing 900, linkage 1",
    );
  });

  it("of a side go before the layout's, and carry its side", () => {
    const geometry = { pivotToStop: exact(148), armAngle: exact(9) };
    expect(told(arm, { side: "right", geometry })).toBe(
      "typed, right.pivotToStop 148, pivotToOuter 400, right.armAngle 9, wheelPerOuter 1.1, linkage 1",
    );
    expect(told(arm, { geometry })).toContain("typed, pivotToStop 148");
  });

  it("are the raw ones where a length is made of bolt distances and an angle of heights", () => {
    const layout: Layout = {
      kind: "arm",
      armRole: "carriesWheel",
      readings: readings({
        boltSpacing: 300,
        frontBoltToStop: 250,
        rearBoltToStop: 260,
        pivotToOuter: 400,
        pivotHeight: 420,
        outerHeight: 380,
        stopHeight: 400,
      }),
    };
    expect(told(layout)).toBe(
      "carriesWheel, boltSpacing 300, frontBoltToStop 250, rearBoltToStop 260, pivotToOuter 400, pivotHeight 420, outerHeight 380, stopHeight 400, linkage 1",
    );
  });

  it("are direct before made, but a side's own made before the layout's direct", () => {
    const bolts = readings({ boltSpacing: 300, frontBoltToStop: 250, rearBoltToStop: 260 });
    expect(told({ ...arm, readings: { ...measured, ...bolts } })).toContain("pivotToStop 150");
    expect(told(arm, { side: "left", geometry: bolts })).toContain(
      "left.boltSpacing 300, left.frontBoltToStop 250, left.rearBoltToStop 260, pivotToOuter",
    );
    const { boltSpacing, ...own } = bolts;
    const shared: Layout = { ...arm, readings: { ...measured, boltSpacing } };
    expect(told(shared, { side: "left", geometry: own })).toContain(
      "typed, boltSpacing 300, left.frontBoltToStop 250",
    );
    // One distance of the side alone makes no length.
    const { frontBoltToStop } = bolts;
    expect(told(shared, { side: "left", geometry: { frontBoltToStop } })).toContain(
      "pivotToStop 150",
    );
  });

  it("have the gap among them where the stop is on the arm and its pad flat", () => {
    const layout: Layout = { ...arm, stopOn: "arm" };
    const places = "pivotToStop 150, pivotToOuter 400, armAngle 12, ";
    expect(told(layout, { side: "left", gap: exact(21) })).toContain(`${places}left.gap 21`);
    expect(told(layout, { side: "left", seatToPad: exact(80) })).toContain(
      `${places}left.seatToPad 80`,
    );
    expect(told(layout, { side: "left" })).toContain(`${places}wheelPerOuter`);
    expect(told({ ...layout, stopOn: "frame" }, { side: "left", gap: exact(21) })).not.toContain(
      "gap",
    );
  });

  it("that are missing are named: the length, or what it would be made of", () => {
    const missing = (layout: Layout) => refusal(layoutPlan(layout));
    const none: Layout = { kind: "arm", readings: {} };
    expect(missing(none)).toMatch(/^readingMissing \(pivotToStop\)/);
    expect(missing({ kind: "axle", readings: {} })).toMatch(/^readingMissing \(track\)/);
    const half = readings({ boltSpacing: 300, frontBoltToStop: 250, pivotToOuter: 400 });
    expect(missing({ kind: "arm", readings: half })).toMatch(/^readingMissing \(rearBoltToStop\)/);
    const angle = { ...measured, stopHeight: exact(400) };
    expect(missing({ kind: "arm", readings: angle })).toMatch(/^readingMissing \(pivotHeight\)/);
  });
});

describe("which linkage holds", () => {
  const two = {
    ...measured,
    ...readings({ otherArmAngle: 4, jointHeight: 300, tyreOffset: 110, otherArmLength: 300 }),
  };
  const { otherArmLength: _, ...angleOnly } = two;
  const kind = "arm";

  it.each<[string, Layout]>([
    ["carriesWheel", { kind, armRole: "carriesWheel", wheelPerOuter: 1.2, readings: two }],
    ["fourBar", { kind, armRole: "lower", wheelPerOuter: 1.2, readings: two }],
    ["fourBar", { kind, armRole: "upper", readings: two }],
    ["instantCentre", { kind, armRole: "lower", wheelPerOuter: 1.2, readings: angleOnly }],
    ["typed", { kind, armRole: "upper", wheelPerOuter: 1.2, readings: angleOnly }],
    ["prior", { kind, armRole: "upper", readings: angleOnly }],
    ["prior", { kind, readings: two }],
    ["typed", { kind, armRole: "underStrut", wheelPerOuter: 1.2, readings: two }],
  ])("%s", (linkage, layout) => {
    expect(unwrapped(layoutPlan(layout)).linkage).toBe(linkage);
  });

  it("the other arm's angle may be made of heights, with its length", () => {
    const { otherArmAngle: __, ...without } = two;
    const heights = readings({ otherPivotHeight: 640, otherOuterHeight: 620 });
    const layout: Layout = { kind, armRole: "lower", readings: { ...without, ...heights } };
    expect(told(layout)).toContain("fourBar");
    expect(told(layout)).toContain(
      "otherArmLength 300, otherPivotHeight 640, otherOuterHeight 620",
    );
  });

  // From 14 published geometries, as the model's text gives them; provisional.
  it.each([
    ["lower", 1.04, 0.06],
    ["upper", 1.09, 0.09],
    ["underStrut", 1.01, 0.03],
    [undefined, 1.05, 0.1],
  ] as const)("of a %s arm alone κ is taken as usual for its kind", (armRole, mean, halfWidth) => {
    const role = armRole === undefined ? {} : { armRole };
    const { places } = unwrapped(layoutPlan({ kind, ...role, readings: measured }));
    expect(places.find(({ id }) => id === "wheelPerOuter")?.drawn).toEqual({
      id: "wheelPerOuter",
      mean,
      halfWidth,
      standardError: 0,
    });
  });

  it.each<[number, Layout]>([
    [0.02, arm],
    [0.02, { kind, armRole: "lower", readings: two }],
    [0.03, { kind: "axle", readings: readings({ track: 1500, stopSpacing: 900 }) }],
    [0.04, { kind: "strut", readings: {} }],
  ])("the linkage itself is in doubt by %d", (sd, layout) => {
    expect(unwrapped(layoutPlan(layout)).places.at(-1)?.drawn).toEqual({
      id: "linkage",
      mean: 1,
      halfWidth: 0,
      standardError: sd,
    });
  });

  it("κ typed from a pack has its ±, and must be a number above zero", () => {
    const { places } = unwrapped(layoutPlan({ ...arm, wheelPerOuterTol: 0.03 }));
    expect(places.at(-2)?.drawn.halfWidth).toBe(0.03);
    for (const bad of [
      { wheelPerOuter: 0 },
      { wheelPerOuter: Number.NaN },
      { wheelPerOuterTol: -1 },
    ])
      expect(refusal(layoutPlan({ ...arm, ...bad }))).toMatch(/^wheelPerOuterNotPositive/);
  });
});

describe("what gives no motion is told, with the reading to take again", () => {
  const two = {
    ...measured,
    ...readings({ otherArmAngle: 4, jointHeight: 300, tyreOffset: 110, otherArmLength: 300 }),
  };
  const lower = (change: object): Layout => ({
    kind: "arm",
    armRole: "lower",
    readings: { ...two, ...change },
  });

  it.each<[string, Layout]>([
    [
      "boltsApart (frontBoltToStop)",
      {
        kind: "arm",
        readings: readings({
          boltSpacing: 300,
          frontBoltToStop: 100,
          rearBoltToStop: 150,
          pivotToOuter: 400,
        }),
      },
    ],
    [
      "heightsApart (outerHeight)",
      {
        kind: "arm",
        readings: readings({
          pivotToStop: 150,
          pivotToOuter: 400,
          pivotHeight: 800,
          outerHeight: 390,
        }),
      },
    ],
    [
      "jointsTooClose (jointHeight)",
      lower(readings({ jointHeight: 60, jointInset: 200, otherArmAngle: 30 })),
    ],
    [
      "linkageStretched (otherArmAngle)",
      { ...lower(readings({ jointInset: 300, otherArmAngle: 45 })), armRole: "upper" },
    ],
    [
      "wheelDoesNotRise (tyreOffset)",
      lower(readings({ tyreOffset: 300, armAngle: -35, otherArmAngle: 35, jointHeight: 120 })),
    ],
    ["armTooSteep (otherArmAngle)", lower(readings({ otherArmAngle: 89.97 }))],
  ])("%s", (start, layout) => {
    const words = refusal(kinematicsOf(layout));
    expect(words.startsWith(`${start}: `)).toBe(true);
  });
});
