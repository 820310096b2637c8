import { layoutRegistry } from "../readings/geometryRegistry.ts";
import type { CornerContext } from "./cornerContext.ts";
import { hardLimitWorking, type LimitWorking } from "./hardLimitWorking.ts";
import { geometryReading, meanOf } from "./measured.ts";
import {
  type FormulaStep,
  type FormulaSymbol,
  mm,
  quantity,
  type WorkedFigure,
  type Working,
} from "./workedFigure.ts";

const atRide = "At the measured ride height and load; wheel travel counts from there, up positive.";

export function leverRatio(context: CornerContext): WorkedFigure {
  return {
    symbols: context.layout.symbols,
    steps: context.layout.ratio().steps,
    source: `${context.layout.source} Wheel per stop; its inverse is stop per wheel.`,
    assumed: [
      "At ride; the ratio can change through the travel, and every travel here allows for it.",
    ],
  };
}

/** R where the stop is fully compressed; at a contact found by hand, from below. */
export function leverRatioAtFullStop(context: CornerContext): WorkedFigure | undefined {
  const { atMeans, layout } = context;
  const travel = fullStopWorking(context);
  const ratio = atMeans.kinematics.ratio(travel.value);
  if (!ratio.ok) return undefined;
  const closing = 1 / ratio.value;
  return {
    symbols: [context.gapSymbol, context.usableSymbol, ...layout.symbols],
    steps: [
      ...travel.steps,
      {
        formula: "R = 1/(ds/dz) at that wheel travel",
        worked: ["1 / ", quantity("count", closing)],
        result: quantity("ratio", ratio.value),
      },
    ],
    source: `${layout.source} Wheel per stop; its inverse is stop per wheel.`,
    assumed: ["The slope of the same motion, taken where the stop is fully compressed."],
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
function oneWheelShare({ fitment, corner }: CornerContext): number {
  if (!layoutRegistry[fitment.layout.kind].joinsWheels) return 1;
  const track = geometryReading(fitment, corner, "track");
  const spacing = geometryReading(fitment, corner, "stopSpacing");
  return track && spacing ? (meanOf(track) + meanOf(spacing)) / (2 * meanOf(track)) : 1;
}

export function travelToHardLimit(context: CornerContext): WorkedFigure | undefined {
  const limit = hardLimitWorking(context);
  return (
    limit && {
      symbols: limit.symbols,
      steps: limit.steps,
      source: "The first hard part to touch ends the travel.",
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
        meaning: "wheel travel to the hard contact",
        value: mm(limit.value),
        origin: "computed above",
      },
      {
        symbol: "z_u",
        meaning: "wheel travel to full compression",
        value: mm(full),
        origin: "computed above",
      },
      {
        symbol: "r",
        meaning: "reserve wanted",
        value: mm(context.rules.reserveMm),
        origin: "common practice, adjustable",
      },
    ],
    steps: reserveSteps(limit, full, oneWheelShare(context)),
    source: "How much is wanted: common practice, adjustable.",
    assumed: [atRide],
  };
}

/** Both wheels together, and of a beam axle the worse of that and one wheel up. */
function reserveSteps(limit: LimitWorking, full: number, share: number): readonly FormulaStep[] {
  const both = limit.value - full;
  const together: FormulaStep = {
    formula: "reserve = z_h − z_u",
    worked: [mm(limit.value), " − ", mm(full)],
    result: mm(both),
  };
  if (share === 1 || !Number.isFinite(limit.atWheel)) return [together];
  const alone = limit.atWheel - full / share;
  return [
    together,
    {
      formula: "one wheel up: z at the wheel − z_u·2·T/(T + S)",
      worked: [mm(limit.atWheel), " − ", mm(full), " / ", quantity("count", share)],
      result: mm(alone),
    },
    {
      formula: "reserve = the lesser",
      worked: [mm(both), " or ", mm(alone)],
      result: mm(Math.min(both, alone)),
    },
  ];
}

export function freeShare(context: CornerContext): WorkedFigure | undefined {
  const limit = hardLimitWorking(context) ?? { value: Number.POSITIVE_INFINITY };
  const contact = Math.max(0, contactWorking(context).value);
  const end = Math.min(fullStopWorking(context).value, limit.value);
  return {
    symbols: [
      {
        symbol: "z_c",
        meaning: "wheel travel to contact, not below 0",
        value: mm(contact),
        origin: "computed above",
      },
      {
        symbol: "min(z_u, z_h)",
        meaning: "where the travel ends: full compression or hard contact",
        value: mm(end),
        origin: "computed above",
      },
    ],
    steps: [
      {
        formula: "free share = z_c / min(z_u, z_h)",
        worked: [mm(contact), " / ", mm(end)],
        result: quantity("share", contact / end),
      },
    ],
    source: "Where the free travel ends: full compression or hard contact.",
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
  const target = limit.value - wanted;
  const closing = context.layout.closing(target, "(z_h − r)");
  const share = oneWheelShare(context);
  const alone =
    share === 1 || !Number.isFinite(limit.atWheel)
      ? null
      : context.layout.closing((limit.atWheel - wanted) * share, "the travel with one wheel up");
  const least = Math.min(closing.value, alone?.value ?? Number.POSITIVE_INFINITY);
  return {
    closing: least,
    symbols: [
      {
        symbol: "z_h",
        meaning: "wheel travel to the hard contact",
        value: mm(limit.value),
        origin: "computed above",
      },
      { symbol: "r", meaning: "reserve wanted", value: mm(wanted), origin: "common practice" },
      context.gapSymbol,
      context.usableSymbol,
      ...context.layout.symbols,
    ],
    steps: [
      {
        formula: "z_h − r",
        worked: [mm(limit.value), " − ", mm(wanted)],
        result: mm(target),
      },
      ...closing.steps,
      ...(alone === null
        ? []
        : [
            {
              formula: "one wheel up: (z at the wheel − r)·(T + S)/(2·T)",
              worked: ["(", mm(limit.atWheel), " − ", mm(wanted), ") · ", quantity("count", share)],
              result: mm((limit.atWheel - wanted) * share),
            } satisfies FormulaStep,
            ...alone.steps,
            {
              formula: "s = the lesser",
              worked: [mm(closing.value), " or ", mm(alone.value)],
              result: mm(least),
            } satisfies FormulaStep,
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
      {
        formula: "Δ = g + δu − s",
        worked: [mm(gap), " + ", mm(usable), " − ", mm(height.closing)],
        result: mm(gap + usable - height.closing),
      },
    ],
    source: "Below zero: height to spare.",
    assumed: ["The same stop on a rigid spacer: its usable compression stays."],
  };
}

export function tallerHeight(context: CornerContext): WorkedFigure | undefined {
  const height = closingAtReserve(context);
  if (!height) return undefined;
  const { gap, usable, freeHeight } = context;
  const share = usable / freeHeight;
  return {
    symbols: [...height.symbols, context.freeHeightSymbol],
    steps: [
      ...height.steps,
      {
        formula: "f = δu / H",
        worked: [mm(usable), " / ", mm(freeHeight)],
        result: quantity("count", share),
      },
      {
        formula: "Δ = (g + δu − s) / (1 − f)",
        worked: [
          "(",
          mm(gap),
          " + ",
          mm(usable),
          " − ",
          mm(height.closing),
          ") / (1 − ",
          quantity("count", share),
          ")",
        ],
        result: mm((gap + usable - height.closing) / (1 - share)),
      },
    ],
    source: "Below zero: height to spare.",
    assumed: ["A taller stop of the same build: the same share of its height can be compressed."],
  };
}
