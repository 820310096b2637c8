import * as z from "zod/mini";
import { contactParts } from "../../../physics/readings/index.ts";
import { eachOf } from "../../text/plainObject.ts";
import { allMay, instantSchema, label, may, readingSchema } from "./fields.ts";

const contactFields = {
  /** mm of wheel travel, or of height from hub to arch. */
  reading: may(readingSchema),
  /** What touched, in the person's own words. */
  note: may(label),
};
const contactSchema = z.object(contactFields);

/** A check of the whole travel by hand. */
export const fullTravelSchema = z.object({
  /** When its cautions were acknowledged; null: not yet. */
  acknowledged: z.nullable(instantSchema),
  /** Travel counted from the ride height, or the shrinking height from hub to arch. */
  measure: z.enum(["wheelTravel", "hubToArch"]),
  /** Beam axle: both wheels raised together, or one with the other on the ground. */
  movement: z.enum(["both", "one"]),
  corners: z
    .array(
      z.object({
        side: z.enum(["left", "right"]),
        /** Height from hub to arch at the measured ride height. */
        atRide: may(readingSchema),
        contacts: z.object({
          ...allMay(eachOf(contactParts, contactSchema)),
          /** A rigid block put where the stop sits, and its height. */
          block: may(z.object({ ...contactFields, blockHeight: may(readingSchema) })),
        }),
      }),
    )
    .check(z.maxLength(2)),
});
