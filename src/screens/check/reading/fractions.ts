/** The fractions that a tape shows, in sixteenths and reduced: 1/16, 1/8 … 15/16. */
export const tapeFractions: readonly string[] = Array.from({ length: 15 }, (_, index) => {
  let numerator = index + 1;
  let denominator = 16;
  while (numerator % 2 === 0) {
    numerator /= 2;
    denominator /= 2;
  }
  return `${numerator}/${denominator}`;
});

const fractionAtEnd = /(?:^|[\s-])\d+\/\d*$/;

/** The text with this fraction behind its whole number, in place of one that stands there already. */
export function withFraction(text: string, fraction: string): string {
  const trimmed = text.trim();
  const whole = trimmed
    .replace(fractionAtEnd, "")
    .replace(/[.,]\d*$/, "")
    .trim();
  return whole === "" || whole === "0" ? fraction : `${whole} ${fraction}`;
}

/** Without the fraction at its end, or without its last character where there is none. */
export function withoutLast(text: string): string {
  return fractionAtEnd.test(text) ? text.replace(fractionAtEnd, "").trimEnd() : text.slice(0, -1);
}
