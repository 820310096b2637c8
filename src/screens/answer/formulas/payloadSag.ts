import { kinematicsOf } from "../../../physics/kinematics/kinematics.ts";
import { restPosition, standardGravity } from "../../../physics/road/restPosition.ts";
import { stopCurve } from "../../../physics/stop/stopCurve.ts";
import type { CornerContext } from "./cornerContext.ts";
import { plain } from "./plainNumber.ts";
import {
  type FormulaStep,
  type FormulaSymbol,
  mm,
  quantity,
  type WorkedFigure,
  type Working,
} from "./workedFigure.ts";

export interface Sag extends Working {
  readonly symbols: readonly FormulaSymbol[];
}

export function sagWorking(context: CornerContext): Sag | undefined {
  const payload = context.fitment.ride?.payloadPerCornerKg;
  const rate = context.fitment.ride?.wheelRateNPerMm;
  if (payload === undefined) return undefined;
  if (rate === undefined) return payload === 0 ? { value: 0, steps: [], symbols: [] } : undefined;
  const kinematics = kinematicsOf(context.fitment.layout, context.corner);
  const stop = stopCurve(context.fitment.stop);
  if (!kinematics.ok || !stop.ok) return undefined;
  const rest = restPosition(
    { kinematics: kinematics.value, stop: stop.value, gapMm: context.gap, wheelRateNPerMm: rate },
    payload,
  );
  if (!rest.ok) return undefined;
  const sag = rest.value;
  const slopes = new Float64Array(3);
  kinematics.value.evaluate(sag, slopes);
  const closing = slopes[0] ?? 0;
  const stopAtWheel = stop.value.force(closing - context.gap) * (slopes[1] ?? 0);
  const load = payload * standardGravity;
  const touches = closing > context.gap;
  const steps: FormulaStep[] = [
    {
      formula: "payload · gₙ",
      worked: [quantity("mass", payload), ` · ${standardGravity} m/s²`],
      result: quantity("force", load),
    },
  ];
  if (touches) {
    steps.push({
      formula: "F_stop·ds/dz at that sag",
      worked: [
        quantity("force", stop.value.force(closing - context.gap)),
        ` · ${plain(slopes[1] ?? 0)}`,
      ],
      result: quantity("force", stopAtWheel),
    });
  }
  steps.push({
    formula: touches ? "sag = (payload·gₙ − F_stop·ds/dz) / kw" : "sag = payload·gₙ / kw",
    worked: [
      ...(touches
        ? ["(", quantity("force", load), " − ", quantity("force", stopAtWheel), ")"]
        : [quantity("force", load)]),
      " / ",
      quantity("rate", rate),
    ],
    result: mm(sag),
  });
  return {
    value: sag,
    steps,
    symbols: [
      {
        symbol: "payload",
        meaning: "load this wheel carries on top",
        value: quantity("mass", payload),
        origin: "ride data",
      },
      {
        symbol: "gₙ",
        meaning: "standard gravity",
        value: `${standardGravity} m/s²`,
        origin: "NIST SP 811",
      },
      {
        symbol: "kw",
        meaning: "ride spring rate at the wheel",
        value: quantity("rate", rate),
        origin: "ride data",
      },
    ],
  };
}

export function payloadSag(context: CornerContext): WorkedFigure | undefined {
  const sag = sagWorking(context);
  return sag && sag.steps.length > 0
    ? {
        symbols: sag.symbols,
        steps: sag.steps,
        source:
          "Static balance by virtual work; the sag is where both sides agree (model, section 4).",
        assumed: ["Linear ride spring."],
      }
    : undefined;
}

export function loadedContactWorking(context: CornerContext): Working | undefined {
  const sag = sagWorking(context);
  if (!sag) return undefined;
  const contact = context.layout.wheelTravel(context.gap, "g");
  const value = contact.value - sag.value;
  return {
    value,
    steps: [
      {
        formula: "z = z_c − sag",
        worked: [mm(contact.value), " − ", mm(sag.value)],
        result: mm(value),
      },
    ],
  };
}

export function loadedTravelToContact(context: CornerContext): WorkedFigure | undefined {
  const working = loadedContactWorking(context);
  return (
    working && {
      symbols: [],
      steps: working.steps,
      source: "Model, section 4.",
      assumed: ["Counted from where the loaded vehicle stands."],
    }
  );
}
