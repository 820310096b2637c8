import * as termNames from "../../../words/compiled/physics/terms.ts";
import * as messages from "../../../words/compiled/physics/worked/layout.ts";
import type { LayoutPlan } from "../../kinematics/layoutPlan.ts";
import type { GeometryReadingName } from "../../layouts/geometryRegistry.ts";
import { geometryRegistry } from "../../layouts/geometryRegistry.ts";
import { BoltLength, boltFormulas, heightAngleFormula } from "../../motion/measuredQuantity.ts";
import type { Message, Quantity } from "../../sentence.ts";
import { meanOf, originOf } from "../measured.ts";
import { type FormulaStep, step } from "../step.ts";
import { degrees, type FormulaSymbol, mm } from "../workedFigure.ts";

/**
 * The lengths and angles of a layout at its mean readings, as its own motion has taken them: one measured
 * directly with where it came from, one made of others with the steps that make it.
 */
export class MeasuredTerms {
  readonly symbols: FormulaSymbol[] = [];
  readonly steps: FormulaStep[] = [];
  readonly #plan: LayoutPlan;

  constructor(plan: LayoutPlan) {
    this.#plan = plan;
  }

  /** mm; `absent` where the layout goes without it. */
  length(name: GeometryReadingName | "gap", symbol: string, meaning: Message, absent = 0): number {
    const found = this.#quantity(name);
    const value = found !== undefined && "value" in found ? found.value : absent;
    this.#tell(name, symbol, meaning, mm(value), found === undefined);
    return value;
  }

  /** Degrees; `standIn` where another stands in for it, else 0. */
  angle(name: GeometryReadingName, symbol: string, meaning: Message, standIn = 0): number {
    const found = this.#quantity(name);
    const value =
      found !== undefined && "sin" in found
        ? (Math.atan2(found.sin, found.cos) * 180) / Math.PI
        : standIn;
    this.#tell(name, symbol, meaning, degrees(value), found === undefined);
    return value;
  }

  #quantity(name: GeometryReadingName | "gap") {
    return this.#plan.quantities.find((each) => each.name === name)?.quantity;
  }

  #tell(
    name: GeometryReadingName | "gap",
    symbol: string,
    meaning: Message,
    value: Quantity,
    absent: boolean,
  ): void {
    const place = this.#plan.places.find((each) => each.name === name && each.reading !== null);
    const made = !absent && place === undefined && name !== "gap";
    if (made) this.#tellParts(name, symbol, value);
    const origin = absent
      ? geometryRegistryStandIn(name)
      : made
        ? messages.computedBelowFromWhat
        : originOf(place?.reading ?? undefined);
    this.symbols.push({ symbol, meaning, value, origin });
  }

  /** The readings that a length or angle is made of, and the step that makes it. */
  #tellParts(name: GeometryReadingName, symbol: string, value: Quantity): void {
    const { madeOf } = geometryRegistry[name];
    if (madeOf === undefined) return;
    const mean = (part: GeometryReadingName): number => {
      const place = this.#plan.places.find((each) => each.name === part);
      return place?.reading ? meanOf(place.reading) : Number.NaN;
    };
    if (madeOf.by === "bolts") {
      const [spacing, front, rear] = [...madeOf.common, ...madeOf.own].map(mean);
      const quantity = this.#quantity(name);
      const x = mm(quantity instanceof BoltLength ? quantity.along : Number.NaN);
      const letters = {
        p: mm(front ?? Number.NaN),
        q: mm(rear ?? Number.NaN),
        d: mm(spacing ?? Number.NaN),
        x: { letter: `x_${symbol}`, value: x },
        ℓ: { letter: symbol },
      };
      this.steps.push(
        step(boltFormulas.along, letters, x),
        step(boltFormulas.length, letters, value),
      );
      return;
    }
    const [inner, outer] = [...madeOf.common, ...madeOf.own].map(mean);
    const length = this.#quantity(madeOf.along);
    const along = length !== undefined && "value" in length ? length.value : Number.NaN;
    const letters = {
      inner: { name: termNames.heightOfItsInnerEnd, value: mm(inner ?? Number.NaN) },
      outer: { name: termNames.heightOfItsOuterEnd, value: mm(outer ?? Number.NaN) },
      length: mm(along),
      θ: { letter: symbol },
    };
    this.steps.push(step(heightAngleFormula, letters, value));
  }
}

function geometryRegistryStandIn(name: GeometryReadingName | "gap"): Message {
  return name !== "gap" && geometryRegistry[name].standIn !== undefined
    ? messages.notMeasuredTakenAs
    : messages.notMeasuredTakenAs0;
}
