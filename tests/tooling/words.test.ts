import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { shownTexts } from "../support/shownTexts.ts";

const glossary = "src/records/text/GLOSSARY.md";

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
/** A command's help and a formula are no sentences. */
const noSentences = /^src\/(command-line|server|tooling)\/|^src\/screens\/oldBrowser\.ts$/;
const mostWords = 20;

const files = readdirSync("src", { recursive: true, encoding: "utf8" })
  .map((file) => join("src", file))
  .filter((file) => /\.tsx?$/.test(file) && !notShown.includes(file))
  .sort();
const texts = files.flatMap((file) =>
  shownTexts(readFileSync(file, "utf8"), file.endsWith("x") ? "tsx" : "ts").map((text) => ({
    ...text,
    file,
  })),
);

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
    "soft",
    "#/list",
  ]);
  expect(texts.length).toBeGreaterThan(4000);
  expect(ruledOut.length).toBeGreaterThan(40);
});

it("uses one word a concept, as the glossary has it", () => {
  const found = texts.flatMap(({ file, line, text }) =>
    // A single word is a name in the code.
    text.includes(" ")
      ? ruledOut
          .filter(({ instead }) =>
            new RegExp(`(?<![\\w-])${instead}(s|es)?(?!\\.?[\\w-])`, "i").test(text),
          )
          .map(({ word, instead }) => `${file}:${line}: “${instead}” is “${word}” here: ${text}`)
      : [],
  );
  expect(found).toEqual([]);
});

it("says no sentence of more than twenty words", () => {
  const long = texts
    .filter(({ file, text }) => !noSentences.test(file) && !/[=·√]/.test(text))
    .flatMap(({ file, line, text }) =>
      text
        .split(/(?<=[.!?]) +/)
        .filter((sentence) => sentence.split(/ +/).length > mostWords)
        .map((sentence) => `${file}:${line}: ${sentence}`),
    );
  expect(long).toEqual([]);
});
