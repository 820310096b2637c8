import * as messages from "../words/compiled/saying.ts";

/** A number inside a formula: five figures, no needless zeros, no exponent from 0.0001 up to a million. */
export function plain(value: number): string {
  if (!Number.isFinite(value)) return messages.unknown;
  if (value === 0) return "0";
  const magnitude = Math.abs(value);
  if (magnitude >= 1e6 || magnitude < 1e-4) {
    const [mantissa, exponent] = value.toExponential(3).split("e");
    return `${Number(mantissa)} · 10${superscript(Number(exponent))}`;
  }
  return String(Number(value.toPrecision(5)));
}

const raised: Record<string, string> = {
  "-": "⁻",
  "0": "⁰",
  "1": "¹",
  "2": "²",
  "3": "³",
  "4": "⁴",
  "5": "⁵",
  "6": "⁶",
  "7": "⁷",
  "8": "⁸",
  "9": "⁹",
};

function superscript(exponent: number): string {
  return [...String(exponent)].map((character) => raised[character] ?? character).join("");
}
