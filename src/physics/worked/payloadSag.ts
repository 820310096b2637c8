import * as termNames from "../../words/compiled/physics/terms.ts";
import * as messages from "../../words/compiled/physics/worked.ts";
import { cornerAtMeans } from "../budget/cornerAtMeans.ts";
import { closingAt } from "../kinematics/closingAt.ts";
import { restingStop } from "../road/heldAtRide.ts";
import {
  payloadForce,
  payloadFormula,
  restPosition,
  sagFormulas,
  springRest,
  springRestFormulas,
  stopAtWheel,
  stopAtWheelFormula,
} from "../road/restPosition.ts";
import { contactFromRest, fromRestFormulas } from "../road/roadTravel.ts";
import { standardGravity } from "../standardGravity.ts";
import type { CornerContext } from "./cornerContext.ts";
import { type FormulaStep, step } from "./step.ts";
import {
  type FormulaSymbol,
  mm,
  quantity,
  type WorkedFigure,
  type Working,
} from "./workedFigure.ts";

/** Payload times gravity, as a formula has it for one term. */
const loadTerm = messages.payloadTimesGravity({ payload: termNames.payload });

export interface Sag extends Working {
  readonly symbols: readonly FormulaSymbol[];
}

/** Where the vehicle comes to rest, on its stop where it reaches that; unladen without its payload. */
function restWorking(context: CornerContext, laden: boolean): Sag | undefined {
  const payload = laden ? context.fitment.ride?.payloadPerCornerKg : 0;
  const rate = context.fitment.ride?.wheelRateNPerMm;
  const atMeans = cornerAtMeans(context.fitment, context.corner);
  if (payload === undefined || !atMeans.ok) return undefined;
  const { kinematics } = atMeans.value;
  const resting = restingStop(context.fitment, context.corner, kinematics);
  if (!resting.ok) return undefined;
  const { stop, gapMm, heldAtRideN } = resting.value;
  const asMeasured = payload === 0 && heldAtRideN === 0 && gapMm >= 0;
  if (!laden && asMeasured) return { value: 0, steps: [], symbols: [] };
  if (rate === undefined) return asMeasured ? { value: 0, steps: [], symbols: [] } : undefined;
  const rest = restPosition({ kinematics, ...resting.value, wheelRateNPerMm: rate }, payload);
  if (!rest.ok) return undefined;
  const sag = rest.value;
  const { closingMm: closing, perMm: slope } = closingAt(kinematics, sag);
  const stopForce = stop.force(closing - gapMm);
  const atWheel = stopAtWheel(stopForce, slope);
  const load = payloadForce(payload);
  const touches = closing > gapMm;
  const held = heldAtRideN > 0;
  const letters = {
    payload: { name: termNames.payload, value: quantity("mass", payload) },
    gₙ: `${standardGravity} m/s²`,
    kw: quantity("rate", rate),
    F_rec: quantity("force", heldAtRideN),
    F_stop: quantity("force", stopForce),
    "ds/dz": quantity("count", slope),
  };
  const balance = {
    ...letters,
    load: { name: loadTerm, value: quantity("force", load) },
    "F_stop·ds/dz": quantity("force", atWheel),
  };
  const formula = touches
    ? sagFormulas[held ? "heldTouching" : "touching"]
    : sagFormulas[held ? "held" : "free"];
  const steps: FormulaStep[] = [
    step(payloadFormula, letters, quantity("force", load)),
    ...(touches ? [step(stopAtWheelFormula, letters, quantity("force", atWheel))] : []),
    step(formula, balance, mm(sag)),
  ];
  return {
    value: sag,
    steps,
    symbols: sagSymbols(payload, rate, heldAtRideN),
  };
}

function sagSymbols(payload: number, rate: number, heldAtRideN: number): FormulaSymbol[] {
  return [
    {
      symbol: termNames.payload,
      meaning: messages.loadThisWheelCarries,
      value: quantity("mass", payload),
      origin: messages.rideData,
    },
    {
      symbol: "gₙ",
      meaning: messages.standardGravity,
      value: `${standardGravity} m/s²`,
      origin: messages.nistSp811,
    },
    {
      symbol: "kw",
      meaning: messages.wheelRate,
      value: quantity("rate", rate),
      origin: messages.rideData,
    },
    ...(heldAtRideN > 0
      ? [
          {
            symbol: "F_rec",
            meaning: messages.whatStopHeldUp,
            value: quantity("force", heldAtRideN),
            origin: messages.staticCurveOfStop,
          },
        ]
      : []),
  ];
}

export function sagWorking(context: CornerContext): Sag | undefined {
  return restWorking(context, true);
}

/** Where the vehicle would come to rest with nothing in the way: what the free travel needed begins at. */
export function springRestWorking(context: CornerContext, laden: boolean): Sag | undefined {
  const payload = laden ? context.fitment.ride?.payloadPerCornerKg : 0;
  const rate = context.fitment.ride?.wheelRateNPerMm;
  const atMeans = cornerAtMeans(context.fitment, context.corner);
  if (payload === undefined || !atMeans.ok) return undefined;
  const { kinematics } = atMeans.value;
  const resting = restingStop(context.fitment, context.corner, kinematics);
  if (!resting.ok) return undefined;
  const { heldAtRideN } = resting.value;
  if (payload === 0 && heldAtRideN === 0) return { value: 0, steps: [], symbols: [] };
  if (rate === undefined) return undefined;
  const load = payloadForce(payload);
  const value = springRest(load, heldAtRideN, rate);
  const letters = {
    load: { name: loadTerm, value: quantity("force", load) },
    F_rec: quantity("force", heldAtRideN),
    kw: quantity("rate", rate),
  };
  return {
    value,
    steps: [step(springRestFormulas[heldAtRideN > 0 ? "held" : "free"], letters, mm(value))],
    symbols: sagSymbols(payload, rate, heldAtRideN),
  };
}

export function payloadSag(context: CornerContext): WorkedFigure | undefined {
  const sag = sagWorking(context);
  return sag && sag.steps.length > 0
    ? {
        symbols: sag.symbols,
        steps: sag.steps,
        source: messages.staticBalanceByVirtual,
        assumed: [messages.linearRideSpring],
      }
    : undefined;
}

export function contactFromRestWorking(
  context: CornerContext,
  laden: boolean,
): Working | undefined {
  const sag = restWorking(context, laden);
  if (!sag) return undefined;
  const contact = context.layout.wheelTravel(context.gap, "g");
  const value = contactFromRest(contact.value, sag.value);
  const letters = {
    z_c: mm(contact.value),
    sag: { name: termNames.sag, value: mm(sag.value) },
    restWithoutPayload: { name: termNames.restWithoutPayload, value: mm(sag.value) },
  };
  return {
    value,
    steps: [step(fromRestFormulas[laden ? "loaded" : "unladen"], letters, mm(value))],
  };
}

export function loadedTravelToContact(context: CornerContext): WorkedFigure | undefined {
  const working = contactFromRestWorking(context, true);
  return (
    working && {
      symbols: [],
      steps: working.steps,
      source: messages.differenceOfTwoTravels,
      assumed: [messages.countedFromWhereLoaded],
    }
  );
}
