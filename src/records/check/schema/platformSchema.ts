import * as z from "zod/mini";
import { mountingSchema } from "../../pack/mountingSchema.ts";
import { eachOf } from "../../text/plainObject.ts";
import { platformReadings, recordBounds } from "../recordFormat.ts";
import { limitSchema } from "./cornerSchema.ts";
import { allMay, filledLabel, label, may, notes, readingSchema } from "./fields.ts";
import { layoutSchema } from "./layoutSchema.ts";
import { rideSchema, rulesSchema } from "./rideSchema.ts";

const year = z.int().check(z.gte(1900), z.lte(2200));

/** An axle of a vehicle as a pack holds it, and a record its copy. */
export const platformSchema = z.object({
  id: filledLabel,
  label: filledLabel,
  axle: z.enum(["front", "rear"]),
  layout: layoutSchema,
  /** The gap is the one with its usual stop, unladen. */
  ...allMay(eachOf(platformReadings, readingSchema)),
  ride: may(rideSchema),
  limits: z.array(limitSchema).check(z.maxLength(recordBounds.limits)),
  /** The id of the stop it usually has. */
  usualStop: z.nullable(label),
  /** What holds a stop there. */
  mount: may(mountingSchema),
  /** Model years, first and last; without a last one it is still made. */
  years: may(z.object({ from: year, to: may(year) })),
  trims: may(z.array(label).check(z.maxLength(50))),
  /** How it is told from others of its name, on the vehicle itself. */
  tellApart: may(label),
  notes: may(notes),
});

/** What a check took from a pack, as the pack had it then: a later pack changes no old answer. */
export const referenceSchema = z.object({
  /** The pack's name, and which edition of it. */
  pack: label,
  edition: may(label),
  /** The id of the stop that was chosen from it. */
  stop: may(label),
  platform: may(platformSchema),
  /** The house rules of the check's use. */
  rules: may(rulesSchema),
});
