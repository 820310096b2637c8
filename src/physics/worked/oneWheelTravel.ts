import * as messages from "../../words/compiled/physics/worked.ts";
import { layoutPlan } from "../kinematics/layoutPlan.ts";
import { layoutRegistry } from "../layouts/geometryRegistry.ts";
import type { CornerContext } from "./cornerContext.ts";
import { MeasuredTerms } from "./layout/measuredTerms.ts";
import { oneWheelWorking } from "./layout/straightWorking.ts";
import type { FormulaSymbol, LayoutWorking, WorkedFigure, Working } from "./workedFigure.ts";

function figure(
  context: CornerContext,
  extra: readonly FormulaSymbol[],
  working: (layout: LayoutWorking) => Working,
): WorkedFigure | undefined {
  if (!layoutRegistry[context.fitment.layout.kind].joinsWheels) return undefined;
  const plan = layoutPlan(context.fitment.layout, context.corner, "one");
  if (!plan.ok) return undefined;
  const { motion, places } = plan.value;
  if (motion.set(Float64Array.from(places, ({ drawn }) => drawn.mean)) !== null) return undefined;
  const layout = oneWheelWorking(new MeasuredTerms(plan.value), motion);
  return {
    symbols: [...extra, ...layout.symbols],
    steps: working(layout).steps,
    source: layout.source,
    assumed: [messages.oneWheelUpOther],
  };
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
