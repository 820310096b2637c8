import * as z from "zod/mini";
import { layoutKinds } from "../../physics/readings/index.ts";
import { may } from "../check/schema/fields.ts";
import { mountingWays } from "./mounting.ts";

const size = may(z.number().check(z.gt(0), z.lte(2000)));

export const mountingSchema = z.object({
  way: z.enum(mountingWays),
  sizeMm: size,
  pitchMm: size,
  spacingMm: size,
  seatMm: size,
  roomMm: size,
  layouts: may(z.array(z.enum(layoutKinds)).check(z.minLength(1), z.maxLength(layoutKinds.length))),
});
