import { cornerAtMeans } from "../budget/cornerAtMeans.ts";
import { restingStop } from "../road/heldAtRide.ts";
import { restPosition } from "../road/restPosition.ts";
import { standardGravity } from "../standardGravity.ts";
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

/** Where the vehicle comes to rest, on its stop where it reaches that; unladen without its payload. */
function restWorking(context: CornerContext, laden: boolean): Sag | undefined {
  const payload = laden ? context.fitment.ride?.payloadPerCornerKg : 0;
  const rate = context.fitment.ride?.wheelRateNPerMm;
  const atMeans = cornerAtMeans(context.fitment, context.corner);
  if (payload === undefined || !atMeans.ok) return undefined;
  const { kinematics } = atMeans.value;
  const resting = restingStop(context.fitment, context.corner, kinematics);
  if (!resting.ok) return undefined;
  const { stop, gapMm, heldAtRideN } = resting.value;
  const asMeasured = payload === 0 && heldAtRideN === 0 && gapMm >= 0;
  if (!laden && asMeasured) return { value: 0, steps: [], symbols: [] };
  if (rate === undefined) return asMeasured ? { value: 0, steps: [], symbols: [] } : undefined;
  const rest = restPosition({ kinematics, ...resting.value, wheelRateNPerMm: rate }, payload);
  if (!rest.ok) return undefined;
  const sag = rest.value;
  const slopes = new Float64Array(3);
  kinematics.evaluate(sag, slopes);
  const closing = slopes[0] ?? 0;
  const stopAtWheel = stop.force(closing - gapMm) * (slopes[1] ?? 0);
  const load = payload * standardGravity;
  const touches = closing > gapMm;
  const held = heldAtRideN > 0;
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
      worked: [quantity("force", stop.force(closing - gapMm)), ` · ${plain(slopes[1] ?? 0)}`],
      result: quantity("force", stopAtWheel),
    });
  }
  const terms = [
    "payload·gₙ",
    ...(held ? ["+ F_rec"] : []),
    ...(touches ? ["− F_stop·ds/dz"] : []),
  ];
  steps.push({
    formula: terms.length > 1 ? `sag = (${terms.join(" ")}) / kw` : "sag = payload·gₙ / kw",
    worked: [
      ...(terms.length > 1 ? ["("] : []),
      quantity("force", load),
      ...(held ? [" + ", quantity("force", heldAtRideN)] : []),
      ...(touches ? [" − ", quantity("force", stopAtWheel)] : []),
      ...(terms.length > 1 ? [")"] : []),
      " / ",
      quantity("rate", rate),
    ],
    result: mm(sag),
  });
  return {
    value: sag,
    steps,
    symbols: sagSymbols(payload, rate, heldAtRideN),
  };
}

function sagSymbols(payload: number, rate: number, heldAtRideN: number): FormulaSymbol[] {
  return [
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
      meaning: "wheel rate",
      value: quantity("rate", rate),
      origin: "ride data",
    },
    ...(heldAtRideN > 0
      ? [
          {
            symbol: "F_rec",
            meaning: "what the stop held up as measured, at the wheel",
            value: quantity("force", heldAtRideN),
            origin: "static curve of the stop that stood there, at its gap",
          },
        ]
      : []),
  ];
}

export function sagWorking(context: CornerContext): Sag | undefined {
  return restWorking(context, true);
}

/** Where the vehicle would come to rest with nothing in the way: what the free travel needed begins at. */
export function springRestWorking(context: CornerContext, laden: boolean): Sag | undefined {
  const payload = laden ? context.fitment.ride?.payloadPerCornerKg : 0;
  const rate = context.fitment.ride?.wheelRateNPerMm;
  const atMeans = cornerAtMeans(context.fitment, context.corner);
  if (payload === undefined || !atMeans.ok) return undefined;
  const { kinematics } = atMeans.value;
  const resting = restingStop(context.fitment, context.corner, kinematics);
  if (!resting.ok) return undefined;
  const { heldAtRideN } = resting.value;
  if (payload === 0 && heldAtRideN === 0) return { value: 0, steps: [], symbols: [] };
  if (rate === undefined) return undefined;
  const load = payload * standardGravity;
  const held = heldAtRideN > 0;
  const value = (load + heldAtRideN) / rate;
  return {
    value,
    steps: [
      {
        formula: held
          ? "spring alone = (payload·gₙ + F_rec) / kw"
          : "spring alone = payload·gₙ / kw",
        worked: [
          "(",
          quantity("force", load),
          ...(held ? [" + ", quantity("force", heldAtRideN)] : []),
          ") / ",
          quantity("rate", rate),
        ],
        result: mm(value),
      },
    ],
    symbols: sagSymbols(payload, rate, heldAtRideN),
  };
}

export function payloadSag(context: CornerContext): WorkedFigure | undefined {
  const sag = sagWorking(context);
  return sag && sag.steps.length > 0
    ? {
        symbols: sag.symbols,
        steps: sag.steps,
        source: "Static balance by virtual work; the sag is where both sides agree.",
        assumed: ["Linear ride spring."],
      }
    : undefined;
}

export function contactFromRestWorking(
  context: CornerContext,
  laden: boolean,
): Working | undefined {
  const sag = restWorking(context, laden);
  if (!sag) return undefined;
  const contact = context.layout.wheelTravel(context.gap, "g");
  const value = contact.value - sag.value;
  return {
    value,
    steps: [
      {
        formula: laden ? "z = z_c − sag" : "z = z_c − rest without payload",
        worked: [mm(contact.value), " − ", mm(sag.value)],
        result: mm(value),
      },
    ],
  };
}

export function loadedTravelToContact(context: CornerContext): WorkedFigure | undefined {
  const working = contactFromRestWorking(context, true);
  return (
    working && {
      symbols: [],
      steps: working.steps,
      source: "Difference of two travels from the ride height.",
      assumed: ["Counted from where the loaded vehicle stands."],
    }
  );
}
