import { fail, type Outcome, succeed } from "../../physics/outcome.ts";
import * as messages from "../../words/compiled/records/testRows.ts";
import { shortened } from "../text/jsonText.ts";

/** How a file writes its numbers. */
export interface NumberStyle {
  readonly decimalMark: "." | ",";
  /** Commas or points stand between thousands. */
  readonly grouped: boolean;
}

const groupedByCommas = /^[+-]?\d{1,3}(?:,\d{3})+$/;
const groupedThenPoint = /^[+-]?\d{1,3}(?:,\d{3})+\.\d*$/;
const groupedThenComma = /^[+-]?\d{1,3}(?:\.\d{3})+,\d*$/;
const groupedByPoints = /^[+-]?\d{1,3}(?:\.\d{3})+$/;

/**
 * How a file writes its numbers, from the cells of each of its columns. A comma alone is the decimal mark
 * unless every number with one reads as thousands and another number holds a point. Where a cell such as
 * "1.388" may be read both ways beside the file's other mark, its column decides: the reading that is
 * of the size of the numbers around it.
 *
 * Error: "decimalMarkMixed".
 */
export function numberStyleOf(columns: readonly (readonly string[])[]): Outcome<NumberStyle> {
  const numbers = columns
    .flatMap((cells) => cells.map((cell) => cell.trim()))
    .filter((cell) => /^[+\-−]?[\d.,]/.test(cell));
  const withBoth = numbers.filter((cell) => cell.includes(",") && cell.includes("."));
  if (withBoth.length > 0) {
    const commaLast = withBoth.filter((cell) => cell.lastIndexOf(",") > cell.lastIndexOf("."));
    if (commaLast.length === withBoth.length) return succeed({ decimalMark: ",", grouped: true });
    return commaLast.length === 0
      ? succeed({ decimalMark: ".", grouped: true })
      : mixedMarks(withBoth[0] ?? "");
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
  const found: NumberStyle[] = [];
  if (withComma.every((cell) => groupedByCommas.test(cell))) {
    found.push({ decimalMark: ".", grouped: true });
  }
  if (withPoint.every((cell) => groupedByPoints.test(cell))) {
    found.push({ decimalMark: ",", grouped: true });
  }
  const style = found.find((each) => columns.every((cells) => sizesFit(cells, each)));
  return style === undefined
    ? mixedMarks(numbers.find((cell) => cell.includes(".")) ?? "")
    : succeed(style);
}

/** Numbers read as thousands stand among numbers of their own size, not a thousand times smaller ones. */
function sizesFit(cells: readonly string[], style: NumberStyle): boolean {
  const grouping = style.decimalMark === "," ? groupedByPoints : groupedByCommas;
  const values = cells.map((cell) => Math.abs(numberIn(cell, style)));
  return cells.every((cell, place) => {
    if (!grouping.test(cell.trim())) return true;
    const around = [
      ...values.slice(Math.max(0, place - 4), place),
      ...values.slice(place + 1, place + 5),
    ]
      .filter((value) => Number.isFinite(value))
      .sort((a, b) => a - b);
    const usual = around[around.length >> 1] ?? Number.NaN;
    const here = Math.abs(numberIn(cell, style));
    return Number.isNaN(usual) || here < sizeRatio * usual;
  });
}

/** Halfway, by ratio, between a number and a thousand times it. */
const sizeRatio = Math.sqrt(1000);

/** Both marks, each in its place: thousands in a file that showed none at its beginning. */
function surelyGrouped(cell: string, { decimalMark }: NumberStyle): boolean {
  return (decimalMark === "," ? groupedThenComma : groupedThenPoint).test(cell.trim());
}

/** True for a number with the mark that this file's style has no place for. */
export function wrongMarkIn(cell: string, style: NumberStyle): boolean {
  const { decimalMark, grouped } = style;
  if (grouped || surelyGrouped(cell, style) || !/^\s*[+\-−]?\d[\d.,]*\s*$/.test(cell)) return false;
  return cell.includes(decimalMark === "," ? "." : ",");
}

export function mixedMarks(cell: string): Outcome<never> {
  return fail("decimalMarkMixed", [messages.someNumbersOfThis({ cell: shortened(cell) })]);
}

/** A number in the file's style; NaN where the cell holds none. Exponents are read. */
export function numberIn(cell: string, style: NumberStyle): number {
  const quick = quickNumber(cell, style.decimalMark === "," ? comma : point);
  if (!Number.isNaN(quick)) return quick;
  const byComma = style.decimalMark === ",";
  let text = cell;
  if (style.grouped || surelyGrouped(cell, style)) text = text.replaceAll(byComma ? "." : ",", "");
  else if (text.includes(byComma ? "." : ",")) return Number.NaN;
  if (byComma) text = text.replace(",", ".");
  const value = plainNumber(text);
  if (!Number.isNaN(value)) return value;
  const cleaned = text.replace(/[\s'’_]/g, "").replace("−", "-");
  return cleaned === text ? Number.NaN : plainNumber(cleaned);
}

const comma = 44;
const point = 46;
const minus = 45;
const plus = 43;
const zero = 48;
/** Up to here digits make an exact integer, and 10 to the power of the decimals is exact too. */
const exactDigits = 15;
const powersOfTen = Array.from({ length: exactDigits + 1 }, (_, power) => 10 ** power);

/**
 * Sign, digits and one decimal mark, of at most 15 digits: integer over power of ten, both exact, so
 * that the quotient is the nearest number, as of any reader. NaN for every other cell.
 */
function quickNumber(cell: string, mark: number): number {
  const sign = cell.charCodeAt(0);
  let integer = 0;
  let digits = 0;
  let decimals = -1;
  for (let place = sign === minus || sign === plus ? 1 : 0; place < cell.length; place++) {
    const code = cell.charCodeAt(place);
    if (code === mark && decimals === -1) {
      decimals = 0;
      continue;
    }
    const digit = code - zero;
    if (!(digit >= 0 && digit <= 9)) return Number.NaN;
    integer = 10 * integer + digit;
    digits++;
    if (decimals !== -1) decimals++;
  }
  if (digits === 0 || digits > exactDigits) return Number.NaN;
  const value = decimals > 0 ? integer / (powersOfTen[decimals] ?? Number.NaN) : integer;
  return sign === minus ? -value : value;
}

/** Digits, sign, point and exponent only: neither "", nor "0x10", nor "Infinity". */
function plainNumber(text: string): number {
  return /^\s*[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?\s*$/.test(text) ? Number(text) : Number.NaN;
}
