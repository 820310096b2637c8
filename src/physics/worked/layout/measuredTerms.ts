import type { LayoutPlan } from "../../kinematics/layoutPlan.ts";
import type { GeometryReadingName } from "../../readings/geometryRegistry.ts";
import { geometryRegistry } from "../../readings/geometryRegistry.ts";
import { meanOf, originOf } from "../measured.ts";
import { degrees, type FormulaStep, type FormulaSymbol, mm } from "../workedFigure.ts";

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
  length(name: GeometryReadingName | "gap", symbol: string, meaning: string, absent = 0): number {
    const found = this.#plan.quantities.find((quantity) => quantity.name === name)?.quantity;
    const value = found !== undefined && "value" in found ? found.value : absent;
    this.#tell(name, symbol, meaning, mm(value), found === undefined);
    return value;
  }

  /** Degrees; `standIn` where another stands in for it, else 0. */
  angle(name: GeometryReadingName, symbol: string, meaning: string, standIn = 0): number {
    const found = this.#plan.quantities.find((quantity) => quantity.name === name)?.quantity;
    const value =
      found !== undefined && "sin" in found
        ? (Math.atan2(found.sin, found.cos) * 180) / Math.PI
        : standIn;
    this.#tell(name, symbol, meaning, degrees(value), found === undefined);
    return value;
  }

  #tell(
    name: GeometryReadingName | "gap",
    symbol: string,
    meaning: string,
    value: FormulaSymbol["value"],
    absent: boolean,
  ): void {
    const place = this.#plan.places.find((each) => each.name === name && each.reading !== null);
    const made = !absent && place === undefined && name !== "gap";
    if (made) this.#tellParts(name, symbol, value);
    const origin = absent
      ? geometryRegistryStandIn(name)
      : made
        ? "computed below, from what was taped"
        : originOf(place?.reading ?? undefined);
    this.symbols.push({ symbol, meaning, value, origin });
  }

  /** The readings that a length or angle is made of, and the step that makes it. */
  #tellParts(name: GeometryReadingName, symbol: string, value: FormulaSymbol["value"]): void {
    const { madeOf } = geometryRegistry[name];
    if (madeOf === undefined || typeof value === "string") return;
    const mean = (part: GeometryReadingName): number => {
      const place = this.#plan.places.find((each) => each.name === part);
      return place?.reading ? meanOf(place.reading) : Number.NaN;
    };
    if (madeOf.by === "bolts") {
      const [spacing, front, rear] = [...madeOf.common, ...madeOf.own].map(mean);
      const d = spacing ?? Number.NaN;
      const p = front ?? Number.NaN;
      const q = rear ?? Number.NaN;
      const along = (p * p - q * q + d * d) / (2 * d);
      this.steps.push(
        {
          formula: `x_${symbol} = (p² − q² + d²)/(2·d), along the pivot line`,
          worked: ["[(", mm(p), ")² − (", mm(q), ")² + (", mm(d), ")²] / (2 · ", mm(d), ")"],
          result: mm(along),
        },
        {
          formula: `${symbol} = √(p² − x_${symbol}²)`,
          worked: ["√[(", mm(p), ")² − (", mm(along), ")²]"],
          result: value,
        },
      );
      return;
    }
    const [inner, outer] = [...madeOf.common, ...madeOf.own].map(mean);
    const length = this.#plan.quantities.find((each) => each.name === madeOf.along)?.quantity;
    const along = length !== undefined && "value" in length ? length.value : Number.NaN;
    this.steps.push({
      formula: `${symbol} = asin[(height of its inner end − height of its outer end)/length]`,
      worked: [
        "asin[(",
        mm(inner ?? Number.NaN),
        " − ",
        mm(outer ?? Number.NaN),
        ") / ",
        mm(along),
        "]",
      ],
      result: value,
    });
  }
}

function geometryRegistryStandIn(name: GeometryReadingName | "gap"): string {
  return name !== "gap" && geometryRegistry[name].standIn !== undefined
    ? "not measured, taken as the arm's"
    : "not measured, taken as 0";
}
