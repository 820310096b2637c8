const countKey = "stopfit.checks";

/**
 * How many checks were here at the last look, kept apart from them: where the browser has cleared them,
 * this tells that there were some. Null where it isn't known.
 */
export function countBefore(): number | null {
  try {
    const count = Number(localStorage.getItem(countKey) ?? Number.NaN);
    return Number.isInteger(count) ? count : null;
  } catch {
    return null;
  }
}

/** Notes how many checks are kept here, deleted ones that can still be restored among them. */
export function noteCount(count: number): void {
  try {
    localStorage.setItem(countKey, `${count}`);
  } catch {
    // Refused: then nothing is kept here anyway.
  }
}

/** Notes that a check is kept here, where no list has counted it yet. */
export function noteKept(): void {
  if (!countBefore()) noteCount(1);
}
