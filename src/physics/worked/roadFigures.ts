import * as termNames from "../../words/compiled/physics/terms.ts";
import * as messages from "../../words/compiled/physics/worked.ts";
import type { RoadKurtosis } from "../fitment.ts";
import {
  allowedPasses,
  crossingFormulas,
  crossingShare,
  levelOfShare,
  levelPassedPerKm,
  passedShare,
  type RandomTravel,
  unevenness,
  upcrossingsPerKm,
} from "../road/levelCrossings.ts";
import {
  extraHeight,
  extraHeightFormula,
  neededFormulas,
  neededTravel,
  wantedContacts,
} from "../road/roadTravel.ts";
import type { CornerContext } from "./cornerContext.ts";
import { contactFromRestWorking, type Sag, springRestWorking } from "./payloadSag.ts";
import {
  crossingsWorking,
  type RoadInputs,
  roadInputs,
  screeningAssumptions,
  sigmaSource,
  sigmaWorking,
  tyreSymbol,
} from "./roadResponse.ts";
import { step } from "./step.ts";
import { mm, quantity, type WorkedFigure, type Working } from "./workedFigure.ts";

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
  3: messages.upcrossingsOfGaussianMotion,
  5: messages.upcrossingsOfGaussianMotionRice,
} as const;

export function contactsPerKm(context: CornerContext, laden: boolean): WorkedFigure | undefined {
  const given = roadInputs(context, laden);
  const crossings = given && crossingsWorking(context, given);
  const travel = contactFromRestWorking(context, laden);
  if (!given || !crossings || !travel) return undefined;
  const { roadKurtosis } = context.rules;
  const sigma = sigmaWorking(given);
  const level = Math.max(travel.value, 0);
  const sigmas = level / sigma.value;
  const uneven = crossingShare(sigmas, roadKurtosis) > crossingShare(sigmas, 3);
  const u = quantity("count", unevenness(sigmas));
  const value = upcrossingsPerKm(level, randomTravel(given, sigma, crossings, roadKurtosis));
  const letters = {
    z: mm(level),
    σ: mm(sigma.value),
    u,
    ν0: quantity("count", crossings.value),
    V: quantity("count", given.speed),
  };
  return {
    symbols: [
      ...given.symbols,
      tyreSymbol(context),
      {
        symbol: "z",
        meaning: laden ? messages.travelToContactLoaded : messages.travelToContact,
        value: mm(travel.value),
        origin: messages.computedAbove,
      },
    ],
    steps: [
      ...sigma.steps,
      ...crossings.steps,
      ...(uneven ? [step(crossingFormulas.unevenness, letters, u)] : []),
      step(crossingFormulas[uneven ? "uneven" : "even"], letters, quantity("count", value)),
    ],
    source: crossingSource[roadKurtosis],
    assumed: screeningAssumptions,
  };
}

/** The motion of the wheel on the road, as the crossings take it. */
function randomTravel(
  { speed }: RoadInputs,
  sigma: Working,
  crossings: Working,
  kurtosis: RoadKurtosis,
): RandomTravel {
  return { sigma: sigma.value, zeroUpcrossings: crossings.value, speed, kurtosis };
}

function neededWorking(context: CornerContext, laden: boolean): Sag | undefined {
  const given = roadInputs(context, laden);
  const crossings = given && crossingsWorking(context, given);
  const rest = springRestWorking(context, laden);
  if (!given || !crossings || !rest) return undefined;
  const { roadKurtosis } = context.rules;
  const sigma = sigmaWorking(given);
  const wanted = wantedContacts(context.rules, context.assessed.progressive);
  const motion = randomTravel(given, sigma, crossings, roadKurtosis);
  const allowed = allowedPasses(wanted, motion);
  const share = passedShare(allowed, motion);
  const sigmas = levelOfShare(share, roadKurtosis);
  const uneven = sigmas > levelOfShare(share, 3);
  const value = neededTravel(rest.value, levelPassedPerKm(wanted, motion));
  const letters = {
    springAlone: { name: termNames.springAlone, value: mm(rest.value) },
    σ: mm(sigma.value),
    V: quantity("count", given.speed),
    N: quantity("count", allowed),
    ν0: quantity("count", crossings.value),
    E: quantity("count", share),
    u: quantity("count", unevenness(sigmas)),
  };
  const needed =
    rest.steps.length > 0
      ? uneven
        ? neededFormulas.unevenFromRest
        : neededFormulas.evenFromRest
      : neededFormulas[uneven ? "uneven" : "even"];
  return {
    value,
    symbols: [
      ...given.symbols,
      tyreSymbol(context),
      {
        symbol: "N",
        meaning:
          allowed < wanted
            ? messages.contactsPerKmHalf
            : context.assessed.progressive
              ? messages.allowedContactsPerKm
              : messages.allowedContactsPerKm2,
        value: quantity("count", allowed),
        origin: messages.commonPracticeAdjustable,
      },
      ...rest.symbols,
    ],
    steps: [
      ...sigma.steps,
      ...crossings.steps,
      ...rest.steps,
      step(crossingFormulas.share, letters, letters.E),
      ...(uneven ? [step(crossingFormulas.level, { E: letters.E }, letters.u)] : []),
      step(needed, letters, mm(value)),
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
        meaning: messages.freeTravelNeededLoaded,
        value: mm(needed.value),
        origin: messages.computedAbove,
      },
      ...context.layout.symbols,
    ],
    steps: [
      ...closing.steps,
      step(
        extraHeightFormula,
        { g: mm(context.gap), "s(z_need)": mm(closing.value) },
        mm(extraHeight(context.gap, closing.value)),
      ),
    ],
    source: messages.closingOfStopAt,
    assumed: screeningAssumptions,
  };
}
