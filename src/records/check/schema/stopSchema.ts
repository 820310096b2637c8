import * as z from "zod/mini";
import { optionalStopNumbers } from "../../../physics/readings/index.ts";
import { eachOf } from "../../text/plainObject.ts";
import { recordBounds } from "../recordFormat.ts";
import {
  allMay,
  filledLabel,
  label,
  may,
  numberSchema,
  positiveOrZero,
  readingSchema,
} from "./fields.ts";

const { branches, curvePoints } = recordBounds;

/** A stop as a record and a pack hold it. */
export const stopSchema = z.object({
  name: filledLabel,
  /** carry: made to stay in contact under load. */
  duty: z.enum(["impact", "carry"]),
  freeHeight: readingSchema,
  usableCompressionMm: numberSchema,
  ...allMay(eachOf(optionalStopNumbers, positiveOrZero)),
  /** [mm, N] */
  curve: z
    .array(z.tuple([numberSchema, numberSchema]))
    .check(z.minLength(1), z.maxLength(curvePoints)),
  /** [mm, N·s/mm while compressing, N·s/mm while rebounding] */
  damping: z.nullable(
    z
      .array(z.tuple([numberSchema, numberSchema, numberSchema]))
      .check(z.minLength(1), z.maxLength(curvePoints)),
  ),
  testedAtSpeed: z.boolean(),
  /** What fades with a relaxation time, s, by its share of the static rate; from tests at speed only. */
  branches: may(
    z.array(z.object({ tauS: numberSchema, share: positiveOrZero })).check(z.maxLength(branches)),
  ),
  partNumber: may(label),
  revision: may(label),
  batch: may(label),
  /** The curve was not tested: how it was come by, and the ± of its forces as a share. */
  estimated: may(z.object({ how: label, forceShare: numberSchema.check(z.gte(0), z.lte(1)) })),
});
