import fc from "fast-check";
import type { LayoutKind } from "../../src/physics/fitment.ts";
import {
  geometryRegistry,
  isGeometryReadingName,
  layoutReadingsInOrder,
  neededReadings,
} from "../../src/physics/layouts/geometryRegistry.ts";
import { layoutKinds } from "../../src/physics/layouts/layoutKinds.ts";
import { contactParts } from "../../src/physics/readings/fullTravelReadings.ts";
import { limitKinds } from "../../src/physics/readings/limitReadings.ts";
import { rideQuantities } from "../../src/physics/readings/rideReadings.ts";
import type {
  Advice,
  CheckCorner,
  CheckLayout,
  CheckLimit,
  CheckRecord,
  CheckStop,
  GeometryReadings,
  Photo,
  TypedReading,
} from "../../src/records/check/checkRecord.ts";
import { plainJpeg } from "../support/jpegs.ts";
import { plainPng } from "../support/pictures.ts";

/** Generated check records: every layout, one or two sides, all that is optional there or not. */

/** An object whose named fields are each there or not; never present with undefined. */
function optionally<Shape extends object>(
  fields: {
    [Name in keyof Shape]: fc.Arbitrary<Shape[Name]>;
  },
): fc.Arbitrary<Partial<Shape>> {
  return fc.record(fields, { requiredKeys: [] }) as fc.Arbitrary<Partial<Shape>>;
}

const plain = { noDefaultInfinity: true, noNaN: true } as const;

/** mm to a tenth most of the time, as read off a tape; any double sometimes. */
function between(least: number, greatest: number): fc.Arbitrary<number> {
  return fc.oneof(
    {
      weight: 3,
      arbitrary: fc.integer({ min: least * 10, max: greatest * 10 }).map((n) => n / 10),
    },
    { weight: 1, arbitrary: fc.double({ min: least, max: greatest, ...plain }).map((n) => n + 0) },
  );
}

const source = fc.constantFrom("measured", "pack", "estimated");

function untypedReading(least: number, greatest: number): fc.Arbitrary<TypedReading> {
  return fc.record(
    {
      values: fc.array(between(least, greatest), { minLength: 1, maxLength: 4 }),
      tol: between(0, 6),
      source,
      by: fc.constantFrom("Ines", "Bay 2"),
    },
    { requiredKeys: ["values", "tol"] },
  ) as fc.Arbitrary<TypedReading>;
}

/** A length typed in sixteenths of an inch, its text kept beside the value. */
function readingInInches(least: number, greatest: number): fc.Arbitrary<TypedReading> {
  const sixteenths = fc.integer({
    min: Math.ceil((least / 25.4) * 16),
    max: Math.floor((greatest / 25.4) * 16),
  });
  return fc
    .record({ counts: fc.array(sixteenths, { minLength: 1, maxLength: 4 }), tol: between(0, 6) })
    .map(({ counts, tol }) => ({
      values: counts.map((count) => (count * 25.4) / 16),
      tol,
      typed: counts.map((count) => {
        const whole = Math.floor(count / 16);
        return count % 16 === 0 ? `${whole} in` : `${whole} ${count % 16}/16 in`;
      }),
    }));
}

function lengthReading(least: number, greatest: number): fc.Arbitrary<TypedReading> {
  return fc.oneof(untypedReading(least, greatest), readingInInches(least, greatest));
}

const angleReading = untypedReading(-30, 45);

const geometry: { readonly [name: string]: fc.Arbitrary<TypedReading> } = {
  pivotToStop: lengthReading(80, 300),
  pivotToOuter: lengthReading(310, 600),
  pivotToMount: lengthReading(120, 300),
  damperLength: lengthReading(250, 700),
  track: lengthReading(1300, 2000),
  stopSpacing: lengthReading(600, 1250),
  armAngle: angleReading,
  stopLineAngle: angleReading,
  mountLineAngle: angleReading,
  stopLean: angleReading,
};

function isLength(name: string): boolean {
  return isGeometryReadingName(name) && geometryRegistry[name].sort === "length";
}

function readingsOf(names: readonly string[]): { [name: string]: fc.Arbitrary<TypedReading> } {
  return Object.fromEntries(
    names.map((name) => [
      name,
      geometry[name] ?? (isLength(name) ? lengthReading(80, 600) : angleReading),
    ]),
  );
}

function layoutOf(kind: LayoutKind): fc.Arbitrary<CheckLayout> {
  const readings = fc.record(readingsOf(layoutReadingsInOrder[kind]), {
    requiredKeys: [...neededReadings[kind]],
  });
  const onArm = kind === "arm" || kind === "damper";
  return fc
    .record(
      {
        kind: fc.constant(kind),
        ...(onArm && { armRole: fc.constantFrom("lower", "upper", "underStrut", "carriesWheel") }),
        ...(kind === "arm" && { stopOn: fc.constantFrom("frame", "arm") }),
        wheelPerOuter: between(0.9, 1.3),
        wheelPerOuterTol: between(0, 1).map((share) => share / 10),
        readings,
      },
      { requiredKeys: ["kind", "readings"] },
    )
    .map(withoutLoneTolerance) as fc.Arbitrary<CheckLayout>;
}

