import fc from "fast-check";
import { expect, it } from "vitest";
import type { Layout } from "../../../src/physics/fitment.ts";
import { kinematicsOf } from "../../../src/physics/kinematics/kinematics.ts";
import { layoutPlan } from "../../../src/physics/kinematics/layoutPlan.ts";
import { geometryNames } from "../../../src/physics/layouts/geometryRegistry.ts";
import { layoutKinds } from "../../../src/physics/layouts/layoutKinds.ts";

/*
 * Whatever is typed: every reading any number, present or not, in every layout and role. There is a motion
 * whose every figure is finite, or a named outcome.
 */
const anything = fc.oneof(
  fc.double({ min: -500, max: 1000, noNaN: true }),
  fc.double({ min: -90, max: 90, noNaN: true }),
  fc.constantFrom(0, 1e-300, -0, 1e5, Number.NaN, Number.POSITIVE_INFINITY, 89.9, 45),
);
const anyReading = fc.record({
  values: fc.array(anything, { minLength: 1, maxLength: 2 }),
  tol: fc.constantFrom(0, 1, 50),
});
const readings = fc.record(Object.fromEntries(geometryNames.map((name) => [name, anyReading])), {
  requiredKeys: [],
});
const layouts = fc.record(
  {
    kind: fc.constantFrom(...layoutKinds),
    armRole: fc.constantFrom("lower", "upper", "underStrut", "carriesWheel"),
    stopOn: fc.constantFrom("frame", "arm"),
    wheelPerOuter: anything,
    wheelPerOuterTol: anything,
    readings,
  },
  { requiredKeys: ["kind", "readings"] },
) as fc.Arbitrary<Layout>;
const sides = fc.record({ gap: anyReading, geometry: readings }, { requiredKeys: [] });

/** Readings that could be, with one of them anything. */
const likely = fc
  .tuple(
    fc.constantFrom(...layoutKinds),
    fc.constantFrom("lower", "upper", "carriesWheel"),
    fc.constantFrom({}, { stopOn: "frame" }, { stopOn: "arm" }),
    fc.record({
      pivotToStop: fc.double({ min: 20, max: 500, noNaN: true }),
      pivotToMount: fc.double({ min: 20, max: 500, noNaN: true }),
      pivotToOuter: fc.double({ min: 50, max: 700, noNaN: true }),
      damperLength: fc.double({ min: 50, max: 900, noNaN: true }),
      armAngle: fc.double({ min: -80, max: 80, noNaN: true }),
      stopLean: fc.double({ min: -80, max: 80, noNaN: true }),
      otherArmAngle: fc.double({ min: -80, max: 80, noNaN: true }),
      otherArmLength: fc.double({ min: 20, max: 700, noNaN: true }),
      jointHeight: fc.double({ min: 20, max: 700, noNaN: true }),
      jointInset: fc.double({ min: -300, max: 300, noNaN: true }),
      tyreOffset: fc.double({ min: -300, max: 400, noNaN: true }),
      wheelCentreAbove: fc.double({ min: -300, max: 400, noNaN: true }),
      lowerArmLength: fc.double({ min: 20, max: 700, noNaN: true }),
      lowerArmAngle: fc.double({ min: -80, max: 80, noNaN: true }),
      jointToTop: fc.double({ min: 20, max: 1000, noNaN: true }),
      jointToTopLean: fc.double({ min: -80, max: 80, noNaN: true }),
      track: fc.double({ min: 100, max: 3000, noNaN: true }),
      stopSpacing: fc.double({ min: 100, max: 3000, noNaN: true }),
    }),
    fc.constantFrom(...geometryNames),
    anything,
  )
  .map(
    ([kind, armRole, stopOn, values, name, odd]) =>
      ({
        kind,
        armRole,
        ...stopOn,
        readings: Object.fromEntries(
          Object.entries({ ...values, [name]: odd }).map(([id, value]) => [
            id,
            { values: [value], tol: 1 },
          ]),
        ),
      }) as Layout,
  );

it("gives finite figures or a named outcome, never NaN, and never throws", () => {
  const out = new Float64Array(3);
  fc.assert(
    fc.property(fc.oneof(layouts, likely), sides, anything, anything, (layout, side, z, s) => {
      const kinematics = kinematicsOf(layout, side);
      if (!kinematics.ok) {
        expect(kinematics.fault.sentence.length).toBeGreaterThan(0);
        return;
      }
      const { range, closing, wheelTravel, ratio, armPointTravel, evaluate } = kinematics.value;
      expect(range.every(Number.isFinite)).toBe(true);
      expect(range[0]).toBeLessThanOrEqual(0);
      expect(range[1]).toBeGreaterThanOrEqual(0);
      for (const result of [closing(z), wheelTravel(s), ratio(z), armPointTravel(s, z)])
        if (result.ok) expect(Number.isFinite(result.value)).toBe(true);
      for (const share of [0, 0.3, 1]) {
        evaluate(range[0] + share * (range[1] - range[0]), out);
        expect([...out].every(Number.isFinite)).toBe(true);
        expect(out[1]).toBeGreaterThan(0);
      }
    }),
    { numRuns: 600 },
  );
});

it("draws of any values are a motion or none, and what the motion answers is a number", () => {
  const out = new Float64Array(3);
  fc.assert(
    fc.property(likely, fc.array(anything, { minLength: 20, maxLength: 20 }), (layout, values) => {
      const plan = layoutPlan(layout);
      if (!plan.ok) return;
      const { motion, places } = plan.value;
      if (motion.set(Float64Array.from(places, (_, index) => values[index] ?? 0)) !== null) return;
      for (const value of values) {
        if (motion.wheelTravelInto(out, 0, value)) expect(Number.isFinite(out[0])).toBe(true);
        if (motion.closingInto(out, 1, value)) expect(Number.isFinite(out[1])).toBe(true);
        if (motion.armPointTravelInto(out, 2, value, 20))
          expect(Number.isFinite(out[2])).toBe(true);
      }
    }),
    { numRuns: 400 },
  );
});
