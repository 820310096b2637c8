import * as termNames from "../../../words/compiled/physics/terms.ts";
import * as messages from "../../../words/compiled/physics/worked/layout.ts";
import { measuredGapOf } from "../../budget/gap.ts";
import { handContactsOf } from "../../budget/handContacts.ts";
import { HandMotion, handFormulas } from "../../budget/handMotion.ts";
import { travelByHeights } from "../../budget/limitTravel.ts";
import type { Corner, Fitment } from "../../fitment.ts";
import type { Message, Words } from "../../sentence.ts";
import { meanOf } from "../measured.ts";
import { type FormulaStep, step } from "../step.ts";
import {
  type FormulaSymbol,
  type LayoutWorking,
  mm,
  quantity,
  ratioOf,
  type Working,
} from "../workedFigure.ts";

/** A contact found by hand that the computed travel is led through, mm. */
interface LedContact {
  readonly closing: number;
  readonly travel: number;
  readonly what: Message;
}

/** The contacts of stop and block of a side at their means. */
function ledContacts(
  fitment: Fitment,
  corner: Corner,
): { readonly stop?: LedContact; readonly block?: LedContact } {
  const found = handContactsOf(fitment, corner);
  const gap = measuredGapOf(fitment, corner);
  if (found === null || !gap.ok) return {};
  const ride = found.atRide === null ? null : meanOf(found.atRide.reading);
  const travel = (mean: number) => (ride === null ? mean : travelByHeights(ride, mean));
  const { freeHeight } = fitment.recordedStop ?? fitment.stop;
  return {
    ...(found.stop !== null && {
      stop: {
        closing: gap.value,
        travel: travel(meanOf(found.stop.reading)),
        what: messages.stopWasMetBy,
      },
    }),
    ...(found.block !== null && {
      block: {
        closing: gap.value + meanOf(freeHeight) - meanOf(found.block.height.reading),
        travel: travel(meanOf(found.block.reading)),
        what: messages.blockWasMetBy,
      },
    }),
  };
}

/** A layout's motion led through contacts; undefined where that gives none. */
function ledMotion(
  layout: LayoutWorking,
  stop: LedContact | undefined,
  block: LedContact | undefined,
): HandMotion | undefined {
  const motion = new HandMotion(layout.motion);
  const none = { closing: Number.NaN, travel: Number.NaN };
  const { closing: stopClosing, travel: stopTravel } = stop ?? none;
  const { closing: blockClosing, travel: blockTravel } = block ?? none;
  return motion.lead(layout.motion, stopClosing, stopTravel, blockClosing, blockTravel, 0)
    ? motion
    : undefined;
}

/** The same working led through the contacts that were found by hand, which go before what is computed. */
export function handLedWorking(
  fitment: Fitment,
  corner: Corner,
  layout: LayoutWorking,
): LayoutWorking {
  const met = ledContacts(fitment, corner);
  const contacts = [met.stop, met.block]
    .filter((contact) => contact !== undefined)
    .sort((one, other) => one.closing - other.closing);
  const first = contacts[0];
  const last = contacts.at(-1);
  const hand = ledMotion(layout, met.stop, met.block);
  if (first === undefined || last === undefined || hand === undefined) return layout;
  const modelledAt = (closing: number) => mm(layout.motion.wheelTravel(closing));
  const symbols: readonly FormulaSymbol[] = [
    ...layout.symbols,
    ...contacts.flatMap(({ closing, travel, what }, index) => [
      {
        symbol: `s${index + 1}`,
        meaning: messages.closingAtWhich({ what }),
        value: mm(closing),
        origin: messages.fromGapAndHeights,
      },
      {
        symbol: `z${index + 1}`,
        meaning: messages.wheelTravelAtWhich({ what }),
        value: mm(travel),
        origin: messages.foundByHand,
      },
    ]),
  ];
  const factorAt = (closing: number) => quantity("count", hand.factorAt(closing));
  const factorStep = (letter: Words, { closing, travel }: LedContact): FormulaStep =>
    step(
      handFormulas.factor,
      { m_i: { letter }, z_i: mm(travel), ẑ_i: modelledAt(closing) },
      factorAt(closing),
    );
  const m1 = factorAt(first.closing);
  const m2 = factorAt(last.closing);
  const stepsTo = (closing: number, modelled: number, travel: number): readonly FormulaStep[] => {
    const ẑ = mm(modelled);
    const z = mm(travel);
    switch (hand.partOf(closing)) {
      case "before":
        return [factorStep("m1", first), step(handFormulas.before, { m1, ẑ }, z)];
      case "between": {
        const m = factorAt(closing);
        const closings = { s: mm(closing), s1: mm(first.closing), s2: mm(last.closing) };
        return [
          factorStep("m1", first),
          factorStep("m2", last),
          step(handFormulas.between, { m1, m2, ...closings }, m),
          step(handFormulas.betweenTravel, { m, ẑ }, z),
        ];
      }
      default:
        return [
          factorStep(messages.mOfLastContact, last),
          step(
            handFormulas.beyond,
            {
              zOfTheLastContact: { name: termNames.zOfTheLastContact, value: mm(last.travel) },
              m: m2,
              ẑ,
              "ẑ there": modelledAt(last.closing),
            },
            z,
          ),
        ];
    }
  };
  const led = (closing: number, modelled: Working): Working => {
    const travel = hand.wheelTravel(closing);
    return {
      value: travel,
      steps: [...modelled.steps, ...stepsTo(closing, modelled.value, travel)],
    };
  };
  const wheelTravel = (closing: number, letter: string): Working =>
    led(closing, layout.wheelTravel(closing, letter));
  const { armPoint } = layout;
  return {
    symbols,
    motion: layout.motion,
    led: hand,
    source: messages.whatWasFoundBy({ source: layout.source }),
    ratio() {
      const modelled = layout.ratio();
      const ratio = ratioOf(hand);
      return {
        value: ratio.value,
        steps: [
          ...modelled.steps,
          factorStep("m1", first),
          step(handFormulas.ratio, { m1, R̂: quantity("ratio", modelled.value) }, ratio),
        ],
      };
    },
    wheelTravel,
    closing(travel, letter) {
      const closing = hand.closing(travel);
      const found = mm(closing);
      return {
        value: closing,
        steps: [
          ...wheelTravel(closing, "s").steps,
          step(handFormulas.found, { s: found, z_asked: { letter } }, found),
        ],
      };
    },
    ...(armPoint !== undefined && {
      armPoint: (...asked: Parameters<typeof armPoint>) => {
        const modelled = armPoint(...asked);
        return led(layout.motion.closing(modelled.value), modelled);
      },
    }),
  };
}