/** A ± of κ stands beside κ. */
function withoutLoneTolerance<Shape extends { wheelPerOuter?: number }>(layout: Shape): Shape {
  const { wheelPerOuterTol: _, ...rest } = layout as Shape & { wheelPerOuterTol?: number };
  return layout.wheelPerOuter === undefined ? (rest as Shape) : layout;
}

const limitKind = fc.constantFrom(...limitKinds);

function limit(kind: LayoutKind): fc.Arbitrary<CheckLimit> {
  const elsewhere = fc.record(
    {
      kind: limitKind,
      at: fc.constantFrom("wheel", "stop"),
      perWheel: between(0.3, 1.4),
      reading: lengthReading(40, 250),
    },
    { requiredKeys: ["kind", "at", "reading"] },
  ) as fc.Arbitrary<CheckLimit>;
  const onArm: fc.Arbitrary<CheckLimit> = fc.record({
    kind: limitKind,
    at: fc.constant("arm" as const),
    distance: lengthReading(100, 300),
    reading: lengthReading(40, 150),
  });
  return kind === "arm" || kind === "damper"
    ? fc.oneof({ weight: 3, arbitrary: elsewhere }, { weight: 1, arbitrary: onArm })
    : elsewhere;
}

/** How the stop stands at ride. */
const standing: fc.Arbitrary<Pick<CheckCorner, "gap" | "pressedHeight" | "seatToPad">> = fc.oneof(
  { weight: 4, arbitrary: fc.record({ gap: lengthReading(5, 80) }) },
  { weight: 1, arbitrary: fc.record({ gap: fc.constant({ values: [0], tol: 1 }) }) },
  { weight: 1, arbitrary: fc.record({ pressedHeight: lengthReading(20, 60) }) },
  { weight: 1, arbitrary: fc.record({ seatToPad: lengthReading(30, 160) }) },
);

function corner(side: "left" | "right", kind: LayoutKind): fc.Arbitrary<CheckCorner> {
  const own = fc
    .record(readingsOf(layoutReadingsInOrder[kind]), { requiredKeys: [] })
    .filter((readings) => Object.keys(readings).length > 0) as fc.Arbitrary<GeometryReadings>;
  const rest = fc.record(
    {
      side: fc.constant(side),
      rideHeight: lengthReading(300, 700),
      settleMm: between(0, 8),
      cornerMassKg: untypedReading(250, 900),
      geometry: own,
      limits: fc.array(limit(kind), { maxLength: 4 }),
    },
    { requiredKeys: ["side", "limits"] },
  );
  return fc
    .tuple(rest, standing)
    .map(([fields, stands]) => ({ ...fields, ...stands })) as fc.Arbitrary<CheckCorner>;
}

function cornersOf(kind: LayoutKind): fc.Arbitrary<readonly CheckCorner[]> {
  return fc.oneof(
    corner("left", kind).map((one) => [one]),
    corner("right", kind).map((one) => [one]),
    fc.tuple(corner("left", kind), corner("right", kind)),
    fc.tuple(corner("right", kind), corner("left", kind)),
  );
}

