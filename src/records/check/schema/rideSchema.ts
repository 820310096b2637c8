import * as z from "zod/mini";
import { roadClasses } from "../../../physics/choices.ts";
import { rideQuantities, ruleValueNames } from "../../../physics/readings/index.ts";
import { eachOf } from "../../text/plainObject.ts";
import { recordBounds } from "../recordFormat.ts";
import { allMay, label, may, numberSchema } from "./fields.ts";

const quantities = allMay(eachOf(rideQuantities, numberSchema));

/** Masses, rates and damping at the wheel, any of them unknown. */
export const rideSchema = z.object({
  ...quantities,
  /** The ± half-width of an estimated value. */
  tolerances: may(z.object(quantities)),
  /** How a value was come by. */
  estimated: may(z.object(allMay(eachOf(rideQuantities, label)))),
});

const sizes = { heightM: numberSchema, lengthM: numberSchema, speedKmPerH: numberSchema };

const eventSchema = z.discriminatedUnion("kind", [
  z.object({ kind: z.literal("obstacle"), ...sizes }),
  z.object({ kind: z.literal("hump"), ...sizes }),
  z.object({ kind: z.literal("landing"), heightM: numberSchema }),
]);

/** What a check demands otherwise than its use does. */
export const rulesSchema = z.object(
  allMay({
    roadClass: z.enum(roadClasses),
    roadKurtosis: z.literal([3, 5]),
    ...eachOf(ruleValueNames, numberSchema),
    events: z.array(eventSchema).check(z.maxLength(recordBounds.events)),
  }),
);
