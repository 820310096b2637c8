import { progressiveContactFactor } from "../../../physics/road/roadTravel.ts";
import type { CornerContext } from "./cornerContext.ts";
import { loadedContactWorking, type Sag, sagWorking } from "./payloadSag.ts";
import { plain } from "./plainNumber.ts";
import {
  crossingsWorking,
  roadInputs,
  screeningAssumptions,
  sigmaSource,
  sigmaWorking,
  tyreSymbol,
} from "./roadResponse.ts";
import { mm, quantity, type WorkedFigure } from "./workedFigure.ts";

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

const crossingSource =
  "Upcrossings of a Gaussian motion: Rice, Bell Syst. Tech. J. 23/24 (1944/45). Road: ISO 8608:2016.";

export function contactsPerKm(context: CornerContext, laden: boolean): WorkedFigure | undefined {
  const given = roadInputs(context, laden);
  const crossings = given && crossingsWorking(context, given);
  const travel = laden
    ? loadedContactWorking(context)
    : context.layout.wheelTravel(context.gap, "g");
  if (!given || !crossings || !travel) return undefined;
  const sigma = sigmaWorking(given);
  const level = Math.max(travel.value, 0);
  const value =
    ((crossings.value * 1000) / given.speed) *
    Math.exp(-(level * level) / (2 * sigma.value * sigma.value));
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
      {
        formula: "contacts/km = ν0·(1000/V)·exp(−z²/2σ²)",
        worked: [
          `${plain(crossings.value)} · (1000 / ${plain(given.speed)}) · exp[−(`,
          mm(level),
          ")² / (2 · (",
          mm(sigma.value),
          ")²)]",
        ],
        result: quantity("count", value),
      },
    ],
    source: crossingSource,
    assumed: screeningAssumptions,
  };
}

function neededWorking(context: CornerContext, laden: boolean): Sag | undefined {
  const given = roadInputs(context, laden);
  const crossings = given && crossingsWorking(context, given);
  const sag = laden ? sagWorking(context) : { value: 0, steps: [], symbols: [] };
  if (!given || !crossings || !sag) return undefined;
  const sigma = sigmaWorking(given);
  const allowed =
    context.rules.allowedContactsPerKm *
    (context.assessed.progressive ? progressiveContactFactor : 1);
  const ratio = (crossings.value * 1000) / (given.speed * allowed);
  const root = ratio > 1 ? Math.sqrt(2 * Math.log(ratio)) : 0;
  const value = sag.value + sigma.value * root;
  return {
    value,
    symbols: [
      ...given.symbols,
      tyreSymbol(context),
      {
        symbol: "N",
        meaning: context.assessed.progressive
          ? "allowed contacts per km, ten times as many for a progressive stop"
          : "allowed contacts per km",
        value: quantity("count", allowed),
        origin: "common practice, adjustable",
      },
      ...sag.symbols,
    ],
    steps: [
      ...sigma.steps,
      ...crossings.steps,
      ...sag.steps,
      {
        formula: laden
          ? "z_need = sag + σ·√[2·ln(ν0·1000/(V·N))]"
          : "z_need = σ·√[2·ln(ν0·1000/(V·N))]",
        worked: [
          ...(laden ? [mm(sag.value), " + "] : []),
          mm(sigma.value),
          ratio > 1
            ? ` · √[2 · ln(${plain(crossings.value)} · 1000 / (${plain(given.speed)} · ${plain(allowed)}))]`
            : " · 0, because even the middle of the travel is passed less often than that",
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
      source: crossingSource,
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
    source: "Model, sections 3 and 4. Below zero: the stop is too tall already.",
    assumed: screeningAssumptions,
  };
}
