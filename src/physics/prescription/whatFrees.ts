import { cornerAtMeans } from "../budget/cornerAtMeans.ts";
import type { Corner, Fitment, HardLimit, Reading } from "../fitment.ts";
import { closingAt } from "../kinematics/closingAt.ts";
import { layoutAtHeight } from "../kinematics/layoutAtHeight.ts";
import { type Candidate, scaledBuilds } from "./candidates.ts";
import {
  bestDecidedOn,
  type SearchOptions,
  type SearchProgress,
  someFits,
  type TriedVehicle,
  vehicleFor,
} from "./searchSteps.ts";
import type { DecidedFitment } from "./trials.ts";

/** A change of the vehicle with which a combination fits, tested with it. */
export interface Freed {
  readonly kind: "otherClass" | "room" | "payload" | "higher" | "stiffer" | "carry";
  /** room, higher: mm; payload: kg left per corner; stiffer: factor on the spring; else 1. */
  readonly amount: number;
  /** Judged by all that decides about it, as the whole model would. */
  readonly decided: DecidedFitment;
}

export interface FreesProgress extends SearchProgress {
  /** What was found so far, where something was added since the last step. */
  readonly freed?: readonly Freed[];
}

/** Steps that are tried, least first. Common practice. */
const roomsMm = [5, 10, 15, 20, 25, 30, 40, 50, 60, 80] as const;
const payloadShares = [0.75, 0.5, 0.25, 0] as const;
const risesMm = [10, 20, 30, 40, 60] as const;
const stiffer = [1.25, 1.5, 2] as const;

/**
 * What would free a combination where none fits as the vehicle stands, each tested by all that
 * decides about it, in the order in which it is of use: the fitted build in a stiffness that is not among those to
 * choose from, more room before the limit, less payload, a higher spring, a stiffer one or a helper, a stop
 * made to carry. Of each kind the least that is enough; a kind that
 * does not help is left out.
 */
export function* whatFreesSteps(
  fitment: Fitment,
  others: readonly Candidate[],
  options: SearchOptions,
): Generator<FreesProgress, readonly Freed[], void> {
  const payload = fitment.ride?.payloadPerCornerKg ?? 0;
  const kinds: readonly {
    readonly kind: Freed["kind"];
    readonly amounts: readonly number[];
    readonly changed: (amount: number) => Fitment | null;
    readonly others?: readonly Candidate[];
    /** Its suspension stands as it is. */
    readonly sameGeometry?: true;
  }[] = [
    {
      kind: "otherClass",
      amounts: [1],
      changed: () => fitment,
      sameGeometry: true,
      others: scaledBuilds(fitment.stop).filter(({ id }) => others.every((each) => each.id !== id)),
    },
    {
      kind: "room",
      sameGeometry: true,
      amounts: roomsMm,
      changed: (room) => withRoom(fitment, room),
    },
    {
      kind: "payload",
      amounts: payload > 0 ? payloadShares.map((share) => Math.round(payload * share)) : [],
      sameGeometry: true,
      changed: (left) => ({ ...fitment, ride: { ...fitment.ride, payloadPerCornerKg: left } }),
    },
    { kind: "higher", amounts: risesMm, changed: (rise) => raised(fitment, rise) },
    {
      kind: "stiffer",
      amounts: fitment.ride?.wheelRateNPerMm === undefined ? [] : stiffer,
      sameGeometry: true,
      changed: (factor) => withSpring(fitment, factor),
    },
    {
      kind: "carry",
      amounts: fitment.stop.duty === "carry" ? [] : [1],
      sameGeometry: true,
      changed: () => ({ ...fitment, stop: { ...fitment.stop, duty: "carry" } }),
    },
  ];
  const freed: Freed[] = [];
  for (const { kind, amounts, changed, others: own = others, sameGeometry } of kinds) {
    if (own.length === 0 && kind === "otherClass") continue;
    // Of the vehicle as it stands; with another suspension its closings are others too.
    const { assessed: _, closings, ...rest } = options;
    const search: SearchOptions = { ...rest, ...(sameGeometry && closings && { closings }) };
    const vehicles = new Map<number, TriedVehicle | null>();
    const vehicleAt = (amount: number) => {
      const known = vehicles.get(amount);
      if (known !== undefined) return known;
      const fitment = changed(amount);
      const vehicle = fitment && vehicleFor(fitment, own, search);
      vehicles.set(amount, vehicle);
      return vehicle;
    };
    const fits = function* (amount: number) {
      const vehicle = vehicleAt(amount);
      return vehicle !== null && (yield* someFits(vehicle));
    };
    // The fitted build in another class is worth telling even where it needs care.
    const amount = kind === "otherClass" ? 1 : yield* leastThatFrees(amounts, fits);
    const vehicle = amount === null ? null : vehicleAt(amount);
    if (amount === null || vehicle === null) continue;
    const decided = yield* bestDecidedOn(vehicle, { okOnly: kind !== "otherClass" });
    if (decided === null) continue;
    freed.push({ kind, amount, decided });
    yield { done: freed.length, total: kinds.length, freed: [...freed] };
  }
  return freed;
}

/** The least of the amounts, rising in effect, with which something fits; null where the last is not enough. */
function* leastThatFrees(
  amounts: readonly number[],
  fits: (amount: number) => Generator<SearchProgress, boolean, void>,
): Generator<SearchProgress, number | null, void> {
  const last = amounts.at(-1);
  if (last === undefined || !(yield* fits(last))) return null;
  let least = last;
  let below = amounts.slice(0, -1);
  for (;;) {
    const place = below.length >> 1;
    const middle = below[place];
    if (middle === undefined) return least;
    if (yield* fits(middle)) {
      least = middle;
      below = below.slice(0, place);
    } else below = below.slice(place + 1);
  }
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
  return closingAt(atMeans.value.kinematics, 0).perMm;
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
