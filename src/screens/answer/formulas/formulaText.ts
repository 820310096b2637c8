import type { Quantity, Sentence, Words } from "../../../physics/sentence.ts";
import { fromModel, type LengthUnit } from "../../../records/entry/units.ts";
import { plain } from "../../../saying/plainNumber.ts";
import { quantityText, unbroken } from "../../../saying/quantityText.ts";
import { worded } from "../../../saying/texts.ts";
import { unitText } from "../../../saying/unitText.ts";

/** A number inside a formula, with more figures than on the rest of the screen. */
export function formulaQuantity({ kind, value }: Quantity, unit: LengthUnit): string {
  if (!Number.isFinite(value)) return "unknown";
  switch (kind) {
    case "length":
      return unit === "in" ? `${fixed(fromModel(value, "in"), 4)} in` : `${fixed(value, 3)} mm`;
    case "angle":
      return `${fixed(value, 3)}°`;
    case "ratio":
      return `${fixed(value, 4)} : 1`;
    case "share":
      return `${fixed(100 * value, 2)} %`;
    case "count":
      return plain(value);
    case "force":
      return unit === "in" ? `${plain(fromModel(value, "lbf"))} lbf` : `${plain(value)} N`;
    case "rate":
      return unbroken(
        unit === "in"
          ? `${plain(fromModel(value, "lbf/in"))} ${unitText("lbf/in")}`
          : `${plain(value)} N/mm`,
      );
    case "mass":
      return unit === "in" ? `${plain(fromModel(value, "lb"))} lb` : `${plain(value)} kg`;
    default:
      return quantityText({ kind, value }, unit);
  }
}

function fixed(value: number, decimals: number): string {
  const text = String(Number(value.toFixed(decimals)));
  return text === "-0" ? "0" : text.replace("-", "−");
}

export function formulaSentence(words: Words | Quantity | Sentence, unit: LengthUnit): string {
  return worded(words)
    .map((part) => (typeof part === "string" ? part : formulaQuantity(part, unit)))
    .join("");
}
