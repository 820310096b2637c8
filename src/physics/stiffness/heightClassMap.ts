import { travelBudget } from "../budget/travelBudget.ts";
import type { Corner, EventResult, Fitment, UseRules } from "../fitment.ts";
import { type ImpactSetup, impactSetupOf, settled } from "../impact/impactSetup.ts";
import { type Outcome, succeed } from "../outcome.ts";
import { payloadForce, springRest } from "../road/restPosition.ts";
import { levelAboveRest } from "../road/roadTravel.ts";
import { rulesOf } from "../road/useRules.ts";
import { isProgressive, secantRate, stiffnessClasses } from "../stop/stiffnessClass.ts";
import { tryUnladen } from "./cornerDynamics.ts";
import { type FailureKind, tryEvents } from "./eventFailures.ts";

/** What a cell of the map can fail on: at rest, on the road, and in each event. */
export type CellFailure = "clearance" | "earlyContact" | FailureKind;

/** One stop that might be: this one, made taller by a spacer and scaled to an R5 class. */
export interface MapCell {
  /** Added along the stop's axis, mm; below 0 = shorter. */
  readonly extraHeightMm: number;
  /** R5 class, N/mm. */
  readonly stiffnessClass: number;
  /** Each kind once; none = it works. */
  readonly failures: readonly CellFailure[];
  /** Wheel travel at rest under the payload, to contact and to full stop, from the ride height, mm. */
  readonly restTravelMm: number | null;
  readonly contactMm: number | null;
  readonly fullStopMm: number | null;
  /** Wheel travel left between full stop and hard limit, mm; null where no limit was measured. */
  readonly reserveMm: number | null;
  /** One an event of the use; null where it could not be computed. */
  readonly events: readonly (EventResult | null)[];
}

export interface HeightClassMap {
  /** The stop's own rate, N/mm, for placing it on the map at extra height 0. */
  readonly secantRateNPerMm: number;
  /** mm, rising; 0 is always among them. */
  readonly heights: readonly number[];
  /** N/mm, rising. */
  readonly classes: readonly number[];
  /** Cells in the order in which they are worth seeing: the heights nearest to this stop's first. */
  cells(): Generator<MapCell | null, void, void>;
}

/** Share of its usable compression that a carrying stop may be pressed at rest. Common practice. */
const mostCarriedShare = 0.5;

/**
 * Extra height × stiffness class for one corner by the rules of the use: a taller stop by a spacer, its
 * static curve scaled, its dashpot as it is. A cell fails on "clearance" where less than the wanted
 * reserve is left, on "earlyContact" where contact comes before the free travel needed loaded (for duty
 * carry: where it is pressed past half of δu at rest), and as an event fails, laden or unladen. The
 * events and the rest of a cell are the laden ones. Where no limit was measured clearance is not judged. `cells` yields null between events, for
 * callers that share their time. Without `heights`, those of `mapHeights`.
 *
 * Errors: those of `impactSetupOf` and `levelAboveRest`.
 */
export function heightClassMap(
  fitment: Fitment,
  corner: Corner,
  heights: readonly number[] | null = null,
): Outcome<HeightClassMap> {
  const setup = impactSetupOf(fitment, corner, { loaded: true });
  if (!setup.ok) return setup;
  const rules = rulesOf(fitment.use, fitment.rules);
  const level = levelAboveRest(
    {
      totalMassKg: setup.value.sprungMassKg + setup.value.unsprungMassKg,
      tyreRateNPerMm: setup.value.tyreRateNPerMm,
      damperBumpNsPerMm: setup.value.damperBumpNsPerMm,
      damperReboundNsPerMm: setup.value.damperReboundNsPerMm,
      progressive: isProgressive(setup.value.stop),
    },
    rules,
  );
  if (!level.ok) return level;
  const neededMm = restOfSprings(setup.value) + level.value;
  const reserveAt: ReserveAt = (extraHeightMm) => {
    const spacerMm = (fitment.spacerMm ?? 0) + extraHeightMm;
    const taller = travelBudget({ ...fitment, spacerMm }, corner, rules.reserveMm);
    return taller.ok ? (taller.value.budget.limit?.reserveMm ?? null) : null;
  };
  const asItIs = travelBudget(fitment, corner, rules.reserveMm);
  const wantedMm = asItIs.ok ? (asItIs.value.budget.limit?.spacerMm ?? null) : null;
  const chosen = heights?.filter(Number.isFinite) ?? usualHeights(setup.value, wantedMm, neededMm);
  const rising = [...new Set([...chosen, 0])].sort((a, b) => a - b);
  const context: CellContext = {
    setup: setup.value,
    rules,
    duty: fitment.stop.duty,
    neededMm,
    rate: secantRate(setup.value.stop),
  };
  return succeed({
    secantRateNPerMm: context.rate,
    heights: rising,
    classes: stiffnessClasses,
    *cells() {
      const nearestFirst = [...rising].sort((a, b) => Math.abs(a) - Math.abs(b));
      for (const extraHeightMm of nearestFirst) {
        const reserveMm = reserveAt(extraHeightMm);
        for (const stiffnessClass of stiffnessClasses) {
          yield yield* cellOf(context, extraHeightMm, reserveMm, stiffnessClass);
        }
      }
    },
  });
}

