import * as z from "zod/mini";
import { limitKinds, limitPlaces, standingNames } from "../../../physics/readings/index.ts";
import { recordBounds } from "../recordFormat.ts";
import { may, numberSchema, positiveOrZero, readingSchema } from "./fields.ts";
import { geometrySchema } from "./layoutSchema.ts";

export const limitFields = z.object({
  kind: z.enum(limitKinds),
  at: z.enum(limitPlaces),
  /** At the wheel: mm that the clearance closes per mm of wheel travel; absent: 1. */
  perWheel: may(numberSchema),
  /** On the arm: how far from the pivot line. */
  distance: may(readingSchema),
  /** The clearance. */
  reading: readingSchema,
});

export const limitSchema = limitFields.check(
  z.refine(({ at, distance }) => at !== "arm" || distance !== undefined, { path: ["distance"] }),
);

/** One side of the axle. */
export const cornerFields = z.object({
  side: z.enum(["left", "right"]),
  gap: may(readingSchema),
  /** The stop touches: its height as it stands. */
  pressedHeight: may(readingSchema),
  /** The stop is not there: from its seat to its pad. */
  seatToPad: may(readingSchema),
  rideHeight: may(readingSchema),
  /** Half of what lifting and pushing down leave between them at ride height, mm. */
  settleMm: may(positiveOrZero),
  cornerMassKg: may(readingSchema),
  /** Readings of this side, which go before the layout's. */
  geometry: may(geometrySchema),
  limits: z.array(limitSchema).check(z.maxLength(recordBounds.limits)),
});

/** With one of gap, pressedHeight and seatToPad, which says how the stop stands. */
export const cornerSchema = cornerFields.check(
  z.refine((corner) => standingNames.some((name) => corner[name] !== undefined), {
    path: ["gap"],
  }),
);
