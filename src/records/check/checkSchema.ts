import * as z from "zod/mini";
import { checkFormat, checkVersion, recordBounds } from "./checkRecord.ts";

const {
  repeats,
  limits,
  curvePoints,
  events,
  branches,
  labelCharacters,
  typedCharacters,
  notesCharacters,
  photos,
  photoCharacters,
  magnitude,
} = recordBounds;

export const numberSchema = z.number().check(z.gte(-magnitude), z.lte(magnitude));
const label = z.string().check(z.maxLength(labelCharacters));
const filledLabel = label.check(z.regex(/\S/, "must not be empty"));

export const readingSchema = z.looseObject({
  values: z.array(numberSchema).check(z.minLength(1), z.maxLength(repeats)),
  tol: numberSchema.check(z.gte(0)),
  typed: z.optional(
    z.array(z.string().check(z.maxLength(typedCharacters))).check(z.maxLength(repeats)),
  ),
  tool: z.optional(label),
  reach: z.optional(label),
});

const geometryFields = {
  pivotToStop: readingSchema,
  pivotToOuter: readingSchema,
  pivotToMount: readingSchema,
  damperLength: readingSchema,
  track: readingSchema,
  stopSpacing: readingSchema,
  armAngle: readingSchema,
  stopLineAngle: readingSchema,
  mountLineAngle: readingSchema,
  stopLean: readingSchema,
};

const lean = { stopLean: z.optional(readingSchema) };
const wheelPerOuter = z.optional(numberSchema);

export const layoutSchema = z.discriminatedUnion("kind", [
  z.looseObject({
    kind: z.literal("arm"),
    wheelPerOuter,
    readings: z.looseObject({
      pivotToStop: readingSchema,
      pivotToOuter: readingSchema,
      armAngle: z.optional(readingSchema),
      stopLineAngle: z.optional(readingSchema),
      ...lean,
    }),
  }),
  z.looseObject({
    kind: z.literal("damper"),
    wheelPerOuter,
    readings: z.looseObject({
      pivotToMount: readingSchema,
      pivotToOuter: readingSchema,
      damperLength: readingSchema,
      armAngle: z.optional(readingSchema),
      mountLineAngle: z.optional(readingSchema),
      ...lean,
    }),
  }),
  z.looseObject({ kind: z.literal("strut"), wheelPerOuter, readings: z.looseObject(lean) }),
  z.looseObject({
    kind: z.literal("axle"),
    wheelPerOuter,
    readings: z.looseObject({ track: readingSchema, stopSpacing: readingSchema, ...lean }),
  }),
]);

export const limitSchema = z.looseObject({
  kind: z.enum(["tyre", "damper", "spring", "metal", "other"]),
  at: z.enum(["wheel", "stop"]),
  perWheel: z.optional(numberSchema),
  reading: readingSchema,
});

const corner = z.looseObject({
  side: z.enum(["left", "right"]),
  gap: readingSchema,
  rideHeight: z.optional(readingSchema),
  cornerMassKg: z.optional(readingSchema),
  geometry: z.optional(z.partial(z.looseObject(geometryFields))),
  limits: z.array(limitSchema).check(z.maxLength(limits)),
});

/** A stop as a record and a pack hold it. */
export const stopSchema = z.looseObject({
  name: filledLabel,
  duty: z.enum(["impact", "carry"]),
  freeHeight: readingSchema,
  usableCompressionMm: numberSchema,
  curve: z
    .array(z.tuple([numberSchema, numberSchema]))
    .check(z.minLength(1), z.maxLength(curvePoints)),
  damping: z.nullable(
    z
      .array(z.tuple([numberSchema, numberSchema, numberSchema]))
      .check(z.minLength(1), z.maxLength(curvePoints)),
  ),
  testedAtSpeed: z.boolean(),
  usableTolMm: z.optional(numberSchema.check(z.gte(0))),
  restLoss: z.optional(numberSchema.check(z.gte(0))),
  staticShare: z.optional(numberSchema.check(z.gte(0))),
  branches: z.optional(
    z
      .array(z.looseObject({ tauS: numberSchema, share: numberSchema }))
      .check(z.maxLength(branches)),
  ),
  partNumber: z.optional(label),
  revision: z.optional(label),
  batch: z.optional(label),
  estimated: z.optional(
    z.looseObject({ how: label, forceShare: numberSchema.check(z.gte(0), z.lte(1)) }),
  ),
});

