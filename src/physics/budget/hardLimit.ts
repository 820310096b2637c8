import type { Corner, LimitKind } from "../fitment.ts";
import type { Kinematics } from "../kinematics/kinematics.ts";
import { fail, type Outcome, succeed } from "../outcome.ts";
import { readingName } from "../readingNames.ts";
import { capital, length } from "../sentence.ts";
import { checkedMean } from "../uncertainty/readingMean.ts";

/** The hard limit that touches first. */
export interface FirstHardLimit {
  /** z_h: wheel travel from the measured ride height, mm, above 0. */
  readonly travelMm: number;
  readonly kind: LimitKind;
  /** Its place in the corner's list. */
  readonly index: number;
}

/**
 * z_h of a corner at its mean readings: the least of all hard limits. A limit at
 * the wheel touches after reading / perWheel; a limit at the stop after z(reading). One that the layout
 * cannot reach never touches. Null where no limit was measured.
 *
 * Errors: an impossible reading, by its name; `perWheelNotPositive`; `limitOutOfReach` where the
 * layout can reach none of them.
 */
export function travelToHardLimit(
  corner: Corner,
  kinematics: Kinematics,
): Outcome<FirstHardLimit | null> {
  if (corner.limits.length === 0) return succeed(null);
  let first: FirstHardLimit | null = null;
  for (const [index, limit] of corner.limits.entries()) {
    const id = `${corner.side}.limits.${index}`;
    const mean = checkedMean(limit.reading, id, "length", limit.kind);
    if (!mean.ok) return mean;
    const perWheel = limit.perWheel ?? 1;
    if (!(Number.isFinite(perWheel) && perWheel > 0)) {
      return fail(
        "perWheelNotPositive",
        [
          `${capital(readingName(id, limit.kind))} must close by more than nothing per wheel travel.`,
        ],
        id,
      );
    }
    const stopLimit = limit.at === "stop" ? kinematics.wheelTravel(mean.value) : null;
    if (stopLimit !== null && !stopLimit.ok) continue;
    const travelMm = stopLimit?.value ?? mean.value / perWheel;
    if (travelMm > kinematics.range[1]) continue;
    if (first === null || travelMm < first.travelMm) first = { travelMm, kind: limit.kind, index };
  }
  if (first !== null) return succeed(first);
  const id = `${corner.side}.limits.0`;
  return fail(
    "limitOutOfReach",
    [
      `${capital(readingName(id, corner.limits[0]?.kind))} is more than this suspension can move: it reaches `,
      length(kinematics.range[1]),
      " of wheel travel at most. Measure it again.",
    ],
    id,
  );
}
