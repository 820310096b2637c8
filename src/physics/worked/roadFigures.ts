import { crossingShare, levelOfShare } from "../road/levelCrossings.ts";
import { progressiveContactFactor } from "../road/roadTravel.ts";
import type { CornerContext } from "./cornerContext.ts";
import { contactFromRestWorking, type Sag, springRestWorking } from "./payloadSag.ts";
import { plain } from "./plainNumber.ts";
import {
  crossingsWorking,
  roadInputs,
  screeningAssumptions,
  sigmaSource,
  sigmaWorking,
  tyreSymbol,
} from "./roadResponse.ts";
import { type FormulaStep, mm, quantity, type WorkedFigure } from "./workedFigure.ts";

export function roadTravelSigma(context: CornerContext): WorkedFigure | undefined {
  const given = roadInputs(context, false);
  return (
    given && {
      symbols: given.symbols,
      steps: sigmaWorking(given).steps,
      source: sigmaSource,
      assumed: screeningAssumptions,
    }
  );
}

const crossingSource = {
  3: "Upcrossings of a Gaussian motion: Rice, Bell Syst. Tech. J. 23/24 (1944/45). Road: ISO 8608:2016.",
  5: "Upcrossings of a Gaussian motion (Rice, Bell Syst. Tech. J. 23/24) whose variance is gamma distributed along the road (Johannesson, Podgórski, Rychlik 2017). Road: ISO 8608:2016. The kurtosis of 5 is common practice.",
} as const;

export function contactsPerKm(context: CornerContext, laden: boolean): WorkedFigure | undefined {
  const given = roadInputs(context, laden);
  const crossings = given && crossingsWorking(context, given);
  const travel = contactFromRestWorking(context, laden);
  if (!given || !crossings || !travel) return undefined;
  const { roadKurtosis } = context.rules;
  const sigma = sigmaWorking(given);
  const sigmas = Math.max(travel.value, 0) / sigma.value;
  const uneven = crossingShare(sigmas, roadKurtosis) > crossingShare(sigmas, 3);
  const level = mm(Math.max(travel.value, 0));
  const value = ((crossings.value * 1000) / given.speed) * crossingShare(sigmas, roadKurtosis);
  const ratio: FormulaStep = {
    formula: "u = √3·z/σ",
    worked: ["√3 · (", level, ") / (", mm(sigma.value), ")"],
    result: quantity("count", Math.sqrt(3) * sigmas),
  };
  return {
    symbols: [
      ...given.symbols,
      tyreSymbol(context),
      {
        symbol: "z",
        meaning: laden ? "travel to contact, loaded" : "travel to contact",
        value: mm(travel.value),
        origin: "computed above",
      },
    ],
    steps: [
      ...sigma.steps,
      ...crossings.steps,
      ...(uneven ? [ratio] : []),
      {
        formula: uneven
          ? "contacts/km = ν0·(1000/V)·(1 + u)·exp(−u)"
          : "contacts/km = ν0·(1000/V)·exp(−z²/2σ²)",
        worked: uneven
          ? [
              `${plain(crossings.value)} · (1000 / ${plain(given.speed)}) · (1 + `,
              ratio.result,
              ") · exp(−",
              ratio.result,
              ")",
            ]
          : [
              `${plain(crossings.value)} · (1000 / ${plain(given.speed)}) · exp[−(`,
              level,
              ")² / (2 · (",
              mm(sigma.value),
              ")²)]",
            ],
        result: quantity("count", value),
      },
    ],
    source: crossingSource[roadKurtosis],
    assumed: screeningAssumptions,
  };
}

function neededWorking(context: CornerContext, laden: boolean): Sag | undefined {
  const given = roadInputs(context, laden);
  const crossings = given && crossingsWorking(context, given);
  const rest = springRestWorking(context, laden);
  if (!given || !crossings || !rest) return undefined;
  const { roadKurtosis, allowedContactsPerKm } = context.rules;
  const sigma = sigmaWorking(given);
  const wanted =
    allowedContactsPerKm * (context.assessed.progressive ? progressiveContactFactor : 1);
  const meanPerKm = (crossings.value * 1000) / given.speed;
  const allowed = Math.min(wanted, meanPerKm / 2);
  const share = allowed / meanPerKm;
  const sigmas = levelOfShare(share, roadKurtosis);
  const uneven = sigmas > levelOfShare(share, 3);
  const value = rest.value + sigma.value * sigmas;
  const atShare: FormulaStep = {
    formula: "E = V·N/(ν0·1000)",
    worked: [`${plain(given.speed)} · ${plain(allowed)} / (${plain(crossings.value)} · 1000)`],
    result: quantity("count", share),
  };
  const u: FormulaStep = {
    formula: "u with (1 + u)·exp(−u) = E",
    worked: ["u of ", atShare.result],
    result: quantity("count", Math.sqrt(3) * sigmas),
  };
  return {
    value,
    symbols: [
      ...given.symbols,
      tyreSymbol(context),
      {
        symbol: "N",
        meaning:
          allowed < wanted
            ? "contacts per km, half as many as the travel's middle is passed: more are allowed"
            : context.assessed.progressive
              ? "allowed contacts per km, ten times as many for a progressive stop"
              : "allowed contacts per km",
        value: quantity("count", allowed),
        origin: "common practice, adjustable",
      },
      ...rest.symbols,
    ],
    steps: [
      ...sigma.steps,
      ...crossings.steps,
      ...rest.steps,
      atShare,
      ...(uneven ? [u] : []),
      {
        formula: `z_need = ${rest.steps.length > 0 ? "spring alone + " : ""}${uneven ? "σ·u/√3" : "σ·√[2·ln(1/E)]"}`,
        worked: [
          ...(rest.steps.length > 0 ? [mm(rest.value), " + "] : []),
          mm(sigma.value),
          ...(uneven ? [" · ", u.result, " / √3"] : [" · √[2 · ln(1 / ", atShare.result, ")]"]),
        ],
        result: mm(value),
      },
    ],
  };
}

export function freeTravelNeeded(context: CornerContext, laden: boolean): WorkedFigure | undefined {
  const needed = neededWorking(context, laden);
  return (
    needed && {
      symbols: needed.symbols,
      steps: needed.steps,
      source: crossingSource[context.rules.roadKurtosis],
      assumed: screeningAssumptions,
    }
  );
}

export function mostExtraHeight(context: CornerContext): WorkedFigure | undefined {
  const needed = neededWorking(context, true);
  if (!needed) return undefined;
  const closing = context.layout.closing(needed.value, "z_need");
  return {
    symbols: [
      context.gapSymbol,
      {
        symbol: "z_need",
        meaning: "free travel needed, loaded",
        value: mm(needed.value),
        origin: "computed above",
      },
      ...context.layout.symbols,
    ],
    steps: [
      ...closing.steps,
      {
        formula: "most extra height = g − s(z_need)",
        worked: [mm(context.gap), " − ", mm(closing.value)],
        result: mm(context.gap - closing.value),
      },
    ],
    source:
      "Closing of the stop at the free travel needed. Below zero: the stop is too tall already.",
    assumed: screeningAssumptions,
  };
}
