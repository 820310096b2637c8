import type { Token } from "@messageformat/parser";
import { casesOf, type Messages, tokensOf } from "./catalogue.ts";

/*
 * A language for tests alone: every word of the catalogue stands between marks, its letters carry accents, and it is longer by
 * two fifths, as a translation may be. What is cut misses its end, what is not of the catalogue has plain letters.
 */

export const pseudoStart = "⟦";
export const pseudoEnd = "⟧";
const longerBy = 0.4;

const plain = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ";
const accented = "áƀćđéƒǵĥíĵķĺɱńóṕɋŕśţúṽẃẋýźÁßĆĐÉƑǴĤÍĴĶĹṀŃÓṔɊŔŚŢÚṼẂẊÝŹ";
const letters = new Map(
  [...plain].map((letter, index) => [letter, [...accented][index] ?? letter]),
);

function accentedText(text: string): string {
  return [...text].map((letter) => letters.get(letter) ?? letter).join("");
}

/** More of it, a syllable a word, so that lines break as words do. */
function padding(letterCount: number): string {
  const wanted = Math.ceil(longerBy * letterCount);
  const words = Math.floor(wanted / 6);
  return `${" ·óóóó".repeat(words)}${"ó".repeat(wanted - 6 * words)}`;
}

function escaped(text: string, inPlural: boolean): string {
  return text.replace(inPlural ? /[{}#]+/g : /[{}]+/g, "'$&'").replace(/^'|'$/g, "$&");
}

function written(tokens: readonly Token[], inPlural: boolean): string {
  return tokens
    .map((token) => {
      if (token.type === "content") return escaped(accentedText(token.value), inPlural);
      if (token.type === "octothorpe") return "#";
      if (token.type === "argument") return `{${token.arg}}`;
      if (token.type === "function")
        throw new Error("A message formats no values: they come as text.");
      const cases = casesOf(token).map(
        ({ key, tokens: inner }) =>
          `${key} {${written(inner, inPlural || token.type === "plural")}}`,
      );
      return `{${token.arg}, ${token.type}, ${cases.join(" ")}}`;
    })
    .join("");
}

function lettersIn(tokens: readonly Token[]): number {
  return tokens.reduce((sum, token) => {
    if (token.type === "content") return sum + (token.value.match(/[A-Za-z]/g)?.length ?? 0);
    return sum + Math.max(0, ...casesOf(token).map(({ tokens: inner }) => lettersIn(inner)));
  }, 0);
}

/** A message in the language for tests. Space at its ends stays where it is; one without letters stays as it is. */
export function pseudoMessage(message: string): string {
  const tokens = tokensOf(message);
  const count = lettersIn(tokens);
  if (count === 0) return message;
  const text = written(tokens, false);
  const [, before = "", middle = "", after = ""] = /^(\s*)(.*?)(\s*)$/s.exec(text) ?? [];
  return `${before}${pseudoStart}${middle}${padding(count)}${pseudoEnd}${after}`;
}

export function pseudoMessages(messages: Messages): Messages {
  return Object.fromEntries(
    Object.entries(messages).map(([key, message]) => [key, pseudoMessage(message)]),
  );
}