/** A stop of plausible build: a rising curve to 50–60 % of its height. */
const anyStop: fc.Arbitrary<CheckStop> = fc
  .record({
    name: fc.string({ minLength: 1, maxLength: 30 }).filter((text) => text.trim() !== ""),
    duty: fc.constantFrom("impact" as const, "carry" as const),
    height: fc.integer({ min: 30, max: 180 }),
    share: fc.double({ min: 0.5, max: 0.6, ...plain }),
    rate: fc.double({ min: 12, max: 900, ...plain }),
    steepness: fc.double({ min: 1.5, max: 5, ...plain }),
    points: fc.integer({ min: 3, max: 12 }),
    damped: fc.boolean(),
    origin: fc.boolean(),
    labels: optionally<Pick<CheckStop, "partNumber" | "revision" | "batch" | "usableTolMm">>({
      partNumber: fc.constantFrom("MB-60", "T 48"),
      revision: fc.constantFrom("A", "b2"),
      batch: fc.constantFrom("2026-14"),
      usableTolMm: between(0, 3),
    }) as fc.Arbitrary<Partial<CheckStop>>,
    loss: optionally<Pick<CheckStop, "restLoss" | "staticShare" | "branches" | "testDoubt">>({
      restLoss: between(0, 3).map((n) => n / 10),
      staticShare: between(5, 10).map((n) => n / 10),
      branches: fc.array(
        fc.record({
          tauS: fc.constantFrom(0.001, 0.01, 0.1, 1),
          share: between(0, 4).map((n) => n / 10),
        }),
        { maxLength: 4 },
      ),
      testDoubt: fc.record({
        fastestMmPerS: between(0, 2000),
        laws: fc.array(
          fc.record({
            damping: fc.constantFrom(null, [[10, 0.5, 0.6] as const]),
            staticShare: between(5, 10).map((n) => n / 10),
          }),
          { maxLength: 6 },
        ),
      }),
    }) as fc.Arbitrary<Partial<CheckStop>>,
  })
  .map((drawn) => {
    const { name, duty, height, share, rate, steepness, points, damped, origin } = drawn;
    const usable = height * share;
    const curve: [number, number][] = origin ? [[0, 0]] : [];
    for (let index = 1; index <= points; index += 1) {
      const depth = (usable * index) / points;
      const part = index / points;
      curve.push([depth, rate * depth * (0.7 + 0.6 * part ** steepness)]);
    }
    return {
      name,
      duty,
      freeHeight: { values: [height], tol: 1 },
      usableCompressionMm: usable,
      curve,
      damping: damped ? [[0, 0.05, 0.1] as const, [usable, 0.6, 1.2] as const] : null,
      testedAtSpeed: damped,
      ...drawn.labels,
      ...(damped && drawn.loss),
    };
  });

const rideNumbers = optionally({
  unsprungMassKg: between(30, 120),
  wheelRateNPerMm: between(15, 90),
  tyreRateNPerMm: between(150, 400),
  damperBumpNsPerMm: between(1, 6),
  damperReboundNsPerMm: between(1, 9),
  payloadPerCornerKg: between(0, 300),
});

const ride = fc
  .tuple(
    rideNumbers,
    optionally({
      tolerances: optionally(
        Object.fromEntries(rideQuantities.map((name) => [name, between(0, 20)])),
      ),
      estimated: optionally(
        Object.fromEntries(rideQuantities.map((name) => [name, fc.string({ maxLength: 40 })])),
      ),
    }),
  )
  .map(([numbers, rest]) => ({ ...numbers, ...rest })) as fc.Arbitrary<
  NonNullable<CheckRecord["ride"]>
>;

const rules = optionally({
  roadClass: fc.constantFrom("A", "B", "C", "D", "E"),
  speedKmPerH: between(10, 120),
  allowedContactsPerKm: between(1, 60),
  accelerationCapG: between(1, 6),
  reserveMm: between(0, 10),
  balanceMm: between(5, 20),
  roadKurtosis: fc.constantFrom(3, 5),
  events: fc.array(
    fc.oneof(
      fc.record({ kind: fc.constant("landing"), heightM: between(1, 4).map((n) => n / 10) }),
      fc.record({
        kind: fc.constantFrom("obstacle", "hump"),
        heightM: between(1, 3).map((n) => n / 10),
        lengthM: between(1, 4),
        speedKmPerH: between(10, 60),
      }),
    ),
    { maxLength: 3 },
  ),
}) as fc.Arbitrary<NonNullable<CheckRecord["rules"]>>;

const picture = fc.oneof(
  fc
    .tuple(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 1, max: 40 }))
    .map(([width, height]) => ({
      type: "image/png" as const,
      data: plainPng(width, height).toString("base64"),
    })),
  fc.constant({
    type: "image/jpeg" as const,
    data: Buffer.from(plainJpeg()).toString("base64"),
  }),
);

const note = fc.string({ minLength: 1, maxLength: 20 });
const contact = fc.oneof(
  fc.record({ reading: lengthReading(20, 200) }),
  fc.record({ note }),
  fc.record({ reading: lengthReading(20, 200), note }),
);

const fullTravelSide = (side: "left" | "right") =>
  fc.record(
    {
      side: fc.constant(side),
      atRide: lengthReading(300, 700),
      contacts: optionally({
        ...Object.fromEntries(
          contactParts.filter((part) => part !== "block").map((part) => [part, contact]),
        ),
        block: fc.record(
          { reading: lengthReading(20, 200), blockHeight: lengthReading(10, 90) },
          { requiredKeys: ["blockHeight"] },
        ),
      }),
    },
    { requiredKeys: ["side", "contacts"] },
  );

const [leftTravel, rightTravel] = [fullTravelSide("left"), fullTravelSide("right")];

const fullTravel = fc.record({
  acknowledged: fc.option(fc.constant("2026-05-02T10:00:00Z")),
  measure: fc.constantFrom("wheelTravel", "hubToArch"),
  movement: fc.constantFrom("both", "one"),
  corners: fc.oneof(
    fc.constant([]),
    fc.tuple(leftTravel),
    fc.tuple(rightTravel),
    fc.tuple(leftTravel, rightTravel),
  ),
});

