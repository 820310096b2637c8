import * as termNames from "../../words/compiled/physics/terms.ts";
import * as messages from "../../words/compiled/physics/worked.ts";
import type { LimitPlaces } from "../budget/cornerPlaces.ts";
import { leastLimitText } from "../budget/hardLimit.ts";
import {
  handLimitFormulas,
  travelByHeights,
  wheelLimitFormula,
  wheelLimitTravel,
} from "../budget/limitTravel.ts";
import type { Words } from "../sentence.ts";
import type { CornerContext } from "./cornerContext.ts";
import { originOf } from "./measured.ts";
import { type FormulaStep, step } from "./step.ts";
import { type FormulaSymbol, mm, quantity, type Working } from "./workedFigure.ts";

/** Wheel travel to the first hard limit, and how each of them was come by. */
export interface LimitWorking extends Working {
  readonly symbols: readonly FormulaSymbol[];
  /** The least of those measured at the wheel itself; infinite where there is none. */
  readonly atWheel: number;
}

/** Undefined where none was measured, or none can be reached. */
export function hardLimitWorking(context: CornerContext): LimitWorking | undefined {
  const { places, means, kinematics } = context.atMeans;
  if (places.limits.length === 0) return undefined;
  const symbols: FormulaSymbol[] = [];
  const steps: FormulaStep[] = [];
  const travels: number[] = [];
  let atWheel = Number.POSITIVE_INFINITY;
  let usesLayout = false;
  places.limits.forEach((limit, index) => {
    const letter = `c${index + 1}`;
    const reading = means[limit.clearance] ?? Number.NaN;
    const words = messages.limit({ kind: limit.kind });
    const told: FormulaSymbol[] = [
      {
        symbol: letter,
        meaning:
          limit.at === "hand"
            ? messages.contactFoundByHand({ words })
            : messages.clearanceAt({ words, at: limit.at }),
        value: mm(reading),
        origin: originOf(places.all[limit.clearance]?.reading ?? undefined),
      },
    ];
    const working = limitWorking(context, limit, index + 1, reading, told);
    if (!(working.value <= kinematics.range[1])) return;
    usesLayout ||= limit.at === "stop" || limit.at === "arm";
    symbols.push(...told);
    steps.push(...working.steps);
    travels.push(working.value);
    if (limit.at === "wheel" || limit.at === "hand") atWheel = Math.min(atWheel, working.value);
  });
  if (travels.length === 0) return undefined;
  const value = Math.min(...travels);
  if (travels.length > 1) {
    steps.push(
      step(
        { text: leastLimitText, by: anyOf(travels.map((_, index) => `z${index + 1}`)) },
        Object.fromEntries(travels.map((travel, index) => [`z${index + 1}`, mm(travel)])),
        mm(value),
      ),
    );
  }
  if (usesLayout) symbols.push(...context.layout.symbols);
  return { value, steps, symbols, atWheel };
}

/** One letter or another. */
function anyOf([first = "", ...others]: readonly string[]): Words {
  return others.length === 0 ? first : messages.orRest({ first, rest: anyOf(others) });
}

const outOfReach: Working = { value: Number.NaN, steps: [] };

/** Wheel travel at one limit, by where its clearance was measured. */
function limitWorking(
  { layout, atMeans: { means, places } }: CornerContext,
  limit: LimitPlaces,
  number: number,
  reading: number,
  told: FormulaSymbol[],
): Working {
  const letter = `c${number}`;
  const z = { letter: `z${number}` };
  const c = { letter, value: mm(reading) };
  if (limit.at === "stop") return layout.wheelTravel(reading, letter);
  if (limit.at === "arm") {
    const distance = means[limit.distance] ?? Number.NaN;
    told.push({
      symbol: `d${number}`,
      meaning: messages.howFarOutOn,
      value: mm(distance),
      origin: originOf(places.all[limit.distance]?.reading ?? undefined),
    });
    return (
      layout.armPoint?.(distance, reading, { distance: `d${number}`, clearance: letter }) ??
      outOfReach
    );
  }
  if (limit.at === "hand") {
    const ride = limit.distance < 0 ? null : (means[limit.distance] ?? Number.NaN);
    const travel = ride === null ? reading : travelByHeights(ride, reading);
    return {
      value: travel,
      steps: [
        ride === null
          ? step(handLimitFormulas.travel, { z, c }, mm(travel))
          : step(
              handLimitFormulas.heights,
              {
                z,
                heightAtRide: { name: termNames.heightAtRide, value: mm(ride) },
                heightAtContact: { name: termNames.heightAtContact, value: mm(reading) },
              },
              mm(travel),
            ),
      ],
    };
  }
  const { perWheel } = limit;
  const travel = wheelLimitTravel(reading, perWheel);
  told.push({
    symbol: `p${number}`,
    meaning: messages.howMuchThatCloses,
    value: quantity("count", perWheel),
    origin: messages.fromCheck,
  });
  return {
    value: travel,
    steps: [
      step(
        wheelLimitFormula,
        { z, c, p: { letter: `p${number}`, value: quantity("count", perWheel) } },
        mm(travel),
      ),
    ],
  };
}
