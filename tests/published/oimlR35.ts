import { type TapeClass, tapeLimit } from "../../src/records/entry/toolTolerance.ts";
import { publishedSource } from "./support/published.ts";

/*
 * OIML R 35-1:2007 (E), Material measures of length for general use, clause 4: maximum permissible
 * error ±(a + b·L) mm, L in metres rounded up to the next whole metre; c more where an end of the
 * length is a surface. a, b, c read in a secondary source that gives the table of the directive on
 * measuring instruments (the same as R 35-1's); the clause in the contents of R 35-1. Worked by hand
 * at 0.5, 1, 1.2, 2, 5 and 10 m.
 */
const lengths = [500, 1000, 1200, 2000, 5000, 10_000];
const errors: Readonly<Record<TapeClass, readonly number[]>> = {
  I: [0.2, 0.2, 0.3, 0.3, 0.6, 1.1],
  II: [0.5, 0.5, 0.7, 0.7, 1.3, 2.3],
  III: [1.0, 1.0, 1.4, 1.4, 2.6, 4.6],
};
const hookError: Readonly<Record<TapeClass, number>> = { I: 0.1, II: 0.2, III: 0.3 };

function limit(tapeClass: TapeClass, lengthMm: number, fromItsEnd = false): number {
  const outcome = tapeLimit(tapeClass, lengthMm, { fromItsEnd });
  return outcome.ok ? outcome.value : Number.NaN;
}

export const oimlR35 = publishedSource("OIML R 35-1:2007, clause 4", "met", (published) => {
  for (const tapeClass of ["I", "II", "III"] as const) {
    lengths.forEach((length, index) => {
      published(
        `error of a class ${tapeClass} tape at ${length / 1000} m, mm`,
        errors[tapeClass][index] as number,
        () => limit(tapeClass, length),
        1e-12,
      );
    });
    published(
      `more from the hook of a class ${tapeClass} tape, mm`,
      hookError[tapeClass],
      () => limit(tapeClass, 1500, true) - limit(tapeClass, 1500),
      1e-12,
    );
  }
});
