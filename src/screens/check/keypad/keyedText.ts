import { isMinus, withSign } from "../reading/angleSign.ts";

/** What one key does. Fractions are of an inch; a step adds to the fraction that stands there. */
export type Key =
  | { readonly does: "digit"; readonly digit: string }
  | { readonly does: "point" }
  | { readonly does: "fraction"; readonly fraction: string }
  | { readonly does: "step"; readonly denominator: 16 | 32 }
  | { readonly does: "sign" }
  | { readonly does: "erase" }
  | { readonly does: "clear" };

export interface Keyed {
  readonly text: string;
  /** Where the caret stands after the key; start and end before it. */
  readonly start: number;
  readonly end: number;
}

/** The eighths of an inch, reduced: the marks of a tape that are told apart at a glance. */
export const eighths = ["1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8"] as const;

const mostDigits = 7;
const finished = /^(-?)(?:(\d+) )?(\d+)\/(2|4|8|16|32|64)$/;

/** Whole inches and a fraction, or what else the text is taken as: a number, or nothing. */
function taken(text: string): { sign: string; whole: string; parts: number; of: number } | null {
  const plain = text.trim().replace(/^[−–]/, "-");
  const fraction = finished.exec(plain);
  if (fraction) {
    const [, sign = "", whole = "", parts, of] = fraction;
    return { sign, whole, parts: Number(parts), of: Number(of) };
  }
  const whole = /^(-?)(\d*)$/.exec(plain);
  return whole ? { sign: whole[1] ?? "", whole: whole[2] ?? "", parts: 0, of: 1 } : null;
}

function written(sign: string, whole: string, parts: number, of: number): string {
  let [above, below] = [parts, of];
  while (above > 0 && above % 2 === 0 && below % 2 === 0) {
    above /= 2;
    below /= 2;
  }
  if (above === 0) return `${sign}${whole}`;
  const bare = whole.replace(/^0+(?=\d)/, "");
  return bare === "" || bare === "0"
    ? `${sign}${above}/${below}`
    : `${sign}${bare} ${above}/${below}`;
}

function atEnd(text: string): Keyed {
  return { text, start: text.length, end: text.length };
}

function withFraction({ text }: Keyed, fraction: string): Keyed {
  const [parts = 0, of = 1] = fraction.split("/").map(Number);
  const whole = taken(text.replace(/[.,]\d*$/, ""));
  return atEnd(whole ? written(whole.sign, whole.whole, parts, of) : fraction);
}

function withStep(keyed: Keyed, denominator: 16 | 32): Keyed {
  const before = taken(keyed.text);
  if (!before) return keyed;
  const of = Math.max(before.of, denominator);
  const parts = before.parts * (of / before.of) + of / denominator;
  const carried = parts >= of ? 1 : 0;
  const whole = carried ? String(Number(before.whole) + 1) : before.whole;
  return atEnd(written(before.sign, whole, parts - carried * of, of));
}

function inserted({ text, start, end }: Keyed, more: string): Keyed {
  const caret = start + more.length;
  return { text: text.slice(0, start) + more + text.slice(end), start: caret, end: caret };
}

function withDigit(keyed: Keyed, digit: string): Keyed {
  const { text, start, end } = keyed;
  const behind = start === end && end === text.length;
  const fraction = behind ? finished.exec(text) : null;
  if (fraction) {
    // A digit behind a fraction is one more of the whole inches.
    const [, sign = "", whole = "", parts, of] = fraction;
    if (whole.length >= mostDigits) return keyed;
    return atEnd(`${sign}${whole}${digit} ${parts}/${of}`);
  }
  const next = inserted(keyed, digit);
  return next.text.replace(/\D/g, "").length > mostDigits && start === end ? keyed : next;
}

function withPoint(keyed: Keyed): Keyed {
  const left = keyed.text.slice(0, keyed.start) + keyed.text.slice(keyed.end);
  if (/[.,/]/.test(left)) return keyed;
  return inserted(keyed, /\d$/.test(keyed.text.slice(0, keyed.start)) ? "." : "0.");
}

function erased({ text, start, end }: Keyed): Keyed {
  if (start !== end) return inserted({ text, start, end }, "");
  if (end === text.length && finished.test(text)) {
    return atEnd(text.replace(/ ?\d+\/\d+$/, ""));
  }
  return inserted({ text, start: Math.max(0, start - 1), end }, "");
}

/** The text after a key, and where the caret then stands. */
export function pressed(keyed: Keyed, key: Key): Keyed {
  switch (key.does) {
    case "digit":
      return withDigit(keyed, key.digit);
    case "point":
      return withPoint(keyed);
    case "fraction":
      return withFraction(keyed, key.fraction);
    case "step":
      return withStep(keyed, key.denominator);
    case "sign":
      return atEnd(withSign(keyed.text, !isMinus(keyed.text)));
    case "erase":
      return erased(keyed);
    case "clear":
      return atEnd("");
  }
}
