import fc from "fast-check";
import type { ArmRole, Layout, Reading } from "../../../src/physics/fitment.ts";

export const reading = (value: number): Reading => ({ values: [value], tol: 1 });
export const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Readings of single values by name; an absent one stays absent. */
export function readingsOf(values: object): Record<string, Reading> {
  return Object.fromEntries(
    Object.entries(values).map(([name, value]) => [name, reading(Number(value))]),
  );
}

export function layoutOf(kind: Layout["kind"], values: object, wheelPerOuter = 1): Layout {
  return { kind, wheelPerOuter, readings: readingsOf(values) };
}

const armReadings = fc.record({
  pivotToStop: number(60, 500),
  pivotToOuter: number(150, 700),
  armAngle: number(-30, 30),
  stopLineAngle: number(-35, 35),
  stopLean: number(-25, 25),
});
export const arms = fc.record({ readings: armReadings, wheelPerOuter: number(0.7, 1.5) });
const damperReadings = fc.record({
  pivotToMount: number(80, 500),
  pivotToOuter: number(150, 700),
  armAngle: number(-30, 30),
  mountLineAngle: number(-35, 35),
  stopLean: number(-30, 30),
  damperLength: number(180, 700),
});
export const dampers = fc.record({ readings: damperReadings, wheelPerOuter: number(0.7, 1.5) });

/** The other arm of two and where the joints stand, as wide as readings are not asked for again. */
export const otherArm = fc.record({
  otherArmAngle: number(-30, 30),
  otherArmLength: number(150, 500),
  jointHeight: number(150, 500),
  jointInset: number(-50, 150),
  tyreOffset: number(-50, 250),
  wheelCentreAbove: number(-50, 250),
});

export const strutsWithArm = fc.record({
  stopLean: number(0, 25),
  lowerArmLength: number(250, 500),
  lowerArmAngle: number(-20, 25),
  jointToTop: number(500, 900),
  jointToTopLean: number(0, 25),
  tyreOffset: number(-20, 200),
  wheelCentreAbove: number(-50, 200),
});

const stopOn = fc.constantFrom({}, { stopOn: "frame" as const }, { stopOn: "arm" as const });
const twoArmRoles = fc.constantFrom<ArmRole>("lower", "upper");

/** Two arms: the four-bar linkage, and without the other arm's length its instant centre. */
const twoArms: fc.Arbitrary<Layout> = fc.oneof(
  fc
    .record({ armRole: twoArmRoles, stopOn, own: armReadings, other: otherArm })
    .map(({ armRole, stopOn, own, other }) => ({
      kind: "arm" as const,
      armRole,
      ...stopOn,
      readings: readingsOf({ ...own, ...other }),
    })),
  fc
    .record({ armRole: twoArmRoles, own: damperReadings, other: otherArm })
    .map(({ armRole, own, other }) => ({
      kind: "damper" as const,
      armRole,
      readings: readingsOf({ ...own, ...other }),
    })),
  fc.record({ stopOn, own: armReadings, other: otherArm }).map(({ stopOn, own, other }) => {
    const { otherArmLength: _, ...without } = other;
    return {
      kind: "arm" as const,
      armRole: "lower" as const,
      ...stopOn,
      readings: readingsOf({ ...own, ...without }),
    };
  }),
);

/** Every layout and linkage there is. */
export const layouts: fc.Arbitrary<Layout> = fc.oneof(
  fc.record({ arm: arms, stopOn }).map(({ arm: { readings, wheelPerOuter }, stopOn }) => ({
    kind: "arm" as const,
    ...stopOn,
    wheelPerOuter,
    readings: readingsOf(readings),
  })),
  dampers.map(({ readings, wheelPerOuter }) => layoutOf("damper", readings, wheelPerOuter)),
  twoArms,
  strutsWithArm.map((readings) => layoutOf("strut", readings)),
  number(-60, 60).map((stopLean) => layoutOf("strut", { stopLean })),
  fc
    .record({
      track: number(1000, 2300),
      stopSpacing: number(300, 1500),
      stopLean: number(-40, 40),
    })
    .map((readings) => layoutOf("axle", readings)),
);

/** A corner whose gap a stop on the arm stands off its pad by. */
export const sides = number(0, 60).map((gap) => ({ gap: reading(gap) }));
