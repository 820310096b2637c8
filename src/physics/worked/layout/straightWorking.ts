import * as messages from "../../../words/compiled/physics/worked/layout.ts";
import type { LayoutMotion } from "../../motion/layoutMotion.ts";
import { oneWheelFormulas, straightFormulas } from "../../motion/straightMotion.ts";
import type { Words } from "../../sentence.ts";
import { step, type Terms } from "../step.ts";
import { degrees, type LayoutWorking, mm, ratioOf } from "../workedFigure.ts";
import type { MeasuredTerms } from "./measuredTerms.ts";

const lean = (terms: MeasuredTerms) =>
  degrees(terms.angle("stopLean", "β", messages.leanOfStopFrom));

/** A strut by its lean alone, or a beam axle with both wheels up: the stop closes along its axis. */
export function straightWorking(
  terms: MeasuredTerms,
  motion: LayoutMotion,
  source: Words,
): LayoutWorking {
  return alongAxis(terms, motion, source, { β: lean(terms) }, straightFormulas);
}

/** A beam axle with one wheel up, the other on the ground: it turns about the far tire. */
export function oneWheelWorking(terms: MeasuredTerms, motion: LayoutMotion): LayoutWorking {
  const β = lean(terms);
  const T = mm(terms.length("track", "T", messages.track));
  const S = mm(terms.length("stopSpacing", "S", messages.spacingOfTwoStops));
  const source = messages.axleTurnsAboutOther;
  return alongAxis(terms, motion, source, { β, T, S }, oneWheelFormulas);
}

function alongAxis(
  { symbols }: MeasuredTerms,
  motion: LayoutMotion,
  source: Words,
  given: Terms,
  formulas: { readonly ratio: Words; readonly travel: Words; readonly closing: Words },
): LayoutWorking {
  return {
    source,
    symbols,
    motion,
    led: motion,
    ratio: () => {
      const ratio = ratioOf(motion);
      return { value: ratio.value, steps: [step(formulas.ratio, given, ratio)] };
    },
    wheelTravel: (closing, letter) => {
      const value = motion.wheelTravel(closing);
      const s = { letter, value: mm(closing) };
      return { value, steps: [step(formulas.travel, { ...given, s }, mm(value))] };
    },
    closing: (travel, letter) => {
      const value = motion.closing(travel);
      const z = { letter, value: mm(travel) };
      return { value, steps: [step(formulas.closing, { ...given, z }, mm(value))] };
    },
  };
}
