import * as z from "zod/mini";
import { checkFormat, checkVersion, recordBounds } from "./checkRecord.ts";

const {
  repeats,
  limits,
  curvePoints,
  events,
  labelCharacters,
  typedCharacters,
  notesCharacters,
  photos,
  photoCharacters,
  magnitude,
} = recordBounds;

const number = z.number().check(z.gte(-magnitude), z.lte(magnitude));
const label = z.string().check(z.maxLength(labelCharacters));
const filledLabel = label.check(z.regex(/\S/, "must not be empty"));

const reading = z.looseObject({
  values: z.array(number).check(z.minLength(1), z.maxLength(repeats)),
  tol: number.check(z.gte(0)),
  typed: z.optional(
    z.array(z.string().check(z.maxLength(typedCharacters))).check(z.maxLength(repeats)),
  ),
});

const geometryFields = {
  pivotToStop: reading,
  pivotToOuter: reading,
  pivotToMount: reading,
  damperLength: reading,
  track: reading,
  stopSpacing: reading,
  armAngle: reading,
  stopLineAngle: reading,
  mountLineAngle: reading,
  stopLean: reading,
};

const lean = { stopLean: z.optional(reading) };
const wheelPerOuter = z.optional(number);

const layout = z.discriminatedUnion("kind", [
  z.looseObject({
    kind: z.literal("arm"),
    wheelPerOuter,
    readings: z.looseObject({
      pivotToStop: reading,
      pivotToOuter: reading,
      armAngle: z.optional(reading),
      stopLineAngle: z.optional(reading),
      ...lean,
    }),
  }),
  z.looseObject({
    kind: z.literal("damper"),
    wheelPerOuter,
    readings: z.looseObject({
      pivotToMount: reading,
      pivotToOuter: reading,
      damperLength: reading,
      armAngle: z.optional(reading),
      mountLineAngle: z.optional(reading),
      ...lean,
    }),
  }),
  z.looseObject({ kind: z.literal("strut"), wheelPerOuter, readings: z.looseObject(lean) }),
  z.looseObject({
    kind: z.literal("axle"),
    wheelPerOuter,
    readings: z.looseObject({ track: reading, stopSpacing: reading, ...lean }),
  }),
]);

const limit = z.looseObject({
  kind: z.enum(["tyre", "damper", "spring", "metal", "other"]),
  at: z.enum(["wheel", "stop"]),
  perWheel: z.optional(number),
  reading,
});

const corner = z.looseObject({
  side: z.enum(["left", "right"]),
  gap: reading,
  rideHeight: z.optional(reading),
  cornerMassKg: z.optional(reading),
  geometry: z.optional(z.partial(z.looseObject(geometryFields))),
  limits: z.array(limit).check(z.maxLength(limits)),
});

/** A stop as a record and a pack hold it. */
export const stopSchema = z.looseObject({
  name: filledLabel,
  duty: z.enum(["impact", "carry"]),
  freeHeight: reading,
  usableCompressionMm: number,
  curve: z.array(z.tuple([number, number])).check(z.minLength(1), z.maxLength(curvePoints)),
  damping: z.nullable(
    z.array(z.tuple([number, number, number])).check(z.minLength(1), z.maxLength(curvePoints)),
  ),
  testedAtSpeed: z.boolean(),
});

const rideFields = {
  unsprungMassKg: number,
  wheelRateNPerMm: number,
  tyreRateNPerMm: number,
  damperBumpNsPerMm: number,
  damperReboundNsPerMm: number,
  payloadPerCornerKg: number,
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

const rules = z.partial(
  z.looseObject({
    roadClass: z.enum(["A", "B", "C", "D", "E"]),
    speedKmPerH: number,
    allowedContactsPerKm: number,
    accelerationCapG: number,
    reserveMm: number,
    balanceMm: number,
    events: z
      .array(
        z.discriminatedUnion("kind", [
          z.looseObject({
            kind: z.literal("obstacle"),
            heightM: number,
            lengthM: number,
            speedKmPerH: number,
          }),
          z.looseObject({ kind: z.literal("landing"), heightM: number }),
        ]),
      )
      .check(z.maxLength(events)),
  }),
);

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
    liftMm: number,
    use: z.enum(["daily", "towing", "offroad"]),
  }),
  axle: z.enum(["front", "rear"]),
  layout,
  corners: z.array(corner).check(z.minLength(1), z.maxLength(2)),
  stop: stopSchema,
  ride: z.optional(rideSchema),
  rules: z.optional(rules),
  photos: z.optional(z.array(photo).check(z.maxLength(photos))),
  notes: z.optional(z.string().check(z.maxLength(notesCharacters))),
});
