import type {
  Corner,
  Fitment,
  FullTravelCheck,
  FullTravelCorner,
  Interval,
  Side,
} from "../fitment.ts";
import { type Outcome, succeed } from "../outcome.ts";
import { paired } from "../paired.ts";
import { isAngle } from "../readings/definitionOf.ts";
import { type DrawnReading, standardUncertainty } from "../uncertainty/drawnReading.ts";
import { type ContactModel, contactModel } from "./contactModel.ts";
import {
  covarianceOf,
  doubtsOf,
  minus,
  numbersAt,
  type SlopesOfReading,
  uncertaintiesOf,
} from "./differences.ts";
import type { MetPart, SuspectId } from "./fullTravelCheck.ts";
import { contactsOf, type HandTravels, handTravels } from "./handTravel.ts";
import { type Explanation, likeliestWrong, type Suspect } from "./likeliestWrong.ts";
import { coverage95, leastUncertaintyMm, normalisedError } from "./normalisedError.ts";

/** One contact as found by hand beside what was computed, mm of wheel travel from the ride height. */
export interface ComparedContact {
  readonly part: MetPart;
  readonly measuredMm: number;
  /** ± at 95 %. */
  readonly measuredHalfMm: number;
  /** Null: nothing in the check says where this touches. */
  readonly computed: {
    readonly travelMm: number;
    /** 95 %, first order. */
    readonly interval: Interval;
    readonly differenceMm: number;
    /** ± at 95 % of the difference. */
    readonly doubtMm: number;
    readonly normalisedError: number;
    readonly agrees: boolean;
  } | null;
  /** Everything but the stop: what is left of the travel after the stop is fully pressed. */
  readonly afterFullStop: {
    readonly leftMm: number;
    /** ± at 95 %. */
    readonly halfMm: number;
    /** ok: after full stop, no: before it, unsure: within the doubt. */
    readonly state: "ok" | "unsure" | "no";
  } | null;
  /** It touched before the stop was met, both as found by hand. */
  readonly beforeStop: boolean;
}

export interface ComparedCorner {
  readonly side: Side;
  readonly contacts: readonly ComparedContact[];
  /** Every contact that could be compared agrees; null: none could. */
  readonly agrees: boolean | null;
  /** What is likeliest wrong, the likeliest first; empty where all agree. */
  readonly explanations: readonly Explanation<SuspectId>[];
}

const millimetresPerInch = 25.4;
/** How far off a reading is once it is wrong, where its own ± says less. Common practice, no source. */
const grossLength = 5;
const grossAngle = 3;
const grossFactor = 10;
/** … of a wheel travel per travel of the outer joint, a bare number. Common practice, no source. */
const grossRatio = 0.1;

/**
 * Compares a hand-cycled check with what is computed from the readings, side by side.
 *
 * Per contact: agreement by the normalised error. u of the computed travel is first order,
 * √Σ(∂z/∂x_i·u_i)² (JCGM 100:2008, 5.1.2). Where a contact differs by more than its doubt, the single
 * reading that would explain all differences best is named (`likeliestWrong`); besides the check's own
 * readings the hand check's count as suspects: the travel at each contact, and the ride height that
 * all are counted from. A side without any contact is left out.
 *
 * Errors: those of `cornerReadings` and `handTravels`.
 */
export function compareFullTravel(
  fitment: Fitment,
  check: FullTravelCheck,
): Outcome<readonly ComparedCorner[]> {
  const compared: ComparedCorner[] = [];
  for (const own of check.corners) {
    const corner = fitment.corners.find(({ side }) => side === own.side);
    if (corner === undefined || contactsOf(own).length === 0) continue;
    const result = compareCorner(fitment, corner, check, own);
    if (!result.ok) return result;
    compared.push(result.value);
  }
  return succeed(compared);
}