interface CellContext {
  readonly setup: ImpactSetup;
  readonly rules: UseRules;
  readonly duty: "impact" | "carry";
  /** Wheel travel from the ride height that must be free, loaded, mm: z_need. */
  readonly neededMm: number;
  readonly rate: number;
}

/**
 * Reserve with the stop taller by so much, mm of wheel travel: of a beam axle the worse of both wheels
 * and one; null where no limit was measured, or the layout cannot move so far.
 */
type ReserveAt = (extraHeightMm: number) => number | null;

function* cellOf(
  context: CellContext,
  extraHeightMm: number,
  reserveMm: number | null,
  stiffnessClass: number,
): Generator<null, MapCell, void> {
  const { rules } = context;
  const { kinematics, stop } = context.setup;
  const failures = new Set<CellFailure>();
  const gapMm = context.setup.gapMm - extraHeightMm;
  const contact = kinematics.wheelTravel(gapMm);
  const full = kinematics.wheelTravel(gapMm + stop.usableCompressionMm);
  const contactMm = contact.ok ? contact.value : null;
  const fullStopMm = full.ok ? full.value : null;
  const place = { extraHeightMm, stiffnessClass, contactMm, fullStopMm, reserveMm };
  if (fullStopMm === null || (reserveMm !== null && reserveMm < rules.reserveMm)) {
    failures.add("clearance");
  }
  const scaled = settled(context.setup, {
    extraHeightMm,
    stopScale: stiffnessClass / context.rate,
  });
  if (!scaled.ok) {
    failures.add("notComputed");
    return { ...place, restTravelMm: null, events: [], failures: [...failures] };
  }
  const { restTravelMm } = scaled.value;
  if (context.duty === "carry") {
    const closing = kinematics.closing(restTravelMm);
    const pressed = closing.ok ? closing.value - gapMm : Number.POSITIVE_INFINITY;
    if (pressed > mostCarriedShare * stop.usableCompressionMm) failures.add("earlyContact");
  } else if (contactMm !== null && contactMm < context.neededMm) {
    failures.add("earlyContact");
  }
  const laden = yield* nullEach(tryEvents(scaled.value, rules));
  const alsoEmpty = laden.failures.length === 0 ? tryUnladen(scaled.value, rules) : null;
  const empty = alsoEmpty === null ? [] : yield* nullEach(alsoEmpty);
  for (const { kind } of [...laden.failures, ...empty]) failures.add(kind);
  return { ...place, restTravelMm, events: laden.results, failures: [...failures] };
}

/** The same steps with null between. */
function* nullEach<Value>(steps: Generator<void, Value, void>): Generator<null, Value, void> {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    yield null;
  }
}

/** Where the loaded vehicle would rest with nothing in the way, mm from the ride height. */
function restOfSprings({ payloadKg, heldAtRideN, wheelRateNPerMm }: ImpactSetup): number {
  return springRest(payloadForce(payloadKg), heldAtRideN, wheelRateNPerMm);
}

function usualHeights(
  { kinematics, gapMm }: ImpactSetup,
  wantedMm: number | null,
  neededMm: number,
): readonly number[] {
  const most = kinematics.closing(neededMm);
  return mapHeights(wantedMm, most.ok ? gapMm - most.value : null);
}

/** Steps from which the spacing of the map's heights is taken, mm. */
const spacings = [5, 10, 20, 50] as const;
const heightsEachSide = 6;

/**
 * Heights worth mapping, mm: 0 in the middle and evenly to both sides, far enough to hold what the
 * clearance wants and what early contact allows, each where known.
 */
export function mapHeights(wanted: number | null, most: number | null): readonly number[] {
  const reach = Math.max(Math.abs(wanted ?? 0), Math.abs(most ?? 0));
  const spacing = spacings.find((step) => step * heightsEachSide >= reach) ?? 50;
  return Array.from(
    { length: 2 * heightsEachSide + 1 },
    (_, place) => (place - heightsEachSide) * spacing,
  );
}
