import * as messages from "../../words/compiled/physics/uncertainty.ts";
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
    return fail("readingMissing", [messages.thereIsNoValue({ name: name() })], id);
  }
  const usable = (value: number) => Number.isFinite(value) && Math.abs(value) <= 1e5;
  if (!reading.values.every(usable)) {
    return fail("readingNotFinite", [messages.isNotUsableNumber({ name: capital(name()) })], id);
  }
  if (!usable(reading.tol) || reading.tol < 0) {
    return fail("toleranceNegative", [messages.ofMustBeZero({ name: name() })], id);
  }
  const middle = meanOf(reading);
  if (sort === "length" && middle <= 0) {
    return fail("lengthNotPositive", [messages.mustBeAboveZero({ name: capital(name()) })], id);
  }
  if (sort === "mass" && middle <= 0) {
    return fail("massNotPositive", [messages.mustBeAboveZeroWeigh({ name: capital(name()) })], id);
  }
  if (sort === "gap" && middle < 0) {
    return fail("gapNegative", [messages.cannotBeBelowZero({ name: capital(name()) })], id);
  }
  if (sort === "angle" && Math.abs(middle) >= 90) {
    return fail("angleTooSteep", [messages.mustLieBetween90({ name: capital(name()) })], id);
  }
  return succeed(middle);
}