function compareCorner(
  fitment: Fitment,
  corner: Corner,
  check: FullTravelCheck,
  own: FullTravelCorner,
): Outcome<ComparedCorner> {
  const hand = handTravels(check, own);
  if (!hand.ok) return hand;
  const { block } = own;
  const computed = contactModel(
    fitment,
    corner,
    check.movement,
    block === undefined
      ? null
      : { id: `fullTravel.${own.side}.block.blockHeight`, reading: block.blockHeight },
  );
  if (!computed.ok) return computed;
  const model = computed.value;
  const parts = contactsOf(own).map(([part]) => part);
  const travels = model.travels([...parts, "fullStop"]);
  const fullStop = travels.at(-1) ?? Number.NaN;
  const inputs = paired(model.readings, model.sensitivities([...parts, "fullStop"])).map(
    ([reading, slopes]) => ({ reading, slopes, uncertainty: standardUncertainty(reading) }),
  );
  const uncertainties = uncertaintiesOf(inputs, parts.length + 1);
  const fullStopUncertainty = uncertainties.at(-1) ?? 0;
  const shared = hand.value.sharedUncertaintyMm;
  const stop = hand.value.travels.find(({ part }) => part === "stop");

  const contacts = paired(paired(hand.value.travels, travels), uncertainties).map(
    ([[{ part, travelMm, ownUncertaintyMm }, at], u]): ComparedContact => {
      const measured = Math.hypot(ownUncertaintyMm, shared);
      const half = coverage95 * u;
      const error = normalisedError(travelMm - at, measured, u);
      const left = travelMm - fullStop;
      const leftHalf = coverage95 * Math.hypot(measured, fullStopUncertainty);
      return {
        part,
        measuredMm: travelMm,
        measuredHalfMm: coverage95 * measured,
        computed: Number.isFinite(at)
          ? {
              travelMm: at,
              interval: [at - half, at + half],
              differenceMm: travelMm - at,
              doubtMm: coverage95 * Math.max(Math.hypot(measured, u), leastUncertaintyMm),
              normalisedError: error,
              agrees: Math.abs(error) <= 1 && isUsualFactor(part, travelMm, at),
            }
          : null,
        afterFullStop:
          part === "stop" || part === "block" || !Number.isFinite(left)
            ? null
            : {
                leftMm: left,
                halfMm: leftHalf,
                state: left > leftHalf ? "ok" : left < -leftHalf ? "no" : "unsure",
              },
        beforeStop: stop !== undefined && travelMm < stop.travelMm,
      };
    },
  );
  const comparable = contacts.filter(({ computed }) => computed !== null);
  const agrees =
    comparable.length === 0 ? null : comparable.every(({ computed }) => computed?.agrees === true);
  return succeed({
    side: own.side,
    contacts,
    agrees,
    explanations: agrees === false ? explain(check, own, model, hand.value, contacts, inputs) : [],
  });
}

/** Travel by hand over computed that a planar model may be off at most. Provisional. */
const usualFactor: Interval = [0.85, 1.18];

/** Of stop and block, whose contacts go before the model: a factor beyond that is a wrong input. */
function isUsualFactor(part: MetPart, byHandMm: number, computedMm: number): boolean {
  if (part !== "stop" && part !== "block") return true;
  if (!(byHandMm >= leastUsedMm && computedMm >= leastUsedMm)) return true;
  const factor = byHandMm / computedMm;
  return factor >= usualFactor[0] && factor <= usualFactor[1];
}

/** A contact within so little travel is not used, and tells no factor, mm. */
const leastUsedMm = 5;

/** A reading of the check, with how far each contact and full stop move with it. */
interface Input extends SlopesOfReading {
  readonly reading: DrawnReading;
}

