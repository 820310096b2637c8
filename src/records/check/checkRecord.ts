import type * as z from "zod/mini";
import type {
  adviceSchema,
  authorSchema,
  checkSchema,
  fittedSchema,
  jobSchema,
  photoSchema,
  vehicleSchema,
} from "./checkSchema.ts";
import type { cornerSchema, limitSchema } from "./schema/cornerSchema.ts";
import type { readingSchema } from "./schema/fields.ts";
import type { geometrySchema, layoutSchema } from "./schema/layoutSchema.ts";
import type { platformSchema, referenceSchema } from "./schema/platformSchema.ts";
import type { stopSchema } from "./schema/stopSchema.ts";

/** What a schema infers, not to be written to. */
export type Read<Schema extends z.core.$ZodType> = Plain<z.infer<Schema>>;

type Plain<Value> = Value extends object
  ? { readonly [Name in keyof Value]: Plain<Value[Name]> }
  : Value;

/** A reading with what the person typed for each repeat, such as "2 5/16 in", and what with. */
export type TypedReading = Read<typeof readingSchema>;

export type CheckLayout = Read<typeof layoutSchema>;
export type GeometryReadings = Read<typeof geometrySchema>;
export type Author = Read<typeof authorSchema>;
export type Role = Author["role"];
export type Vehicle = Read<typeof vehicleSchema>;
export type Axle = CheckRecord["axle"];
export type CheckLimit = Read<typeof limitSchema>;
export type CheckCorner = Read<typeof cornerSchema>;
export type CheckStop = Read<typeof stopSchema>;
export type Photo = Read<typeof photoSchema>;
export type Job = Read<typeof jobSchema>;
export type Advice = Read<typeof adviceSchema>;
export type Fitted = Read<typeof fittedSchema>;
export type Platform = Read<typeof platformSchema>;
export type TakenFromPack = Read<typeof referenceSchema>;

/** One fitment check, as a phone stores it, a file carries it and `assess` reads it. */
export type CheckRecord = Read<typeof checkSchema>;

/** A value with some of its fields still absent, and all others as they are. */
type Lacking<Value, Name extends keyof Value> = Omit<Value, Name> & {
  readonly [Each in Name]?: Value[Each];
};

export type PartialLimit = Lacking<CheckLimit, "reading">;

export type PartialCorner = Omit<CheckCorner, "limits"> & {
  readonly limits: readonly PartialLimit[];
};

/** A layout of which not even the kind may be known: every field that one of the layouts has. */
export interface PartialLayout {
  readonly kind?: CheckLayout["kind"];
  readonly armRole?: NonNullable<Extract<CheckLayout, { kind: "arm" }>["armRole"]>;
  readonly stopOn?: NonNullable<Extract<CheckLayout, { kind: "arm" }>["stopOn"]>;
  readonly wheelPerOuter?: number;
  readonly wheelPerOuterTol?: number;
  readonly readings?: GeometryReadings;
}

/** A record still being filled in: a field is absent until its entry can be read. */
export type PartialCheckRecord = Lacking<
  Omit<CheckRecord, "author" | "vehicle" | "layout" | "corners" | "stop">,
  "axle"
> & {
  readonly author?: Partial<Author>;
  readonly vehicle?: Partial<Vehicle>;
  readonly layout?: PartialLayout;
  readonly corners: readonly PartialCorner[];
  readonly stop?: Partial<CheckStop>;
};
