import * as messages from "../../words/compiled/physics/worked.ts";
import type { RoadClass } from "../fitment.ts";
import { crossingFormulas, zeroUpcrossingsPerSecond } from "../road/levelCrossings.ts";
import { roadSigma, sigmaFormula } from "../road/roadTravel.ts";
import { referenceFrequency, roughness } from "../road/roughness.ts";
import type { Message } from "../sentence.ts";
import type { CornerContext } from "./cornerContext.ts";
import { meanOf, originOf } from "./measured.ts";
import { step } from "./step.ts";
import { type FormulaSymbol, mm, quantity, type Working } from "./workedFigure.ts";

export const screeningAssumptions: readonly Message[] = [
  messages.linearConstantSpringAnd,
  messages.randomRoadOfOne,
  messages.oneCornerAloneNo,
  messages.screeningFigureNotForecast,
];

export interface RoadInputs {
  readonly mass: number;
  readonly damping: number;
  readonly speed: number;
  readonly roadClass: RoadClass;
  readonly roughness: number;
  readonly symbols: readonly FormulaSymbol[];
  readonly laden: boolean;
}

export function roadInputs(context: CornerContext, laden: boolean): RoadInputs | undefined {
  const { ride } = context.fitment;
  const { cornerMassKg } = context.corner;
  const { damperBumpNsPerMm: bump, damperReboundNsPerMm: rebound } = ride ?? {};
  const payload = laden ? ride?.payloadPerCornerKg : 0;
  if (!cornerMassKg || bump === undefined || rebound === undefined || payload === undefined) {
    return undefined;
  }
  const { rules } = context;
  const mass = meanOf(cornerMassKg) + payload;
  const damping = (1000 * (bump + rebound)) / 2;
  const speed = rules.speedKmPerH / 3.6;
  const gd = roughness[rules.roadClass];
  const rule = messages.rulesOfThisCheck({
    hasRules: Boolean(context.fitment.rules),
    use: context.fitment.use,
  });
  return {
    mass,
    damping,
    speed,
    roadClass: rules.roadClass,
    roughness: gd,
    laden,
    symbols: [
      {
        symbol: "n0",
        meaning: messages.referenceSpatialFrequency,
        value: messages.cycleM({ referenceFrequency }),
        origin: messages.iso8608,
      },
      {
        symbol: "Gd",
        meaning: messages.roughnessOfRoadClass({ roadClass: rules.roadClass }),
        value: [quantity("count", gd * 1e6), " · 10⁻⁶ m³"],
        origin: messages.iso86082016Table({ rule }),
      },
      {
        symbol: "V",
        meaning: messages.speed,
        value: [quantity("count", speed), " m/s"],
        origin: rule,
      },
      {
        symbol: "M",
        meaning: laden ? messages.massOnThisWheel : messages.massOnThisWheel2,
        value: quantity("mass", mass),
        origin: laden
          ? messages.plusPayload({ origin: originOf(cornerMassKg) })
          : originOf(cornerMassKg),
      },
      {
        symbol: "c",
        meaning: messages.dampingAtWheelMean,
        value: [quantity("count", damping), " N·s/m"],
        origin: messages.rideData,
      },
    ],
  };
}

export function sigmaWorking(given: RoadInputs): Working {
  const value = roadSigma(given.roadClass, given.speed, given.mass, given.damping);
  const letters = {
    n0: `${referenceFrequency}`,
    Gd: [quantity("count", given.roughness * 1e6), " · 10⁻⁶"],
    V: quantity("count", given.speed),
    M: quantity("count", given.mass),
    c: quantity("count", given.damping),
  };
  return { value, steps: [step(sigmaFormula, letters, mm(value))] };
}

export const sigmaSource = messages.roadIso86082016;

export function crossingsWorking(context: CornerContext, given: RoadInputs): Working | undefined {
  const tyreRate = context.fitment.ride?.tyreRateNPerMm;
  if (tyreRate === undefined) return undefined;
  const value = zeroUpcrossingsPerSecond(1000 * tyreRate, given.mass);
  const letters = {
    kt: quantity("count", 1000 * tyreRate),
    M: quantity("count", given.mass),
  };
  return {
    value,
    steps: [step(crossingFormulas.zeroUpcrossings, letters, quantity("count", value))],
  };
}

export function tyreSymbol(context: CornerContext): FormulaSymbol {
  return {
    symbol: "kt",
    meaning: messages.tireRate,
    value: quantity("rate", context.fitment.ride?.tyreRateNPerMm ?? 0),
    origin: messages.rideData,
  };
}
