import * as termNames from "../../words/compiled/physics/terms.ts";
import * as messages from "../../words/compiled/physics/worked.ts";
import {
  heightFormulas,
  oneWheelReserve,
  oneWheelShareOf,
  oneWheelTarget,
  reserveFormulas,
  reserveOf,
  spacerHeightOf,
  tallerHeightOf,
  targetFormulas,
  targetTravel,
  usableShare,
} from "../budget/reserve.ts";
import { freeShareFormula, freeShareOf } from "../budget/travelBudget.ts";
import { ratioFormula } from "../kinematics/kinematics.ts";
import { layoutRegistry } from "../layouts/geometryRegistry.ts";
import type { CornerContext } from "./cornerContext.ts";
import { hardLimitWorking, type LimitWorking } from "./hardLimitWorking.ts";
import { geometryReading, meanOf } from "./measured.ts";
import { type FormulaStep, step, type Terms } from "./step.ts";
import {
  type FormulaSymbol,
  mm,
  quantity,
  slopeAt,
  type WorkedFigure,
  type Working,
} from "./workedFigure.ts";

const atRide = messages.atRideHeightAnd;

export function leverRatio(context: CornerContext): WorkedFigure {
  return {
    symbols: context.layout.symbols,
    steps: context.layout.ratio().steps,
    source: messages.wheelPerStopIts({ source: context.layout.source }),
    assumed: [messages.atRideRatioCan],
  };
}

/** R where the stop is fully compressed; at a contact found by hand, from below. */
export function leverRatioAtFullStop(context: CornerContext): WorkedFigure | undefined {
  const { atMeans, layout } = context;
  const travel = fullStopWorking(context);
  const ratio = atMeans.kinematics.ratio(travel.value);
  if (!ratio.ok) return undefined;
  return {
    symbols: [context.gapSymbol, context.usableSymbol, ...layout.symbols],
    steps: [
      ...travel.steps,
      step(
        ratioFormula,
        { "ds/dz": quantity("count", slopeAt(layout.led, travel.value)) },
        quantity("ratio", ratio.value),
      ),
    ],
    source: messages.wheelPerStopIts({ source: layout.source }),
    assumed: [messages.slopeOfSameMotion],
  };
}

function contactWorking(context: CornerContext): Working {
  return context.layout.wheelTravel(context.gap, "g");
}

function fullStopWorking(context: CornerContext): Working {
  return context.layout.wheelTravel(context.gap + context.usable, "(g + δu)");
}

export function travelToContact(context: CornerContext): WorkedFigure {
  return {
    symbols: [context.gapSymbol, ...context.layout.symbols],
    steps: contactWorking(context).steps,
    source: context.layout.source,
    assumed: [atRide],
  };
}

export function travelToFullStop(context: CornerContext): WorkedFigure {
  return {
    symbols: [context.gapSymbol, context.usableSymbol, ...context.layout.symbols],
    steps: fullStopWorking(context).steps,
    source: context.layout.source,
    assumed: [atRide],
  };
}

/** Closing of a beam axle's stop per wheel travel with one wheel up, against both; 1 for every other layout. */
function oneWheelShare({ fitment, corner }: CornerContext): OneWheel | null {
  if (!layoutRegistry[fitment.layout.kind].joinsWheels) return null;
  const track = geometryReading(fitment, corner, "track");
  const spacing = geometryReading(fitment, corner, "stopSpacing");
  if (!track || !spacing) return null;
  const [T, S] = [meanOf(track), meanOf(spacing)];
  return { share: oneWheelShareOf(T, S), letters: { T: mm(T), S: mm(S) } };
}

interface OneWheel {
  readonly share: number;
  readonly letters: Terms;
}

export function travelToHardLimit(context: CornerContext): WorkedFigure | undefined {
  const limit = hardLimitWorking(context);
  return (
    limit && {
      symbols: limit.symbols,
      steps: limit.steps,
      source: messages.firstHardPartTo,
      assumed: [atRide],
    }
  );
}

export function reserve(context: CornerContext): WorkedFigure | undefined {
  const limit = hardLimitWorking(context);
  if (!limit) return undefined;
  const full = fullStopWorking(context).value;
  return {
    symbols: [
      {
        symbol: "z_h",
        meaning: messages.wheelTravelToHard,
        value: mm(limit.value),
        origin: messages.computedAbove,
      },
      {
        symbol: "z_u",
        meaning: messages.wheelTravelToFull,
        value: mm(full),
        origin: messages.computedAbove,
      },
      {
        symbol: "r",
        meaning: messages.reserveWanted,
        value: mm(context.rules.reserveMm),
        origin: messages.commonPracticeAdjustable,
      },
    ],
    steps: reserveSteps(limit, full, oneWheelShare(context)),
    source: messages.howMuchIsWanted,
    assumed: [atRide],
  };
}

