import * as z from "zod/mini";
import type { LayoutKind } from "../../../physics/fitment.ts";
import {
  armRoles,
  type GeometryReadingOf,
  geometryNames,
  type LayoutFact,
  layoutKinds,
  layoutReadingsInOrder,
  layoutRegistry,
  stopCarriers,
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

export const armRoleSchema = z.enum(armRoles);
/** What the stop is fixed to; absent: a round contact. */
export const stopOnSchema = z.enum(stopCarriers);

const saidOfArm = { armRole: may(armRoleSchema) };
const saidOfMeeting = { stopOn: may(stopOnSchema) };

type LayoutSchema<Kind extends LayoutKind> = z.ZodMiniObject<
  {
    kind: z.ZodMiniLiteral<Kind>;
    readings: ReturnType<typeof readingsOf<Kind>>;
  } & typeof outerToWheel &
    (LayoutFact<Kind, "onArm"> extends true ? typeof saidOfArm : Record<never, never>) &
    (LayoutFact<Kind, "saysStopOn"> extends true ? typeof saidOfMeeting : Record<never, never>)
>;
type AnyLayout = { [Kind in LayoutKind]: LayoutSchema<Kind> }[LayoutKind];

function layoutOf(kind: LayoutKind) {
  const { onArm, saysStopOn } = layoutRegistry[kind];
  return z.object({
    kind: z.literal(kind),
    ...(onArm && saidOfArm),
    ...(saysStopOn && saidOfMeeting),
    ...outerToWheel,
    readings: readingsOf(kind),
  });
}

/** Where the stop is in the suspension, and the geometry that both sides share. */
export const layoutSchema = z.discriminatedUnion(
  "kind",
  layoutKinds.map(layoutOf) as unknown as readonly [AnyLayout, ...AnyLayout[]],
);

/** Geometry readings of one side, of whatever layout. */
export const geometrySchema = z.object(allMay(eachOf(geometryNames, readingSchema)));
