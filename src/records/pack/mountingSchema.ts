import * as z from "zod/mini";
import { mountingWays } from "./mounting.ts";

const size = z.optional(z.number().check(z.gt(0), z.lte(2000)));

export const mountingSchema = z.looseObject({
  way: z.enum(mountingWays),
  sizeMm: size,
  pitchMm: size,
  spacingMm: size,
  seatMm: size,
  layouts: z.optional(
    z.array(z.enum(["arm", "damper", "strut", "axle"])).check(z.minLength(1), z.maxLength(4)),
  ),
});
