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

const { branches, curvePoints, laws } = recordBounds;

/** [mm, N·s/mm while compressing, N·s/mm while rebounding] */
const dampingSchema = z.nullable(
  z
    .array(z.tuple([numberSchema, numberSchema, numberSchema]))
    .check(z.minLength(1), z.maxLength(curvePoints)),
);
const branchesSchema = z
  .array(z.object({ tauS: numberSchema, share: positiveOrZero }))
  .check(z.maxLength(branches));

/** What a test at speed leaves open. */
const testDoubtSchema = z.object({
  /** Greatest speed of its rows, mm/s. */
  fastestMmPerS: positiveOrZero,
  /** Other laws that it allows, each as likely as the next. */
  laws: z
    .array(
      z.object({
        damping: dampingSchema,
        restLoss: may(positiveOrZero),
        staticShare: may(positiveOrZero),
        branches: may(branchesSchema),
      }),
    )
    .check(z.maxLength(laws)),
});

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
  damping: dampingSchema,
  testedAtSpeed: z.boolean(),
  /** What fades with a relaxation time, s, by its share of the static rate; from tests at speed only. */
  branches: may(branchesSchema),
  testDoubt: may(testDoubtSchema),
  partNumber: may(label),
  revision: may(label),
  batch: may(label),
  /** The curve was not tested: how it was come by, and the ± of its forces as a share. */
  estimated: may(z.object({ how: label, forceShare: numberSchema.check(z.gte(0), z.lte(1)) })),
});
