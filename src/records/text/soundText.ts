/**
 * Text from outside, made fit to be shown: Unicode's lone halves of letters (category Cs) and control
 * characters (Cc), the marks that turn the direction of what stands beside them (UAX #9, 2.1 to 2.4) and
 * letters that show nothing (UAX #44, Default_Ignorable_Code_Point, but for joiners and variants of a letter)
 * have no place in what a person typed, nor more marks on one letter than any script has.
 */

/** With the u flag a pair of surrogates is one letter, so that only lone ones are found. */
const loneHalves = /\p{Cs}/gu;
const lineEnds = /\r\n?|[\u0085\u2028\u2029]/gu;
const unseen = /(?![\t\n])\p{Cc}|[\u202a-\u202e\u2066-\u206f\ufeff\ufff9-\ufffb]/gu;
const showsNothing =
  /(?!\u200c|\u200d|[\ufe00-\ufe0f]|[\u{e0100}-\u{e01ef}])\p{Default_Ignorable_Code_Point}/gu;
/** Piled up they would cover the lines above and below. */
const piledMarks = /(\p{M}{8})\p{M}+/gu;
/** Plain letters, digits and signs are most of all text, pictures in base64 among it. */
const anythingElse = /[^\n\x20-\x7e]/;

/** Lone halves of letters as U+FFFD; what `String.prototype.toWellFormed` gives in newer browsers. */
export function wellFormed(text: string): string {
  return text.replace(loneHalves, "\ufffd");
}

/** Well-formed, its line ends "\n", without controls and marks of direction. */
export function cleanText(text: string): string {
  if (!anythingElse.test(text)) return text;
  return wellFormed(text)
    .replace(lineEnds, "\n")
    .replace(unseen, "")
    .replace(showsNothing, "")
    .replace(piledMarks, "$1");
}

/** Clean text on one line, for names; at most `most` letters. */
export function cleanName(text: string, most = 200): string {
  const line = cleanText(text).replace(/\s+/gu, " ").trim();
  if (line.length <= most) return line;
  return `${[...line].slice(0, most).join("")}…`;
}

/** A part of an address. Total, where `encodeURIComponent` throws for a lone half of a letter. */
export function addressPart(text: string): string {
  return encodeURIComponent(wellFormed(text));
}

/** A part of an address as it was; null where it is none. */
export function readAddressPart(text: string): string | null {
  try {
    return decodeURIComponent(text);
  } catch {
    return null;
  }
}

type Holder = { [name: string]: unknown } | unknown[];

function isHolder(value: unknown): value is Holder {
  return typeof value === "object" && value !== null;
}

/**
 * Cleans every text within a value that was parsed and belongs to nobody yet, in place. Field names stay:
 * none that is not known is ever shown. Walks without a stack of its own calls.
 */
export function cleanTexts<Value>(value: Value): Value {
  if (typeof value === "string") return cleanText(value) as Value & string;
  const open: Holder[] = isHolder(value) ? [value] : [];
  // A database, unlike JSON, can hold circles.
  const seen = new WeakSet<object>(open);
  for (let holder = open.pop(); holder !== undefined; holder = open.pop()) {
    for (const name of Object.keys(holder)) {
      const item: unknown = Reflect.get(holder, name);
      if (isHolder(item) && !seen.has(item)) {
        seen.add(item);
        open.push(item);
      }
      if (typeof item !== "string") continue;
      const clean = cleanText(item);
      if (clean !== item) Reflect.set(holder, name, clean);
    }
  }
  return value;
}
