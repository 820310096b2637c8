import { measuredGapOf } from "../../budget/gap.ts";
import { handContactsOf } from "../../budget/handContacts.ts";
import type { Corner, Fitment } from "../../fitment.ts";
import { meanOf } from "../measured.ts";
import {
  type FormulaStep,
  type FormulaSymbol,
  type LayoutWorking,
  mm,
  quantity,
  type Working,
} from "../workedFigure.ts";

/** A contact found by hand that the computed travel is led through, mm. */
interface LedContact {
  readonly closing: number;
  readonly travel: number;
  readonly what: string;
}

/** The contacts of stop and block of a side at their means, by closing. */
function ledContacts(fitment: Fitment, corner: Corner): readonly LedContact[] {
  const found = handContactsOf(fitment, corner);
  const gap = measuredGapOf(fitment, corner);
  if (found === null || !gap.ok) return [];
  const ride = found.atRide === null ? null : meanOf(found.atRide.reading);
  const travel = (mean: number) => (ride === null ? mean : ride - mean);
  const { freeHeight } = fitment.recordedStop ?? fitment.stop;
  const contacts: LedContact[] = [];
  if (found.stop !== null) {
    contacts.push({
      closing: gap.value,
      travel: travel(meanOf(found.stop.reading)),
      what: "the stop was met by hand",
    });
  }
  if (found.block !== null) {
    contacts.push({
      closing: gap.value + meanOf(freeHeight) - meanOf(found.block.height.reading),
      travel: travel(meanOf(found.block.reading)),
      what: "the block was met by hand",
    });
  }
  return contacts.sort((one, other) => one.closing - other.closing);
}

/**
 * The same working led through the contacts that were found by hand, which go before what is computed.
 * `closingOf` s(z) of the led motion, mm: between two contacts s is found by search.
 */
export function handLedWorking(
  fitment: Fitment,
  corner: Corner,
  layout: LayoutWorking,
  closingOf: (travel: number) => number,
): LayoutWorking {
  const contacts = ledContacts(fitment, corner);
  const first = contacts[0];
  const last = contacts.at(-1);
  if (first === undefined || last === undefined) return layout;
  const modelledAt = (closing: number) => layout.wheelTravel(closing, "s").value;
  const firstFactor = first.travel / modelledAt(first.closing);
  const lastModelled = modelledAt(last.closing);
  const lastFactor = last.travel / lastModelled;
  const symbols: readonly FormulaSymbol[] = [
    ...layout.symbols,
    ...contacts.flatMap(({ closing, travel, what }, index) => [
      {
        symbol: `s${index + 1}`,
        meaning: `closing at which ${what}`,
        value: mm(closing),
        origin: "from gap and heights",
      },
      {
        symbol: `z${index + 1}`,
        meaning: `wheel travel at which ${what}`,
        value: mm(travel),
        origin: "found by hand",
      },
    ]),
  ];
  const factorStep = (name: string, contact: LedContact): FormulaStep => ({
    formula: `${name}: wheel travel by hand over the computed one`,
    worked: [mm(contact.travel), " / ", mm(modelledAt(contact.closing))],
    result: quantity("count", contact.travel / modelledAt(contact.closing)),
  });
  const led = (closing: number, modelled: number): Working => {
    if (closing <= first.closing + 1e-9) {
      const value = firstFactor * modelled;
      return {
        value,
        steps: [
          factorStep("m1", first),
          {
            formula: "z = m1·ẑ",
            worked: [quantity("count", firstFactor), " · ", mm(modelled)],
            result: mm(value),
          },
        ],
      };
    }
    if (closing <= last.closing + 1e-9) {
      const share = (closing - first.closing) / (last.closing - first.closing);
      const factor = firstFactor + (lastFactor - firstFactor) * share;
      return {
        value: factor * modelled,
        steps: [
          factorStep("m1", first),
          factorStep("m2", last),
          {
            formula: "m = m1 + (m2 − m1)·(s − s1)/(s2 − s1)",
            worked: [
              quantity("count", firstFactor),
              " + (",
              quantity("count", lastFactor),
              " − ",
              quantity("count", firstFactor),
              ") · (",
              mm(closing),
              " − ",
              mm(first.closing),
              ") / (",
              mm(last.closing),
              " − ",
              mm(first.closing),
              ")",
            ],
            result: quantity("count", factor),
          },
          {
            formula: "z = m·ẑ",
            worked: [quantity("count", factor), " · ", mm(modelled)],
            result: mm(factor * modelled),
          },
        ],
      };
    }
    const value = last.travel + lastFactor * (modelled - lastModelled);
    return {
      value,
      steps: [
        factorStep("m of the last contact", last),
        {
          formula: "z = z of the last contact + m·(ẑ − ẑ there)",
          worked: [
            mm(last.travel),
            " + ",
            quantity("count", lastFactor),
            " · (",
            mm(modelled),
            " − ",
            mm(lastModelled),
            ")",
          ],
          result: mm(value),
        },
      ],
    };
  };
  const wheelTravel = (closing: number, letter: string): Working => {
    const modelled = layout.wheelTravel(closing, letter);
    const travel = led(closing, modelled.value);
    return { value: travel.value, steps: [...modelled.steps, ...travel.steps] };
  };
  const { armPoint } = layout;
  return {
    symbols,
    source: `${layout.source} What was found by hand goes before what was computed (ẑ).`,
    ratio() {
      const modelled = layout.ratio();
      const value = firstFactor * modelled.value;
      return {
        value,
        steps: [
          ...modelled.steps,
          factorStep("m1", first),
          {
            formula: "R = m1·R̂",
            worked: [quantity("count", firstFactor), " · ", quantity("ratio", modelled.value)],
            result: quantity("ratio", value),
          },
        ],
      };
    },
    wheelTravel,
    closing(travel, letter) {
      const closing = closingOf(travel);
      return {
        value: closing,
        steps: [
          ...wheelTravel(closing, "s").steps,
          {
            formula: `s at which z is ${letter}, found by search; the lines above show it`,
            worked: [mm(closing)],
            result: mm(closing),
          },
        ],
      };
    },
    ...(armPoint !== undefined && {
      armPoint: (...asked: Parameters<typeof armPoint>) => {
        const modelled = armPoint(...asked);
        const closing = layout.closing(modelled.value, "ẑ").value;
        const travel = led(closing, modelled.value);
        return { value: travel.value, steps: [...modelled.steps, ...travel.steps] };
      },
    }),
  };
}
