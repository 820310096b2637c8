import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { catalogueTexts } from "../support/catalogueTexts.ts";
import { shownTexts } from "../support/shownTexts.ts";

const glossary = "src/words/GLOSSARY.md";

/** What the glossary's last column rules out, each with the word to use. */
const ruledOut = readFileSync(glossary, "utf8")
  .split("\n")
  .filter((line) => line.startsWith("|"))
  .slice(2)
  .flatMap((line) => {
    const [, word = "", , , instead = ""] = line.split("|").map((cell) => cell.trim());
    return instead.split(", ").map((each) => ({ word, instead: each }));
  });

/** Not read by people: the dictionary of short links holds what earlier versions wrote. */
const notShown = ["src/sharing/recordDictionary.ts"];
const compiled = /^src\/words\/compiled\//;
/** A command's help and a formula are no sentences. */
const noSentences = /^(src\/)?(command-line|server|tooling)\b/;
const mostWords = 20;

const files = readdirSync("src", { recursive: true, encoding: "utf8" })
  .map((file) => join("src", file))
  .filter((file) => /\.tsx?$/.test(file) && !notShown.includes(file) && !compiled.test(file))
  .sort();
const inCode = files.flatMap((file) =>
  shownTexts(readFileSync(file, "utf8"), file.endsWith("x") ? "tsx" : "ts").map(
    ({ line, text }) => ({ place: `${file}:${line}`, text }),
  ),
);
const texts = [...catalogueTexts(), ...inCode];

it("finds what is shown: texts of screens, sentences in parts, templates", () => {
  const code = `
    const some: "a type" = pick("one word");
    const fault = ["Too long by ", length(3), many ? " in all cases." : " here.", " Re-measure it."];
    const other = \`The \${name} is off.\`;
    const view = <p class="soft">Hold it <strong>level</strong>, {how}. <Link to="#/list">Back</Link></p>;`;
  expect(shownTexts(code).map(({ text }) => text)).toEqual([
    "one word",
    "Too long by X in all cases. Re-measure it.",
    "The X is off.",
    "Hold it level, X. Back",
    "#/list",
  ]);
  expect(catalogueTexts().length).toBeGreaterThan(4000);
  expect(ruledOut.length).toBeGreaterThan(40);
});

it("uses one word a concept, as the glossary has it", () => {
  const found = texts.flatMap(({ place, text }) =>
    // A single word in the code is a name there.
    text.includes(" ") || !place.startsWith("src/")
      ? ruledOut
          .filter(({ instead }) =>
            new RegExp(`(?<![\\w-])${instead}(s|es)?(?!\\.?[\\w-])`, "i").test(text),
          )
          .map(({ word, instead }) => `${place}: “${instead}” is “${word}” here: ${text}`)
      : [],
  );
  expect(found).toEqual([]);
});

it("says no sentence of more than twenty words", () => {
  const long = texts
    .filter(({ place, text }) => !noSentences.test(place) && !/[=·√]/.test(text))
    .flatMap(({ place, text }) =>
      text
        .split(/(?<=[.!?]) +/)
        .filter((sentence) => sentence.split(/ +/).length > mostWords)
        .map((sentence) => `${place}: ${sentence}`),
    );
  expect(long).toEqual([]);
});

/**
 * Rooms whose words are not of the catalogue: builds and servers speak to engineers, a browser too old for the
 * app has none of it, the tables of a spreadsheet are a format.
 */
const withoutCatalogue =
  /^src\/(server|tooling|records\/packTables|screens\/(oldBrowser|parts\/savePage)\.)/;
/** Names of looks, units, addresses in a record and queries of the page, which nobody reads. */
const nameInCode =
  /^[\w-]+( [\w-]*-[\w-]*| solid| dashed| strong| ghost)+$|^X solid|[[\]]|^\(.*\)$|\.X$|^\.limits\.$|^[a-zA-Z]+(\.[a-zA-Z]+)*\.$|^per (km|mile)$|^(screen and|text\/|input, )|^\.reading-entry|^card ranked|^pad-/;

/** Values of a choice and names of a format, compared and never shown. */
const codesThatReadAsWords = new Set([
  "handed over",
  "send pack",
  "replaced by",
  // What an id begins with where a corner does not say its side.
  "first corner",
  "second corner",
  // Places in a record of which nobody said the side.
  "first corner",
  "second corner",
  // Names of streams of random numbers.
  "stop test",
  "doubt of a test",
  "X tool",
  "X scatter",
  "X shift scatter",
]);

it("says nothing that is not of the catalogue", () => {
  const words = /[A-Za-z]{2,}[,;:.!?]? +[a-z]{2,}|[a-z]{2}\. ?$/;
  const left = inCode.filter(
    ({ place, text }) =>
      !withoutCatalogue.test(place) && words.test(text) && !nameInCode.test(text),
  );
  expect(left.filter(({ text }) => !codesThatReadAsWords.has(text))).toEqual([]);
});
