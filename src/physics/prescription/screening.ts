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
import type { DrawnClosings, LimitClosings, StopDraws } from "../uncertainty/closingDraws.ts";
import { meanOf } from "../uncertainty/readingMean.ts";
import { mostOutsideShare } from "../verdict/cornerEvidence.ts";
import { decide, sureEnough } from "../verdict/decisions.ts";
import { carryState } from "../verdict/earlyContact.ts";
import { isUnknown, type JudgedCheck, leastOf } from "./judgement.ts";

/** How good a combination has to be. */
export type Wanted = "ok" | "care";

/** Clearance and early contact of one combination, as far as they are asked for. */
export interface Screening {
  /** Is it on every side as good as wanted, or not known for want of ride data? */
  isFine(check: "clearance" | "earlyContact", wanted: Wanted): boolean;
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
  readonly wheelTravelToContactMm: number;
  readonly stop: StopDraws;
  readonly reserveWanted: LimitClosings;
  readonly reserveLeft: LimitClosings;
  /** Laden and unladen; or the state of a stop made to carry, which needs no draws. */
  readonly travel: { readonly laden: DrawnClosings; readonly unladen: DrawnClosings } | State;
}

/** One probability of one side: −1 where it is surely below what was asked for; null: there is none. */
type Kept = (of: DrawnSide, least: number) => number | null;

const reserveWanted: Kept = ({ stop, reserveWanted: closings }, least) =>
  stop.reserveKept(closings, least);
const reserveLeft: Kept = ({ stop, reserveLeft: closings }, least) =>
  stop.reserveKept(closings, least);
const ladenKept: Kept = ({ stop, reserveWanted: inside, travel }, least) =>
  typeof travel === "string" ? null : stop.travelKept(inside, travel.laden, least);
const unladenKept: Kept = ({ stop, reserveWanted: inside, travel }, least) =>
  typeof travel === "string" ? null : stop.travelKept(inside, travel.unladen, least);

const kept = {
  clearance: { ok: reserveWanted, care: reserveLeft },
  earlyContact: { ok: ladenKept, care: unladenKept },
} as const;

/**
 * From closings that all combinations of a vehicle share, the same to the last draw; each probability only
 * as far as it decides. With a limit and, for stops made for impacts, all ride data.
 */
export class DrawnScreening implements Screening {
  readonly contact: Screening["contact"];
  readonly #sides: readonly DrawnSide[];
  readonly #whole = new Map<string, number | null>();

  constructor(sides: readonly DrawnSide[]) {
    this.contact = sides;
    this.#sides = sides;
  }

  /** Do closings not decide after all? */
  get escaped(): boolean {
    return this.#sides.some((side) => side.reserveWanted.escaped || side.reserveLeft.escaped);
  }

  isFine(check: "clearance" | "earlyContact", wanted: Wanted): boolean {
    const { ok, care } = kept[check];
    return this.#sides.every((side) =>
      check === "earlyContact" && typeof side.travel === "string"
        ? isAsGood(side.travel, wanted)
        : this.#reaches(`${check} ok`, side, ok) ||
          (wanted === "care" && this.#reaches(`${check} care`, side, care)),
    );
  }

  #reaches(name: string, side: DrawnSide, of: Kept): boolean {
    const key = `${side.side} ${name}`;
    const share = this.#whole.get(key) ?? of(side, sureEnough) ?? 1;
    if (share >= 0) this.#whole.set(key, share);
    return share >= sureEnough;
  }

  #share(name: string, side: DrawnSide, of: Kept): number | null {
    const key = `${side.side} ${name}`;
    const share = this.#whole.has(key) ? (this.#whole.get(key) ?? null) : of(side, 0);
    this.#whole.set(key, share);
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

  #state(check: "clearance" | "earlyContact", side: DrawnSide): State {
    if (check === "earlyContact" && typeof side.travel === "string") return side.travel;
    if (side.stop.outside(side.reserveWanted) > mostOutsideShare) return "unsure";
    const { ok, care } = kept[check];
    return decide(
      this.#share(`${check} ok`, side, ok) ?? 1,
      this.#share(`${check} care`, side, care) ?? 1,
    );
  }

  leastProbability(): number {
    return leastOf(
      this.#sides.flatMap((side) => [
        this.#share("clearance ok", side, reserveWanted),
        this.#share("earlyContact ok", side, ladenKept),
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
