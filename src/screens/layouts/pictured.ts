import type { LimitKind } from "../../physics/fitment.ts";
import type { GeometryReadingName } from "../../physics/readings/index.ts";

/** Everything a drawing can show being measured. */
export type PicturedReading =
  | GeometryReadingName
  | "gap"
  | "pressedHeight"
  | "seatToPad"
  | "rideHeight"
  | "cornerMass"
  | "freeHeight"
  | "usableCompression"
  | "limitDistance"
  | `limit:${LimitKind}`;

/** The current means: mm, deg, kg. Absent, undefined or not finite = not yet known. */
export type DrawingValues = { readonly [Name in PicturedReading]?: number | undefined };

/** One number per name, always finite and inside what can be drawn. */
export type DrawnNumbers = { readonly [Name in PicturedReading]: number };

/** What must be seen beside the marks of a reading: the whole arm, the ground under it, a stop's lean, a rod, both wheels. */
export type Surroundings = "arm" | "ground" | "lean" | "rod" | "axle";