const job = fc.record(
  {
    id: fc.uuid(),
    label: fc.string({ maxLength: 20 }),
    number: fc.constantFrom("1042", "26-118"),
    customer: fc.constantFrom("Invented Freight"),
    moment: fc.constantFrom("before", "after"),
  },
  { requiredKeys: ["id", "label"] },
);

const photo: fc.Arbitrary<Photo> = fc
  .tuple(
    picture,
    fc.record(
      {
        caption: fc.string({ maxLength: 30 }),
        reading: fc.constantFrom("left.gap", "pivotToStop"),
      },
      { requiredKeys: [] },
    ),
  )
  .map(([file, words]) => ({ ...file, ...words })) as fc.Arbitrary<Photo>;

/** Fields that this version does not know: kept, whatever they hold. */
const unknownFields = fc.dictionary(
  fc.string({ minLength: 1, maxLength: 10 }).map((key) => `x-${key}`),
  // A field of this name is refused wherever it stands; readCheck.test.ts tries it.
  fc.jsonValue({ maxDepth: 2 }).filter((value) => !JSON.stringify(value).includes('"__proto__":')),
  { maxKeys: 2 },
);

const instant = fc
  .integer({ min: Date.UTC(2024, 0, 1), max: Date.UTC(2030, 0, 1) })
  .map((time) => new Date(time).toISOString());

const advice: fc.Arbitrary<Advice> = fc.record(
  {
    at: instant,
    sides: fc.constantFrom(["left", "right"] as const, ["right"] as const),
    pack: fc.string({ maxLength: 20 }),
    edition: fc.constantFrom("2026-11"),
    part: fc.record(
      {
        name: fc.constantFrom("Tall block", "Kurz 40"),
        partNumber: fc.constantFrom("MB-60", "T 48"),
        revision: fc.constantFrom("A"),
        spacerMm: between(0, 60),
        heightMm: between(15, 120),
        stopRateClass: fc.constantFrom(63, 100, 160),
        change: fc.constantFrom("nothing", "spacer", "stop", "both"),
        verdict: fc.constantFrom("ok", "care", "no", "unsure"),
      },
      {
        requiredKeys: ["name", "spacerMm", "heightMm", "stopRateClass", "change", "verdict"],
      },
    ),
  },
  { requiredKeys: ["at", "sides"] },
);

/** Each layout's own is made once: that takes longer than to draw a record of it. */
export const anyRecord: fc.Arbitrary<CheckRecord> = fc
  .oneof(
    ...layoutKinds.map((kind) =>
      fc.tuple(
        fc.record(
          {
            format: fc.constant("stopfit-check" as const),
            version: fc.constant(2 as const),
            id: fc.uuid(),
            createdAt: instant,
            author: fc.record(
              {
                role: fc.constantFrom("installer", "customer", "support"),
                name: fc.string({ maxLength: 30 }),
                contact: fc.string({ maxLength: 30 }),
              },
              { requiredKeys: ["role"] },
            ),
            vehicle: fc.record({
              label: fc.string({ minLength: 1, maxLength: 30 }).map((text) => `Tern ${text}`),
              platformId: fc.oneof(fc.constant(null), fc.string({ maxLength: 20 })),
              liftMm: between(-40, 150),
              use: fc.constantFrom("daily", "towing", "offroad"),
            }),
            axle: fc.constantFrom("front", "rear"),
            layout: layoutOf(kind),
            corners: cornersOf(kind),
            stop: anyStop,
            ride,
            rules,
            fullTravel,
            job,
            advised: fc.array(advice, { maxLength: 12 }),
            fitted: fc.record(
              {
                partNumber: fc.constantFrom("MB-60", "T 48"),
                revision: fc.constantFrom("A"),
                spacerMm: between(0, 30),
                at: instant,
                by: fc.constantFrom("Ines"),
                odometer: fc.integer({ min: 0, max: 400_000 }),
                photos: fc.array(photo, { maxLength: 1 }),
              },
              { requiredKeys: ["partNumber", "spacerMm", "at", "by"] },
            ),
            photos: fc.array(photo, { maxLength: 2 }),
            notes: fc.string({ maxLength: 200 }),
          },
          {
            requiredKeys: [
              "format",
              "version",
              "id",
              "createdAt",
              "author",
              "vehicle",
              "axle",
              "layout",
              "corners",
              "stop",
            ],
          },
        ),
        unknownFields,
      ),
    ),
  )
  .map(([record, extra]) =>
    // As it comes out of JSON: no -0, no prototype but Object's.
    JSON.parse(JSON.stringify({ ...record, ...extra })),
  );
