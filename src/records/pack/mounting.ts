import type { LayoutKind } from "../../physics/fitment.ts";
import { quantityText } from "../entry/quantityText.ts";
import type { LengthUnit } from "../entry/units.ts";

/** How a stop is held: threaded stud, one bolt through it, two bolts, slid on the shock rod, pressed into a cup. */
export const mountingWays = ["stud", "bolt", "twoBolts", "rod", "cup"] as const;
type MountingWay = (typeof mountingWays)[number];

/** How a stop is held, or what holds one on a platform; what is absent is not known. All mm. */
export interface Mounting {
  readonly way: MountingWay;
  /** Thread of the stud or bolt, bore over the rod, diameter of the cup. */
  readonly sizeMm?: number;
  readonly pitchMm?: number;
  /** Between two bolts. */
  readonly spacingMm?: number;
  /** Across the stop's foot; on a platform across the room for it. */
  readonly seatMm?: number;
  /** Where it can stand; on a stop only. */
  readonly layouts?: readonly LayoutKind[];
}

/** yes: it mounts there; check: something of it is not known; no: it does not. */
export type Mountable = "yes" | "check" | "no";

/** Lengths of a mounting that differ by less are the same, mm. Common practice. */
const same = { sizeMm: 0.3, pitchMm: 0.1, spacingMm: 1, seatMm: 0.3 } as const;

/** Can a stop be mounted on such a layout where this is what holds it? */
export function mountable(
  stop: Mounting | undefined,
  place: Mounting | null,
  kind: LayoutKind,
): Mountable {
  if (stop?.layouts !== undefined && !stop.layouts.includes(kind)) return "no";
  if (stop === undefined || place === null) return "check";
  if (stop.way !== place.way) return "no";
  let known = true;
  for (const name of ["sizeMm", "pitchMm", "spacingMm"] as const) {
    const own = stop[name];
    const there = place[name];
    if (own !== undefined && there !== undefined && Math.abs(own - there) >= same[name])
      return "no";
    if ((own === undefined) !== (there === undefined)) known = false;
  }
  if (
    stop.seatMm !== undefined &&
    place.seatMm !== undefined &&
    stop.seatMm > place.seatMm + same.seatMm
  )
    return "no";
  return known && stop.sizeMm !== undefined ? "yes" : "check";
}

const wayWords: Readonly<Record<MountingWay, string>> = {
  stud: "threaded stud",
  bolt: "one bolt through it",
  twoBolts: "two bolts",
  rod: "on the shock rod",
  cup: "pressed into a cup",
};

/** "threaded stud M10 × 1.5", "two bolts M8, 60 mm apart", in the person's unit. */
export function mountingText(mounting: Mounting, unit: LengthUnit): string {
  const { way, sizeMm, pitchMm, spacingMm } = mounting;
  const length = (value: number) => quantityText({ kind: "length", value }, unit);
  const threaded = way === "stud" || way === "bolt" || way === "twoBolts";
  const sized =
    sizeMm === undefined
      ? ""
      : threaded
        ? ` M${sizeMm}${pitchMm === undefined ? "" : ` × ${pitchMm}`}`
        : `, ${length(sizeMm)}`;
  return `${wayWords[way]}${sized}${spacingMm === undefined ? "" : `, ${length(spacingMm)} apart`}`;
}