const rideFields = {
  unsprungMassKg: numberSchema,
  wheelRateNPerMm: numberSchema,
  tyreRateNPerMm: numberSchema,
  damperBumpNsPerMm: numberSchema,
  damperReboundNsPerMm: numberSchema,
  payloadPerCornerKg: numberSchema,
};
const rideWords = {
  unsprungMassKg: label,
  wheelRateNPerMm: label,
  tyreRateNPerMm: label,
  damperBumpNsPerMm: label,
  damperReboundNsPerMm: label,
  payloadPerCornerKg: label,
};

/** Masses, rates and damping at the wheel, any of them unknown. */
export const rideSchema = z.looseObject({
  ...z.partial(z.looseObject(rideFields)).shape,
  tolerances: z.optional(z.partial(z.looseObject(rideFields))),
  estimated: z.optional(z.partial(z.looseObject(rideWords))),
});

export const rulesSchema = z.partial(
  z.looseObject({
    roadClass: z.enum(["A", "B", "C", "D", "E"]),
    speedKmPerH: numberSchema,
    allowedContactsPerKm: numberSchema,
    accelerationCapG: numberSchema,
    reserveMm: numberSchema,
    balanceMm: numberSchema,
    roadKurtosis: z.literal([3, 5]),
    events: z
      .array(
        z.discriminatedUnion("kind", [
          z.looseObject({
            kind: z.literal("obstacle"),
            heightM: numberSchema,
            lengthM: numberSchema,
            speedKmPerH: numberSchema,
          }),
          z.looseObject({
            kind: z.literal("hump"),
            heightM: numberSchema,
            lengthM: numberSchema,
            speedKmPerH: numberSchema,
          }),
          z.looseObject({ kind: z.literal("landing"), heightM: numberSchema }),
        ]),
      )
      .check(z.maxLength(events)),
  }),
);

/** An axle of a vehicle as a pack holds it, and a record its copy. */
export const platformSchema = z.looseObject({
  id: filledLabel,
  label: filledLabel,
  axle: z.enum(["front", "rear"]),
  layout: layoutSchema,
  rideHeight: z.optional(readingSchema),
  gap: z.optional(readingSchema),
  cornerMassKg: z.optional(readingSchema),
  ride: z.optional(rideSchema),
  limits: z.array(limitSchema).check(z.maxLength(limits)),
  usualStop: z.nullable(label),
  notes: z.optional(z.string().check(z.maxLength(notesCharacters))),
});

const photo = z.looseObject({
  type: z.enum(["image/jpeg", "image/png", "image/webp"]),
  data: z
    .string()
    .check(z.maxLength(photoCharacters), z.regex(/^[A-Za-z0-9+/]*={0,2}$/, "is not base64")),
  caption: z.optional(label),
  reading: z.optional(label),
});

/** ISO 8601 in UTC, and a day that exists. */
function isUtcTime(text: string): boolean {
  const match = /^(\d{4}-\d{2}-\d{2})T\d{2}:\d{2}(?::\d{2}(?:\.\d{1,9})?)?(?:Z|\+00:00)$/.exec(
    text,
  );
  if (match === null) return false;
  const time = Date.parse(text);
  return Number.isFinite(time) && new Date(time).toISOString().startsWith(match[1] ?? "?");
}

/** The shape of a check record (record.md); every unknown field is let through as it is. */
export const checkSchema = z.looseObject({
  format: z.literal(checkFormat),
  version: z.literal(checkVersion),
  id: z
    .string()
    .check(
      z.regex(/^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i, "is not a UUID"),
    ),
  createdAt: z
    .string()
    .check(z.refine(isUtcTime, "is not a date and time in UTC, as 2026-05-02T09:30:00Z")),
  author: z.looseObject({
    role: z.enum(["installer", "customer", "support"]),
    name: z.optional(label),
    contact: z.optional(label),
  }),
  vehicle: z.looseObject({
    label: filledLabel,
    platformId: z.nullable(label),
    liftMm: numberSchema,
    use: z.enum(["daily", "towing", "offroad"]),
  }),
  axle: z.enum(["front", "rear"]),
  layout: layoutSchema,
  corners: z.array(corner).check(z.minLength(1), z.maxLength(2)),
  stop: stopSchema,
  ride: z.optional(rideSchema),
  rules: z.optional(rulesSchema),
  reference: z.optional(
    z.looseObject({
      pack: label,
      platform: z.optional(platformSchema),
      rules: z.optional(rulesSchema),
    }),
  ),
  photos: z.optional(z.array(photo).check(z.maxLength(photos))),
  notes: z.optional(z.string().check(z.maxLength(notesCharacters))),
});
