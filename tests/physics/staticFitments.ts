import fc from "fast-check";
import type {
  Corner,
  Fitment,
  HardLimit,
  Layout,
  Reading,
  Ride,
} from "../../src/physics/fitment.ts";

export function exact(value: number): Reading {
  return { values: [value], tol: 0 };
}

export function within(value: number, tol: number): Reading {
  return { values: [value], tol };
}

export const ride: Ride = {
  unsprungMassKg: 45,
  wheelRateNPerMm: 26,
  tyreRateNPerMm: 220,
  damperBumpNsPerMm: 1.8,
  damperReboundNsPerMm: 3.6,
  payloadPerCornerKg: 20,
};

export function tyreLimit(reading: Reading): HardLimit {
  return { kind: "tyre", at: "wheel", reading };
}

/** An upright strut: wheel travel and stop closing are the same, so that budgets are sums. */
export function uprightStrut(change: {
  readonly gap?: Reading;
  readonly limits?: readonly HardLimit[];
  readonly corner?: Partial<Corner>;
  readonly fitment?: Partial<Fitment>;
}): Fitment {
  return {
    use: "daily",
    layout: { kind: "strut", readings: {} },
    corners: [
      {
        side: "left",
        gap: change.gap ?? within(45, 1),
        cornerMassKg: within(450, 5),
        limits: change.limits ?? [tyreLimit(within(95, 1))],
        ...change.corner,
      },
    ],
    stop: {
      name: "Test stop",
      duty: "impact",
      freeHeight: exact(60),
      usableCompressionMm: 30,
      usableTolMm: 0,
      curve: [
        [15, 1500],
        [30, 6000],
      ],
      damping: null,
      testedAtSpeed: false,
    },
    ride,
    ...change.fitment,
  };
}

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const readings = (least: number, greatest: number, tol: number) =>
  fc.record({
    values: fc.array(number(least, greatest), { minLength: 1, maxLength: 3 }),
    tol: number(0, tol),
  });
const angles = (most: number) => readings(-most, most, 5);

const layouts: fc.Arbitrary<Layout> = fc.oneof(
  fc.record({
    kind: fc.constant("arm" as const),
    readings: fc.record({
      pivotToStop: readings(20, 500, 30),
      pivotToOuter: readings(100, 700, 30),
      armAngle: angles(89),
      stopLineAngle: angles(89),
      stopLean: angles(60),
    }),
  }),
  fc.record({
    kind: fc.constant("damper" as const),
    readings: fc.record({
      pivotToMount: readings(20, 500, 30),
      pivotToOuter: readings(100, 700, 30),
      armAngle: angles(89),
      stopLean: angles(89),
      damperLength: readings(100, 700, 30),
    }),
  }),
  fc.record({
    kind: fc.constant("strut" as const),
    readings: fc.record({ stopLean: angles(89.9) }),
  }),
  fc.record({
    kind: fc.constant("axle" as const),
    readings: fc.record({ track: readings(5, 2500, 100), stopSpacing: readings(5, 2000, 100) }),
  }),
);

const limits = fc.array(
  fc.record({
    kind: fc.constantFrom("tyre", "damper", "spring", "metal", "other"),
    at: fc.constantFrom("wheel", "stop"),
    perWheel: number(0.1, 2),
    reading: readings(1, 600, 20),
  }),
  { maxLength: 3 },
);

const corners = fc.record({
  gap: readings(0, 300, 30),
  cornerMassKg: fc.option(readings(50, 900, 100), { nil: undefined }),
  limits,
});

const optional = (greatest: number) =>
  fc.option(fc.oneof({ weight: 5, arbitrary: number(0.01, greatest) }, fc.constant(0)), {
    nil: undefined,
    freq: 8,
  });

/** Fitments from ordinary to absurd: steep angles, wide tolerances, scattered repeats, missing data. */
export const anyFitment: fc.Arbitrary<Fitment> = fc
  .record({
    use: fc.constantFrom("daily", "towing", "offroad"),
    layout: layouts,
    left: corners,
    right: fc.option(corners, { nil: undefined }),
    duty: fc.constantFrom("impact", "carry"),
    freeHeight: readings(20, 200, 10),
    usableShare: number(0.05, 1.1),
    depths: fc.array(number(0.1, 20), { minLength: 1, maxLength: 6 }),
    forces: fc.array(number(0.1, 9000), { minLength: 6, maxLength: 6 }),
    ride: fc.option(
      fc.record({
        unsprungMassKg: optional(100),
        wheelRateNPerMm: optional(200),
        tyreRateNPerMm: optional(500),
        damperBumpNsPerMm: optional(9),
        damperReboundNsPerMm: optional(9),
        payloadPerCornerKg: optional(900),
        tolerances: fc.record({
          wheelRateNPerMm: optional(50),
          damperBumpNsPerMm: optional(9),
        }),
      }),
      { nil: undefined },
    ),
  })
  .map(({ left, right, duty, freeHeight, usableShare, depths, forces, ...rest }) => {
    let depth = 0;
    let force = 0;
    const curve = depths.map((step, index): readonly [number, number] => {
      depth += step;
      force += forces[index] ?? 1;
      return [depth, force];
    });
    const [height = 1] = freeHeight.values;
    return {
      ...rest,
      corners: [
        { ...left, side: "left" },
        ...(right === undefined ? [] : [{ ...right, side: "right" }]),
      ],
      stop: {
        name: "Test stop",
        duty,
        freeHeight,
        usableCompressionMm: usableShare * height,
        curve,
        damping: null,
        testedAtSpeed: false,
      },
    } as Fitment;
  });
