import type { CornerContext } from "./cornerContext.ts";
import { limitWords, meanOf, originOf } from "./measured.ts";
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

interface LimitWorking extends Working {
  readonly symbols: readonly FormulaSymbol[];
}

function hardLimitWorking(context: CornerContext): LimitWorking | undefined {
  const { limits } = context.corner;
  if (limits.length === 0) return undefined;
  const symbols: FormulaSymbol[] = [];
  const steps: FormulaStep[] = [];
  const reached = limits.map((limit, index) => {
    const number = index + 1;
    const reading = meanOf(limit.reading);
    const words = limitWords[limit.kind];
    symbols.push({
      symbol: `c${number}`,
      meaning: `${words} clearance, at the ${limit.at}`,
      value: mm(reading),
      origin: originOf(limit.reading),
    });
    if (limit.at === "stop") {
      const travel = context.layout.wheelTravel(reading, `c${number}`);
      if (Number.isFinite(travel.value)) steps.push(...travel.steps);
      return travel.value;
    }
    const perWheel = limit.perWheel ?? 1;
    symbols.push({
      symbol: `p${number}`,
      meaning: `how much the ${words} clearance closes per wheel travel`,
      value: quantity("count", perWheel),
      origin: "from the check",
    });
    const travel = reading / perWheel;
    steps.push({
      formula: `z${number} = c${number} / p${number}`,
      worked: [mm(reading), ` / ${perWheel}`],
      result: mm(travel),
    });
    return travel;
  });
  const travels = reached.filter(Number.isFinite);
  if (travels.length === 0) return undefined;
  const value = Math.min(...travels);
  if (travels.length > 1) {
    steps.push({
      formula: "z_h = least of them",
      worked: travels.flatMap((travel, index) => (index > 0 ? [" or ", mm(travel)] : [mm(travel)])),
      result: mm(value),
    });
  }
  if (limits.some(({ at }) => at === "stop")) symbols.push(...context.layout.symbols);
  return { value, steps, symbols };
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
        meaning: "wheel travel to the hard limit",
        value: mm(limit.value),
        origin: "computed above",
      },
      {
        symbol: "z_u",
        meaning: "wheel travel to full stop",
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
    steps: [
      {
        formula: "reserve = z_h − z_u",
        worked: [mm(limit.value), " − ", mm(full)],
        result: mm(limit.value - full),
      },
    ],
    source: "How much is wanted: common practice, adjustable.",
    assumed: [atRide],
  };
}

export function freeShare(context: CornerContext): WorkedFigure | undefined {
  const limit = hardLimitWorking(context);
  if (!limit) return undefined;
  const contact = contactWorking(context).value;
  const end = Math.min(fullStopWorking(context).value, limit.value);
  return {
    symbols: [
      {
        symbol: "z_c",
        meaning: "wheel travel to contact",
        value: mm(contact),
        origin: "computed above",
      },
      {
        symbol: "min(z_u, z_h)",
        meaning: "where the travel ends: full stop or hard limit",
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
    source: "Where the free travel ends: full stop or the hard limit.",
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
  return {
    closing: closing.value,
    symbols: [
      {
        symbol: "z_h",
        meaning: "wheel travel to the hard limit",
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
