import { oneWheelWorking } from "./axleWorking.ts";
import type { CornerContext } from "./cornerContext.ts";
import type { FormulaSymbol, LayoutWorking, WorkedFigure, Working } from "./workedFigure.ts";

function figure(
  context: CornerContext,
  extra: readonly FormulaSymbol[],
  working: (layout: LayoutWorking) => Working,
): WorkedFigure | undefined {
  const layout = oneWheelWorking(context.fitment, context.corner);
  return (
    layout && {
      symbols: [...extra, ...layout.symbols],
      steps: working(layout).steps,
      source: layout.source,
      assumed: ["One wheel up, the other on the ground."],
    }
  );
}

export function oneWheelRatio(context: CornerContext): WorkedFigure | undefined {
  return figure(context, [], (layout) => layout.ratio());
}

export function oneWheelContact(context: CornerContext): WorkedFigure | undefined {
  return figure(context, [context.gapSymbol], (layout) => layout.wheelTravel(context.gap, "g"));
}

export function oneWheelFullStop(context: CornerContext): WorkedFigure | undefined {
  return figure(context, [context.gapSymbol, context.usableSymbol], (layout) =>
    layout.wheelTravel(context.gap + context.usable, "(g + δu)"),
  );
}
