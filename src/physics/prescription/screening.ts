import { carriedCompression, type PreparedCorner } from "../assess.ts";
import type { CornerBudget } from "../budget/travelBudget.ts";
import type {
  Assessment,
  CheckId,
  CornerAssessment,
  Fitment,
  Reading,
  Side,
  State,
  UseRules,
} from "../fitment.ts";
import type { DrawnClosings, LimitClosings } from "../uncertainty/closingDraws.ts";
import type { KeptShare } from "../uncertainty/keptShare.ts";
import { meanOf } from "../uncertainty/readingMean.ts";
import type { StopDraws } from "../uncertainty/stopDraws.ts";
import { mostOutsideShare } from "../verdict/cornerEvidence.ts";
import { type AskedProbability, decideBy, sureEnough } from "../verdict/decisions.ts";
import { carryState } from "../verdict/earlyContact.ts";
import { isUnknown, type JudgedCheck, leastOf } from "./judgement.ts";

/** How good a combination has to be. */
export type Wanted = "ok" | "care";

export type ScreenedCheck = "clearance" | "earlyContact";

/** Clearance and early contact of one combination, as far as they are asked for. */
export interface Screening {
  /** Is it on every side as good as wanted, or not known for want of ride data? */
  isFine(check: ScreenedCheck, wanted: Wanted): boolean;
  /** Do a few of the draws tell already that it is not? */
  isOut(check: ScreenedCheck, wanted: Wanted): boolean;
  /** The two checks, on every side. */
  checks(): readonly JudgedCheck[];
  /** The least of the probabilities of both, over the sides; 1 where there is none. */
  leastProbability(): number;
  /** Wheel travel to contact at the mean readings. */
  readonly contact: readonly { readonly side: Side; readonly wheelTravelToContactMm: number }[];
}

const allowed: Readonly<Record<Wanted, readonly State[]>> = {
  ok: ["ok"],
  care: ["ok", "care"],
};

export function isAsGood(state: State, wanted: Wanted): boolean {
  return allowed[wanted].includes(state);
}

/** From an assessment of its own. */
export class AssessedScreening implements Screening {
  readonly contact: readonly CornerAssessment[];
  readonly #checks: readonly JudgedCheck[];

  constructor({ corners }: Assessment, hasEvents: boolean) {
    this.contact = corners;
    this.#checks = corners.flatMap((corner) =>
      corner.checks
        .filter(({ id }) => id === "clearance" || id === "earlyContact")
        .map((check) => ({
          side: corner.side,
          check: check.id,
          state: check.state,
          unknown: isUnknown(check, corner, hasEvents),
        })),
    );
  }

  isFine(id: CheckId, wanted: Wanted): boolean {
    return this.#checks.every(
      ({ check, state, unknown }) => check !== id || unknown || isAsGood(state, wanted),
    );
  }

  isOut(id: ScreenedCheck, wanted: Wanted): boolean {
    return !this.isFine(id, wanted);
  }

  checks(): readonly JudgedCheck[] {
    return this.#checks;
  }

  leastProbability(): number {
    return leastOf(
      this.contact.flatMap((corner) => [
        corner.clearanceProbability,
        corner.earlyContactProbability,
      ]),
    );
  }
}

/** One side of one stop at one height, and the closings that decide about it. */
export interface DrawnSide {
  readonly side: Side;
  /** Both at the mean readings. */
  readonly wheelTravelToContactMm: number;
  readonly reserveMm: number;
  readonly stop: StopDraws;
  readonly reserveWanted: LimitClosings;
  readonly reserveLeft: LimitClosings;
  /** Laden and unladen; or the state of a stop made to carry, which needs no draws. */
  readonly travel: { readonly laden: DrawnClosings; readonly unladen: DrawnClosings } | State;
}

/** One probability of one side; null: there is none. */
type Kept = (of: DrawnSide) => KeptShare | null;

const kept: {
  readonly [Check in ScreenedCheck]: { readonly [Wanting in Wanted]: Kept };
} = {
  clearance: {
    ok: ({ stop, reserveWanted }) => stop.reserveKept(reserveWanted),
    care: ({ stop, reserveLeft }) => stop.reserveKept(reserveLeft),
  },
  earlyContact: {
    ok: ({ stop, reserveWanted, travel }) =>
      typeof travel === "string" ? null : stop.travelKept(reserveWanted, travel.laden),
    care: ({ stop, reserveWanted, travel }) =>
      typeof travel === "string" ? null : stop.travelKept(reserveWanted, travel.unladen),
  },
};

const surely: AskedProbability = { isAtLeast: () => true, isAbove: () => true };

/** Draws that tell of most combinations that they are out. */
const few = 4000;