/** Both wheels together, and of a beam axle the worse of that and one wheel up. */
function reserveSteps(
  limit: LimitWorking,
  full: number,
  oneWheel: OneWheel | null,
): readonly FormulaStep[] {
  const both = mm(reserveOf(limit.value, full));
  const z_u = mm(full);
  const together = step(reserveFormulas.both, { z_h: mm(limit.value), z_u }, both);
  if (oneWheel === null || !Number.isFinite(limit.atWheel)) return [together];
  const one = mm(oneWheelReserve(limit.atWheel, full, oneWheel.share));
  const letters = {
    ...oneWheel.letters,
    zAtTheWheel: { name: termNames.zAtTheWheel, value: mm(limit.atWheel) },
    z_u,
  };
  return [
    together,
    step(reserveFormulas.oneWheel, letters, one),
    step(reserveFormulas.lesser, { both, one }, mm(Math.min(both.value, one.value))),
  ];
}

export function freeShare(context: CornerContext): WorkedFigure | undefined {
  const limit = hardLimitWorking(context) ?? { value: Number.POSITIVE_INFINITY };
  const contact = Math.max(0, contactWorking(context).value);
  const end = Math.min(fullStopWorking(context).value, limit.value);
  const share = freeShareOf(contact, end) ?? Number.NaN;
  return {
    symbols: [
      {
        symbol: "z_c",
        meaning: messages.wheelTravelToContact,
        value: mm(contact),
        origin: messages.computedAbove,
      },
      {
        symbol: "min(z_u, z_h)",
        meaning: messages.whereTravelEndsFull,
        value: mm(end),
        origin: messages.computedAbove,
      },
    ],
    steps: [
      step(
        freeShareFormula,
        { z_c: mm(contact), "min(z_u, z_h)": mm(end) },
        quantity("share", share),
      ),
    ],
    source: messages.whereFreeTravelEnds,
    assumed: [atRide],
  };
}

interface HeightWorking {
  readonly steps: readonly FormulaStep[];
  readonly symbols: readonly FormulaSymbol[];
  readonly closing: number;
}

function closingAtReserve(context: CornerContext): HeightWorking | undefined {
  const limit = hardLimitWorking(context);
  if (!limit) return undefined;
  const wanted = context.rules.reserveMm;
  const target = targetTravel(limit.value, wanted);
  const closing = context.layout.closing(target, "(z_h − r)");
  const oneWheel = Number.isFinite(limit.atWheel) ? oneWheelShare(context) : null;
  const aloneTarget =
    oneWheel === null ? Number.NaN : oneWheelTarget(limit.atWheel, wanted, oneWheel.share);
  const alone =
    oneWheel === null ? null : context.layout.closing(aloneTarget, messages.travelWithOneWheel);
  const least = Math.min(closing.value, alone?.value ?? Number.POSITIVE_INFINITY);
  return {
    closing: least,
    symbols: [
      {
        symbol: "z_h",
        meaning: messages.wheelTravelToHard,
        value: mm(limit.value),
        origin: messages.computedAbove,
      },
      {
        symbol: "r",
        meaning: messages.reserveWanted,
        value: mm(wanted),
        origin: messages.commonPractice,
      },
      context.gapSymbol,
      context.usableSymbol,
      ...context.layout.symbols,
    ],
    steps: [
      step(targetFormulas.both, { z_h: mm(limit.value), r: mm(wanted) }, mm(target)),
      ...closing.steps,
      ...(alone === null
        ? []
        : [
            step(
              targetFormulas.oneWheel,
              {
                ...oneWheel?.letters,
                zAtTheWheel: { name: termNames.zAtTheWheel, value: mm(limit.atWheel) },
                r: mm(wanted),
              },
              mm(aloneTarget),
            ),
            ...alone.steps,
            step(
              targetFormulas.lesser,
              { both: mm(closing.value), one: mm(alone.value) },
              mm(least),
            ),
          ]),
    ],
  };
}

export function spacerHeight(context: CornerContext): WorkedFigure | undefined {
  const height = closingAtReserve(context);
  if (!height) return undefined;
  const { gap, usable } = context;
  return {
    symbols: height.symbols,
    steps: [
      ...height.steps,
      step(
        heightFormulas.spacer,
        { g: mm(gap), δu: mm(usable), s: mm(height.closing) },
        mm(spacerHeightOf(gap + usable, height.closing)),
      ),
    ],
    source: messages.belowZeroHeightTo,
    assumed: [messages.sameStopOnRigid],
  };
}

export function tallerHeight(context: CornerContext): WorkedFigure | undefined {
  const height = closingAtReserve(context);
  if (!height) return undefined;
  const { gap, usable, freeHeight } = context;
  const f = quantity("count", usableShare(usable, freeHeight));
  const spacer = spacerHeightOf(gap + usable, height.closing);
  return {
    symbols: [...height.symbols, context.freeHeightSymbol],
    steps: [
      ...height.steps,
      step(heightFormulas.share, { δu: mm(usable), H: mm(freeHeight) }, f),
      step(
        heightFormulas.taller,
        { g: mm(gap), δu: mm(usable), s: mm(height.closing), f },
        mm(tallerHeightOf(spacer, f.value)),
      ),
    ],
    source: messages.belowZeroHeightTo,
    assumed: [messages.tallerStopOfSame],
  };
}
