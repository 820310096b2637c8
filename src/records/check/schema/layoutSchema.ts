import * as z from "zod/mini";
import type { LayoutKind } from "../../../physics/fitment.ts";
import {
  type GeometryReadingOf,
  geometryNames,
  layoutReadingsInOrder,
} from "../../../physics/readings/index.ts";
import { eachOf } from "../../text/plainObject.ts";
import { allMay, may, numberSchema, positiveOrZero, readingSchema } from "./fields.ts";

const outerToWheel = {
  /** κ: wheel travel per travel of the outer joint, from a pack or a drawing. */
  wheelPerOuter: may(numberSchema),
  /** Its ± half-width. */
  wheelPerOuterTol: may(positiveOrZero),
};

/** The readings that a layout takes, any of them absent: what must be there is judged with the sides'. */
function readingsOf<Kind extends LayoutKind>(kind: Kind) {
  const names = layoutReadingsInOrder[kind] as readonly GeometryReadingOf<Kind>[];
  return z.object(allMay(eachOf(names, readingSchema)));
}

const armRole = may(z.enum(["lower", "upper", "underStrut", "carriesWheel"]));

/** Where the stop is in the suspension, and the geometry that both sides share. */
export const layoutSchema = z.discriminatedUnion("kind", [
  z.object({
    kind: z.literal("arm"),
    armRole,
    /** What the stop is fixed to; absent: a round contact. */
    stopOn: may(z.enum(["frame", "arm"])),
    ...outerToWheel,
    readings: readingsOf("arm"),
  }),
  z.object({
    kind: z.literal("damper"),
    armRole,
    ...outerToWheel,
    readings: readingsOf("damper"),
  }),
  z.object({
    kind: z.literal("strut"),
    ...outerToWheel,
    readings: readingsOf("strut"),
  }),
  z.object({
    kind: z.literal("axle"),
    ...outerToWheel,
    readings: readingsOf("axle"),
  }),
]);

/** Geometry readings of one side, of whatever layout. */
export const geometrySchema = z.object(allMay(eachOf(geometryNames, readingSchema)));