/**
 * From closings that all combinations of a vehicle share, the same to the last draw; each probability only
 * as far as it decides. With a limit and, for stops made for impacts, all ride data.
 */
export class DrawnScreening implements Screening {
  readonly contact: Screening["contact"];
  readonly #sides: readonly DrawnSide[];
  /** The side that is likelier not as wanted first. */
  readonly #likelier: { readonly [Check in ScreenedCheck]: readonly DrawnSide[] };
  readonly #shares = new Map<string, KeptShare | null>();

  constructor(sides: readonly DrawnSide[]) {
    this.contact = sides;
    this.#sides = sides;
    const rising = (of: (side: DrawnSide) => number) =>
      [...sides].sort((one, other) => of(one) - of(other));
    this.#likelier = {
      clearance: rising(({ reserveMm }) => reserveMm),
      earlyContact: rising(({ wheelTravelToContactMm }) => wheelTravelToContactMm),
    };
  }

  /** Do closings not decide after all? */
  get escaped(): boolean {
    return this.#sides.some((side) => side.reserveWanted.escaped || side.reserveLeft.escaped);
  }

  isFine(check: ScreenedCheck, wanted: Wanted): boolean {
    return this.#likelier[check].every((side) =>
      check === "earlyContact" && typeof side.travel === "string"
        ? isAsGood(side.travel, wanted)
        : this.#asked(check, "ok", side).isAtLeast(sureEnough) ||
          (wanted === "care" && this.#asked(check, "care", side).isAtLeast(sureEnough)),
    );
  }

  isOut(check: ScreenedCheck, wanted: Wanted): boolean {
    return this.#likelier[check].some((side) =>
      check === "earlyContact" && typeof side.travel === "string"
        ? !isAsGood(side.travel, wanted)
        : this.#isBelow(check, "ok", side) &&
          (wanted === "ok" || this.#isBelow(check, "care", side)),
    );
  }

  #isBelow(check: ScreenedCheck, wanting: Wanted, side: DrawnSide): boolean {
    return this.#share(check, wanting, side)?.isBelow(sureEnough, few) ?? false;
  }

  #asked(check: ScreenedCheck, wanting: Wanted, side: DrawnSide): AskedProbability {
    return this.#share(check, wanting, side) ?? surely;
  }

  /** Each is counted once, whoever asks. */
  #share(check: ScreenedCheck, wanting: Wanted, side: DrawnSide): KeptShare | null {
    const key = `${side.side} ${check} ${wanting}`;
    const known = this.#shares.get(key);
    if (known !== undefined) return known;
    const share = kept[check][wanting](side);
    this.#shares.set(key, share);
    return share;
  }

  checks(): readonly JudgedCheck[] {
    return this.#sides.flatMap((side) =>
      (["clearance", "earlyContact"] as const).map((check) => ({
        side: side.side,
        check,
        state: this.#state(check, side),
        unknown: false,
      })),
    );
  }

  #state(check: ScreenedCheck, side: DrawnSide): State {
    if (check === "earlyContact" && typeof side.travel === "string") return side.travel;
    if (side.reserveWanted.outsideShare() > mostOutsideShare) return "unsure";
    return decideBy(this.#asked(check, "ok", side), this.#asked(check, "care", side));
  }

  leastProbability(): number {
    return leastOf(
      this.#sides.flatMap((side) => [
        this.#share("clearance", "ok", side)?.value() ?? null,
        this.#share("earlyContact", "ok", side)?.value() ?? null,
      ]),
    );
  }
}

/** Is the stop shorter when fully compressed than it is high in every draw? Else a draw may give no stop. */
export function surelySolid(
  { stop }: Pick<Fitment, "stop">,
  { places }: Pick<CornerBudget, "places">,
): boolean {
  const { freeHeight, usableCompressionMm } = stop;
  const usableTol = places.all[places.usable]?.drawn.halfWidth ?? 0;
  return usableCompressionMm + usableTol < meanOf(freeHeight) - mostOff(freeHeight);
}

const mostDeviations = 6;

/** By how much no draw of a reading lies off its mean, mm: the ± and six standard errors. */
export function mostOff({ values, tol }: Reading): number {
  const spread = values.length < 2 ? 0 : Math.max(...values) - Math.min(...values);
  return tol + mostDeviations * spread;
}

/** Of a stop made to carry, which no draw decides about; null where its load is not known. */
export function carryStateOf(
  fitment: Fitment,
  corner: PreparedCorner,
  rules: UseRules,
): State | null {
  const compression = carriedCompression(fitment, corner, rules);
  const { loadedCompressionMm, estimatedCompressionMm } = compression;
  return loadedCompressionMm === null
    ? null
    : carryState(fitment.stop, loadedCompressionMm, estimatedCompressionMm);
}
