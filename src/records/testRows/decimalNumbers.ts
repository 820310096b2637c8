import { fail, type Outcome, succeed } from "../../physics/outcome.ts";

/** How a file writes its numbers. */
export interface NumberStyle {
  readonly decimalMark: "." | ",";
  /** Commas or points stand between thousands. */
  readonly grouped: boolean;
}

const groupedByCommas = /^[+-]?\d{1,3}(?:,\d{3})+$/;
const groupedByPoints = /^[+-]?\d{1,3}(?:\.\d{3})+$/;

/**
 * The decimal mark of a file's cells of numbers. A comma alone is the decimal mark unless every number
 * with one reads as thousands and another number holds a point.
 *
 * Error: "decimalMarkMixed".
 */
export function numberStyleOf(cells: readonly string[]): Outcome<NumberStyle> {
  const numbers = cells.map((cell) => cell.trim()).filter((cell) => /^[+-]?[\d.,]/.test(cell));
  const withBoth = numbers.filter((cell) => cell.includes(",") && cell.includes("."));
  if (withBoth.length > 0) {
    const commaLast = withBoth.filter((cell) => cell.lastIndexOf(",") > cell.lastIndexOf("."));
    if (commaLast.length === withBoth.length) return succeed({ decimalMark: ",", grouped: true });
    return commaLast.length === 0 ? succeed({ decimalMark: ".", grouped: true }) : mixed();
  }
  const withComma = numbers.filter((cell) => cell.includes(","));
  const withPoint = numbers.filter((cell) => cell.includes("."));
  if (withComma.length === 0) return succeed({ decimalMark: ".", grouped: false });
  if (withPoint.length === 0) {
    const several = withComma.some((cell) => cell.indexOf(",") !== cell.lastIndexOf(","));
    return succeed(
      several ? { decimalMark: ".", grouped: true } : { decimalMark: ",", grouped: false },
    );
  }
  if (withComma.every((cell) => groupedByCommas.test(cell))) {
    return succeed({ decimalMark: ".", grouped: true });
  }
  return withPoint.every((cell) => groupedByPoints.test(cell))
    ? succeed({ decimalMark: ",", grouped: true })
    : mixed();
}

function mixed(): Outcome<never> {
  return fail("decimalMarkMixed", [
    "Some numbers of this file have a decimal point and others a decimal comma. Save it again with one of them.",
  ]);
}

/** A number in the file's style; NaN where the cell holds none. Exponents are read. */
export function numberIn(cell: string, style: NumberStyle): number {
  const comma = style.decimalMark === ",";
  let text = cell;
  if (style.grouped) text = text.replaceAll(comma ? "." : ",", "");
  if (comma) text = text.replace(",", ".");
  const value = plainNumber(text);
  if (!Number.isNaN(value)) return value;
  const cleaned = text.replace(/[\s'’_]/g, "").replace("−", "-");
  return cleaned === text ? Number.NaN : plainNumber(cleaned);
}

/** Digits, sign, point and exponent only: neither "", nor "0x10", nor "Infinity". */
function plainNumber(text: string): number {
  return /^\s*[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?\s*$/.test(text) ? Number(text) : Number.NaN;
}
