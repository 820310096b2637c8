import type { LimitKind, Reading } from "../fitment.ts";
import { type FieldPath, fail, type Outcome, succeed } from "../outcome.ts";
import { readingName } from "../readingNames.ts";
import { capital } from "../sentence.ts";
import { meanOf } from "./readingMean.ts";

/** What a reading measures, and so which means are possible. */
export type ReadingSort = "length" | "offset" | "gap" | "angle" | "mass";

/**
 * The mean of a reading that is fit to compute with.
 *
 * Valid: at least one value, all finite, magnitudes up to 1e5; tolerance finite and ≥ 0; lengths and
 * masses above 0, offsets of any sign, gaps at least 0 (0 = the stop touches already), angles within
 * ±90° exclusive.
 * Errors: `readingMissing`, `readingNotFinite`, `toleranceNegative`, `lengthNotPositive`,
 * `gapNegative`, `massNotPositive`, `angleTooSteep`, each naming the reading.
 */
export function checkedMean(
  reading: Reading | undefined,
  id: FieldPath,
  sort: ReadingSort,
  limitKind?: LimitKind,
): Outcome<number> {
  const name = () => readingName(id, limitKind);
  if (reading === undefined || reading.values.length === 0) {
    return fail("readingMissing", [`There is no value for ${name()}. Measure it.`], id);
  }
  const usable = (value: number) => Number.isFinite(value) && Math.abs(value) <= 1e5;
  if (!reading.values.every(usable)) {
    return fail(
      "readingNotFinite",
      [`${capital(name())} is not a usable number. Type it again.`],
      id,
    );
  }
  if (!usable(reading.tol) || reading.tol < 0) {
    return fail(
      "toleranceNegative",
      [`The ± of ${name()} must be zero or more. Type the tool's half-width again.`],
      id,
    );
  }
  const middle = meanOf(reading);
  if (sort === "length" && middle <= 0) {
    return fail("lengthNotPositive", [`${capital(name())} must be above zero. Re-measure it.`], id);
  }
  if (sort === "mass" && middle <= 0) {
    return fail("massNotPositive", [`${capital(name())} must be above zero. Weigh it again.`], id);
  }
  if (sort === "gap" && middle < 0) {
    return fail(
      "gapNegative",
      [`${capital(name())} cannot be below zero. Type 0 if the stop already touches its pad.`],
      id,
    );
  }
  if (sort === "angle" && Math.abs(middle) >= 90) {
    return fail("angleTooSteep", [`${capital(name())} must lie between −90° and 90°.`], id);
  }
  return succeed(middle);
}
