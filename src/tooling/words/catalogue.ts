import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { parse, type Token } from "@messageformat/parser";

/** The messages of one room by their keys, each in ICU MessageFormat. */
export type Messages = { readonly [key: string]: string };

const catalogueFolder = "src/words/en";
export const compiledFolder = "src/words/compiled";

/** Every room of the catalogue by its path, "screens/desk", sorted. */
export function readCatalogue(folder = catalogueFolder): ReadonlyMap<string, Messages> {
  const files = readdirSync(folder, { recursive: true, encoding: "utf8" })
    .map((file) => file.replaceAll("\\", "/"))
    .filter((file) => file.endsWith(".json"))
    .sort();
  return new Map(
    files.map((file) => [
      file.replace(/\.json$/, ""),
      JSON.parse(readFileSync(join(folder, file), "utf8")) as Messages,
    ]),
  );
}

/** Rooms that put their messages into words themselves. All others name a message, by its code. */
const saying = /^(screens|command-line|saying)(\/|$)/;

export function isSaid(room: string): boolean {
  return saying.test(room);
}

/** What a message is named by, where it is not said: "physics/verdict.leftAndRightAgree". */
export function codeOf(room: string, key: string): string {
  return `${room}.${key}`;
}

/** The parts of a message; one that is no ICU MessageFormat throws, with its place. */
export function tokensOf(message: string): Token[] {
  return parse(message, { cardinal: ["one", "other"], ordinal: [] });
}

/** Cases of a choice or a count lead to texts of their own. */
export function casesOf(token: Token): readonly { key: string; tokens: Token[] }[] {
  return token.type === "plural" || token.type === "select" ? token.cases : [];
}

/** What a message's values may be, as TypeScript, by name. One that only some choices say may be missing. */
export function valuesOf(message: string): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  const walk = (tokens: readonly Token[], chosen: boolean) => {
    for (const token of tokens) {
      if (token.type === "argument") {
        const sometimes = chosen && (found.get(token.arg) ?? missing) === missing;
        const known = found.get(token.arg);
        if (known === undefined || known === missing) {
          found.set(token.arg, sometimes ? missing : "string | number");
        }
      }
      if (token.type === "plural") found.set(token.arg, "number");
      if (token.type === "select") found.set(token.arg, choiceType(token.cases));
      for (const { tokens: inner } of casesOf(token))
        walk(inner, chosen || token.type === "select");
    }
  };
  walk(tokensOf(message), false);
  return found;
}

const missing = "string | number | undefined";

function choiceType(cases: readonly { key: string }[]): string {
  const keys = cases.map(({ key }) => key);
  return keys.every((key) => ["true", "false", "other"].includes(key))
    ? "boolean"
    : "string | undefined";
}

/** Every text that a message can become, values standing as X: one for each of its choices. */
export function textsOf(message: string): readonly string[] {
  const combine = (tokens: readonly Token[]): string[] =>
    tokens.reduce<string[]>(
      (before, token) => {
        const parts =
          token.type === "content"
            ? [token.value]
            : casesOf(token).length > 0
              ? casesOf(token).flatMap(({ tokens: inner }) => combine(inner))
              : ["X"];
        return before.flatMap((start) => parts.map((part) => `${start}${part}`));
      },
      [""],
    );
  return combine(tokensOf(message));
}
