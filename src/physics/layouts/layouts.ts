import { arm } from "./arm.ts";
import { axle } from "./axle.ts";
import { damper } from "./damper.ts";
import { armAngles, armLengths } from "./readings/armReadings.ts";
import { boltDistances } from "./readings/boltReadings.ts";
import { heights } from "./readings/heightReadings.ts";
import { linkageReadings } from "./readings/linkageReadings.ts";
import { strut } from "./strut.ts";

/** Where a stop sits: on an arm, on a damper's rod, on a strut's rod, over a beam axle. */
export const layouts = { arm, damper, strut, axle } as const;

/** Every reading of a suspension's geometry, in the order in which they are taken. */
export const geometryDefinitions = {
  ...axle.readings,
  ...armLengths,
  ...boltDistances,
  ...armAngles,
  ...heights,
  ...strut.readings,
  ...linkageReadings,
} as const;
