/** What taking one reading again is expected to do, as far as the order of a plan goes by it; all 0 … 1. */
interface Expected {
  /** Share of the question's interval that goes. */
  readonly removed: number;
  readonly settlesQuestion: number;
  readonly settlesVerdict: number;
}

interface Forecast {
  readonly forecast: Expected;
}

/** A reading that takes away less of the interval and settles less often than this is hardly worth it. */
const worthTaking = 0.05;
/** Together this sure to settle it, no more readings are proposed. */
const enough = 0.95;

/**
 * Below 0 where `a` goes before `b`: by the chance to settle the verdict, then a question, then by the
 * doubt removed. Chances are told apart from one hundredth on: less is the draws' own scatter.
 */
export function compareForecasts(a: Expected, b: Expected): number {
  const hundredths = (chance: number) => Math.round(100 * chance);
  return (
    hundredths(b.settlesVerdict) - hundredths(a.settlesVerdict) ||
    hundredths(b.settlesQuestion) - hundredths(a.settlesQuestion) ||
    b.removed - a.removed
  );
}

/**
 * The least troublesome way that removes nearly as much as the best one, of ways in the order of their
 * trouble; null of none.
 */
export function leastTrouble<Tried extends Forecast>(tried: readonly Tried[]): Tried | null {
  const most = Math.max(0, ...tried.map(({ forecast }) => forecast.removed));
  return tried.find(({ forecast }) => forecast.removed >= 0.9 * most) ?? null;
}

/**
 * Those worth taking, until they are sure enough together; many small ones as well, where only together
 * they make a difference.
 *
 * @param together chance, 0 … 1, that the verdict is settled once some are taken
 */
export function proposed<Found extends Forecast>(
  found: readonly Found[],
  together: (some: readonly Found[]) => number,
): { readonly chosen: readonly Found[]; readonly settlesAll: number } {
  const withAll = together(found);
  const chosen: Found[] = [];
  let settles = 0;
  for (const each of found) {
    if (settles >= enough) break;
    if (!isWorth(each.forecast) && withAll - settles < worthTaking) continue;
    chosen.push(each);
    settles = together(chosen);
  }
  return { chosen, settlesAll: Math.max(settles, withAll) };
}

function isWorth({ removed, settlesQuestion, settlesVerdict }: Expected): boolean {
  return Math.max(removed, settlesQuestion, settlesVerdict) >= worthTaking;
}
