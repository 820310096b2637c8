import { cornerAtMeans } from "../budget/cornerAtMeans.ts";
import type { Corner, Fitment, HardLimit, Reading } from "../fitment.ts";
import { layoutAtHeight } from "../kinematics/layoutAtHeight.ts";
import { type Candidate, scaledBuilds } from "./candidates.ts";
import { type SearchOptions, type SearchProgress, searchSteps } from "./searchSteps.ts";
import type { Trial } from "./trials.ts";

/** A change of the vehicle with which a combination fits, tested with it. */
export interface Freed {
  readonly kind: "otherClass" | "room" | "payload" | "higher" | "stiffer" | "carry";
  /** room, higher: mm; payload: kg left per corner; stiffer: factor on the spring; else 1. */
  readonly amount: number;
  readonly trial: Trial;
}

/** Steps that are tried, least first. Common practice. */
const roomsMm = [5, 10, 15, 20, 25, 30, 40, 50, 60, 80] as const;
const payloadShares = [0.75, 0.5, 0.25, 0] as const;
const risesMm = [10, 20, 30, 40, 60] as const;
const stiffer = [1.25, 1.5, 2] as const;

/**
 * What would free a combination where none fits as the vehicle stands, each tested through the whole
 * model, in the order in which it is of use: the fitted build in a stiffness that is not among those to
 * choose from, more room before the limit, less payload, a higher spring, a stiffer one or a helper, a stop
 * made to carry. Of each kind the least that is enough; a kind that
 * does not help is left out.
 */
export function* whatFreesSteps(
  fitment: Fitment,
  others: readonly Candidate[],
  options: SearchOptions,
): Generator<SearchProgress, readonly Freed[], void> {
  const payload = fitment.ride?.payloadPerCornerKg ?? 0;
  const kinds: readonly {
    readonly kind: Freed["kind"];
    readonly amounts: readonly number[];
    readonly changed: (amount: number) => Fitment | null;
    readonly others?: readonly Candidate[];
  }[] = [
    {
      kind: "otherClass",
      amounts: [1],
      changed: () => fitment,
      others: scaledBuilds(fitment.stop).filter(({ id }) => others.every((each) => each.id !== id)),
    },
    { kind: "room", amounts: roomsMm, changed: (room) => withRoom(fitment, room) },
    {
      kind: "payload",
      amounts: payload > 0 ? payloadShares.map((share) => Math.round(payload * share)) : [],
      changed: (left) => ({ ...fitment, ride: { ...fitment.ride, payloadPerCornerKg: left } }),
    },
    { kind: "higher", amounts: risesMm, changed: (rise) => raised(fitment, rise) },
    {
      kind: "stiffer",
      amounts: fitment.ride?.wheelRateNPerMm === undefined ? [] : stiffer,
      changed: (factor) => withSpring(fitment, factor),
    },
    {
      kind: "carry",
      amounts: fitment.stop.duty === "carry" ? [] : [1],
      changed: () => ({ ...fitment, stop: { ...fitment.stop, duty: "carry" } }),
    },
  ];
  const freed: Freed[] = [];
  for (const { kind, amounts, changed, others: own = others } of kinds) {
    if (own.length === 0 && kind === "otherClass") continue;
    const okOnly = kind !== "otherClass";
    const trial = (amount: number) => tryChanged(changed(amount), own, { ...options, okOnly });
    const found = yield* leastThatFrees(amounts, trial);
    if (found !== null) freed.push({ kind, ...found });
  }
  return freed;
}

/** The least of the amounts, rising in effect, with which something fits; none where the last is not enough. */
function* leastThatFrees(
  amounts: readonly number[],
  trial: (amount: number) => Generator<SearchProgress, Trial | null, void>,
): Generator<SearchProgress, { readonly amount: number; readonly trial: Trial } | null, void> {
  let found: { readonly amount: number; readonly trial: Trial } | null = null;
  let low = 0;
  let high = amounts.length - 1;
  const last = amounts.at(-1);
  if (last === undefined) return null;
  const most = yield* trial(last);
  if (most === null) return null;
  found = { amount: last, trial: most };
  while (low < high) {
    const middle = (low + high) >> 1;
    const amount = amounts[middle] as number;
    const tried = yield* trial(amount);
    if (tried === null) low = middle + 1;
    else {
      high = middle;
      found = { amount, trial: tried };
    }
  }
  return found;
}

function* tryChanged(
  fitment: Fitment | null,
  others: readonly Candidate[],
  options: SearchOptions,
): Generator<SearchProgress, Trial | null, void> {
  if (fitment === null) return null;
  return (yield* searchSteps(fitment, others, options)).best;
}

function shifted(reading: Reading, by: number): Reading {
  return { ...reading, values: reading.values.map((value) => value + by) };
}

/** Every limit `roomMm` of wheel travel farther off. */
function withRoom(fitment: Fitment, roomMm: number): Fitment {
  return withLimits(fitment, (corner) => roomMm * stopPerWheel(fitment, corner), roomMm);
}

function withLimits(
  fitment: Fitment,
  closingOf: (corner: Corner) => number,
  travelMm: number,
): Fitment {
  return {
    ...fitment,
    corners: fitment.corners.map((corner) => ({
      ...corner,
      limits: corner.limits.map((limit): HardLimit => {
        const by = limit.at === "wheel" ? travelMm * (limit.perWheel ?? 1) : closingOf(corner);
        return { ...limit, reading: shifted(limit.reading, by) };
      }),
    })),
  };
}

function stopPerWheel(fitment: Fitment, corner: Corner): number {
  const atMeans = cornerAtMeans(fitment, corner);
  if (!atMeans.ok) return 1;
  const { kinematics } = atMeans.value;
  const motion = new Float64Array(3);
  kinematics.evaluate(0, motion);
  return motion[1] as number;
}

/** The body `riseMm` higher by its springs: the gap opens, and every limit is as much farther off. */
function raised(fitment: Fitment, riseMm: number): Fitment | null {
  const at = layoutAtHeight(fitment.layout, riseMm, 0);
  if (!at.ok || fitment.corners.some(({ geometry }) => geometry !== undefined)) return null;
  const { layout, openedMm } = at.value;
  const higher = withLimits(fitment, () => openedMm, riseMm);
  return {
    ...higher,
    layout,
    corners: higher.corners.map((corner) => ({
      ...corner,
      ...openedBy(corner, openedMm),
    })),
  };
}

/** Whichever reading says where the stop stands, `openedMm` farther apart. */
function openedBy(corner: Corner, openedMm: number): Partial<Corner> {
  const { gap, pressedHeight, seatToPad } = corner;
  return {
    ...(gap && { gap: shifted(gap, openedMm) }),
    ...(pressedHeight && { pressedHeight: shifted(pressedHeight, openedMm) }),
    ...(seatToPad && { seatToPad: shifted(seatToPad, openedMm) }),
  };
}

/** A spring stiffer by `factor`, at the same ride height. */
function withSpring(fitment: Fitment, factor: number): Fitment | null {
  const rate = fitment.ride?.wheelRateNPerMm;
  return rate === undefined
    ? null
    : { ...fitment, ride: { ...fitment.ride, wheelRateNPerMm: rate * factor } };
}