/** What may be wrong, with the covariance of the differences under the stated uncertainties alone. */
function explain(
  check: FullTravelCheck,
  own: FullTravelCorner,
  model: ContactModel,
  hand: HandTravels,
  contacts: readonly ComparedContact[],
  allInputs: readonly Input[],
): readonly Explanation<SuspectId>[] {
  const kept = paired(hand.travels, contacts).flatMap(([travel, { computed }], index) =>
    computed === null ? [] : [{ ...travel, index, difference: computed.differenceMm }],
  );
  const parts = kept.map(({ part }) => part);
  const differences = Float64Array.from(kept, ({ difference }) => difference);
  const places = kept.map(({ index }) => index);
  const inputs = allInputs.map((input) => ({ ...input, slopes: numbersAt(input.slopes, places) }));
  const covariance = kept.map(({ ownUncertaintyMm }, row) =>
    Float64Array.from(kept, (_, column) => {
      const diagonal =
        row === column ? Math.max(ownUncertaintyMm ** 2, leastUncertaintyMm ** 2) : 0;
      return covarianceOf(inputs, row, column) + hand.sharedUncertaintyMm ** 2 + diagonal;
    }),
  );
  const doubts = doubtsOf(covariance);
  const middle = model.travels(parts);
  const place = `fullTravel.${own.side}` as const;
  const ones = new Float64Array(parts.length).fill(1);
  const sense = check.measure === "hubToArch" ? -1 : 1;
  const taken = kept.map(({ part, readingMm, ownUncertaintyMm }, row) => {
    const unit = Float64Array.from(kept, (_, column) => (row === column ? 1 : 0));
    return handSuspect(`${place}.${part}`, ownUncertaintyMm, unit, { value: readingMm, sense });
  });
  return likeliestWrong(differences, covariance, doubts, [
    ...inputs
      .filter(({ reading }) => !isModelDoubt(reading))
      .map(({ reading, slopes }) => inputSuspect(model, reading, slopes, parts, middle)),
    handSuspect(`${place}.atRide`, hand.sharedUncertaintyMm, ones, null),
    ...taken,
  ]);
}

/** What the model itself may be off is no input that somebody got wrong. */
function isModelDoubt({ id }: DrawnReading): boolean {
  return id === "linkage" || id === "stop.usableCompressionMm";
}

function inputSuspect(
  model: ContactModel,
  reading: DrawnReading,
  slopes: Float64Array,
  parts: readonly MetPart[],
  middle: Float64Array,
): Suspect<SuspectId> {
  const { id, mean } = reading;
  const angle = isAngle(id);
  const ratio = id === "wheelPerOuter";
  const uncertainty = standardUncertainty(reading);
  return {
    id,
    wouldBe: (change) => mean + change,
    grossError: Math.max(
      grossFactor * uncertainty,
      angle ? grossAngle : ratio ? grossRatio : grossLength,
    ),
    slopes,
    caused: (change) => minus(model.travels(parts, { id, value: mean + change }), middle),
    slips: angle
      ? [{ slip: "sign", change: -2 * mean }]
      : ratio
        ? []
        : [
            { slip: "unit", change: mean * millimetresPerInch - mean },
            { slip: "unit", change: mean / millimetresPerInch - mean },
          ],
  };
}

/**
 * A reading of the hand check itself, or (null) where its travels start. One that makes the travel too
 * long makes the difference so much longer. `sense`: travel per mm of the reading, −1 for a height.
 */
function handSuspect(
  id: SuspectId,
  uncertainty: number,
  slopes: Float64Array,
  reading: { readonly value: number; readonly sense: 1 | -1 } | null,
): Suspect<SuspectId> {
  const slips =
    reading === null
      ? []
      : [reading.value / millimetresPerInch, reading.value * millimetresPerInch].map((other) => ({
          slip: "unit" as const,
          change: reading.sense * (reading.value - other),
        }));
  return {
    id,
    wouldBe: (change) => (reading === null ? null : reading.value - reading.sense * change),
    grossError: Math.max(grossFactor * uncertainty, grossLength),
    slopes,
    caused: (change) => slopes.map((slope) => slope * change),
    slips,
  };
}
