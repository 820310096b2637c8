import type { RoadClass } from "../fitment.ts";
import { crossingFormulas, zeroUpcrossingsPerSecond } from "../road/levelCrossings.ts";
import { roadSigma, sigmaFormula } from "../road/roadTravel.ts";
import { referenceFrequency, roughness } from "../road/roughness.ts";
import type { CornerContext } from "./cornerContext.ts";
import { meanOf, originOf } from "./measured.ts";
import { plain } from "./plainNumber.ts";
import { step } from "./step.ts";
import { type FormulaSymbol, mm, quantity, type Working } from "./workedFigure.ts";

export const screeningAssumptions: readonly string[] = [
  "Linear: constant spring and tire rates, one damping for bump and rebound.",
  "Random road of one class at one speed.",
  "One corner alone: no roll, no pitch, no steering.",
  "A screening figure, not a forecast.",
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
  const rule = `${context.fitment.rules ? "rules of this check" : `default for ${context.fitment.use} use`}, common practice`;
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
        meaning: "reference spatial frequency",
        value: `${referenceFrequency} cycle/m`,
        origin: "ISO 8608",
      },
      {
        symbol: "Gd",
        meaning: `roughness of road class ${rules.roadClass} at n0`,
        value: `${plain(gd * 1e6)} · 10⁻⁶ m³`,
        origin: `ISO 8608:2016, Table C.2; class: ${rule}`,
      },
      { symbol: "V", meaning: "speed", value: `${plain(speed)} m/s`, origin: rule },
      {
        symbol: "M",
        meaning: laden ? "mass on this wheel with payload" : "mass on this wheel",
        value: quantity("mass", mass),
        origin: originOf(cornerMassKg) + (laden ? ", plus payload" : ""),
      },
      {
        symbol: "c",
        meaning: "damping at the wheel, mean of bump and rebound",
        value: `${plain(damping)} N·s/m`,
        origin: "ride data",
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

export const sigmaSource =
  "Road: ISO 8608:2016. Variance of travel of the linear quarter car on white road velocity. Derived, checked against the Lyapunov equation. Subject of Dahlberg, J. Sound Vib. 58 (1978) 179.";

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
    meaning: "tire rate",
    value: quantity("rate", context.fitment.ride?.tyreRateNPerMm ?? 0),
    origin: "ride data",
  };
}
