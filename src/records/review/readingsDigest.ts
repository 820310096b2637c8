import type { CheckRecord } from "../check/checkRecord.ts";
import { canonicalText, textDigest } from "../text/canonicalText.ts";

/**
 * Everything of a record that its answer is made of, in short: two versions with one digest have the same
 * answer. Names, notes and photos are not in it. It tells versions apart and proves nothing of who sent them.
 */
export function readingsDigest({
  axle,
  layout,
  corners,
  stop,
  ride,
  rules,
  fullTravel,
  vehicle: { liftMm, use },
}: CheckRecord): string {
  return textDigest(
    canonicalText({ axle, layout, corners, stop, ride, rules, fullTravel, liftMm, use }),
  );
}
