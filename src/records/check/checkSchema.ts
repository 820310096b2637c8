import * as z from "zod/mini";
import { changes, states, uses } from "../../physics/choices.ts";
import * as messages from "../../words/compiled/records/check.ts";
import { checkFormat, checkVersion, pictureTypes, recordBounds } from "./recordFormat.ts";
import { cornerSchema } from "./schema/cornerSchema.ts";
import {
  filledLabel,
  instantSchema,
  label,
  may,
  notes,
  numberSchema,
  positiveOrZero,
  readingSchema,
} from "./schema/fields.ts";
import { fullTravelSchema } from "./schema/fullTravelSchema.ts";
import { layoutSchema } from "./schema/layoutSchema.ts";
import { referenceSchema } from "./schema/platformSchema.ts";
import { rideSchema, rulesSchema } from "./schema/rideSchema.ts";
import { stopSchema } from "./schema/stopSchema.ts";

/** A picture, as a file would hold it: its media type and its bytes in base64. */
export const photoSchema = z.object({
  type: z.enum(pictureTypes),
  data: z
    .string()
    .check(
      z.maxLength(recordBounds.photoCharacters),
      z.regex(/^[A-Za-z0-9+/]*={0,2}$/, messages.isNotBase64.code),
    ),
  caption: may(label),
  /** The reading it shows, where it shows one. */
  reading: may(label),
  /** When the app took it in, by the phone's clock, and who had it. */
  takenAt: may(instantSchema),
  by: may(label),
  /** Of its bytes, in hexadecimal: another picture in its place has another one. */
  sha256: may(z.string().check(z.regex(/^[0-9a-f]{64}$/, messages.isNotSha256.code))),
});

const photos = z.array(photoSchema).check(z.maxLength(recordBounds.photos));

export const authorSchema = z.object({
  role: z.enum(["installer", "customer", "support"]),
  name: may(label),
  contact: may(label),
});

export const vehicleSchema = z.object({
  label: filledLabel,
  platformId: z.nullable(label),
  liftMm: numberSchema,
  use: z.enum(uses),
});

/** Checks of one vehicle and visit belong together. */
export const jobSchema = z.object({
  id: filledLabel,
  label,
  number: may(label),
  customer: may(label),
  moment: may(z.enum(["before", "after"])),
});

/** What was really fitted, after the check. */
export const fittedSchema = z.object({
  partNumber: label,
  revision: may(label),
  batch: may(label),
  spacerMm: positiveOrZero,
  at: instantSchema,
  by: label,
  /** km */
  odometer: may(positiveOrZero),
  photos: may(photos),
});

/**
 * What the app prescribed, as an answer showed it: a claim of the phone, which no reader believes. Without
 * `part` none was prescribed; `part` is the stop that was checked where nothing was to change.
 */
export const adviceSchema = z.object({
  at: instantSchema,
  sides: z.array(z.enum(["left", "right"])).check(z.minLength(1), z.maxLength(2)),
  /** Name of the parts library it was chosen from, and the maker's name of its state. */
  pack: may(label),
  edition: may(label),
  part: may(
    z.object({
      name: filledLabel,
      partNumber: may(label),
      revision: may(label),
      spacerMm: positiveOrZero,
      /** Free height of the stop. */
      heightMm: positiveOrZero,
      /** R5 class, N/mm. */
      stopRateClass: positiveOrZero,
      change: z.enum(changes),
      /** Of the whole check with it. */
      verdict: z.enum(states),
    }),
  ),
});

/** The same readings by a second person who did not see the first one's, by their ids. */
const secondSchema = z.object({
  by: label,
  at: instantSchema,
  readings: z
    .record(label, readingSchema)
    .check(
      z.refine(
        (readings) => Object.keys(readings).length <= recordBounds.repeats,
        messages.holdsMoreReadingsThan.code,
      ),
    ),
});

/**
 * The shape of a check record, RECORD.md in words. Whatever else a record holds is passed over and stays
 * in it, so that a field of a later release is not lost on the way through this one.
 */
export const checkSchema = z.object({
  format: z.literal(checkFormat),
  version: z.literal(checkVersion),
  id: z
    .string()
    .check(
      z.regex(
        /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i,
        messages.isNotUuid.code,
      ),
    ),
  createdAt: instantSchema,
  author: authorSchema,
  vehicle: vehicleSchema,
  axle: z.enum(["front", "rear"]),
  layout: layoutSchema,
  corners: z.array(cornerSchema).check(z.minLength(1), z.maxLength(2)),
  stop: stopSchema,
  ride: may(rideSchema),
  rules: may(rulesSchema),
  fullTravel: may(fullTravelSchema),
  job: may(jobSchema),
  /** Oldest first. */
  advised: may(z.array(adviceSchema).check(z.maxLength(recordBounds.advised))),
  fitted: may(fittedSchema),
  second: may(secondSchema),
  reference: may(referenceSchema),
  photos: may(photos),
  notes: may(notes),
});
