import type { armAngles, armLengths } from "./armReadings.ts";
import type { boltDistances } from "./boltReadings.ts";
import type { heights } from "./heightReadings.ts";
import type { linkageReadings } from "./linkageReadings.ts";

type Shared = typeof armLengths &
  typeof boltDistances &
  typeof armAngles &
  typeof heights &
  typeof linkageReadings;

/** The readings of parts that more than one layout has. */
export type ReadingOf<Part extends string> = {
  [Name in keyof Shared]: Shared[Name]["of"] extends Part ? Name : never;
}[keyof Shared];
