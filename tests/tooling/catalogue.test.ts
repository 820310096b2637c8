import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Token } from "@messageformat/parser";
import { describe, expect, it } from "vitest";
import {
  casesOf,
  compiledFolder,
  readCatalogue,
  textsOf,
  tokensOf,
  valuesOf,
} from "../../src/tooling/words/catalogue.ts";
import { compiledCatalogue, textsByCode } from "../../src/tooling/words/compiledCatalogue.ts";
import {
  codesModule,
  compiledMessages,
  textsModule,
  wordsModule,
} from "../../src/tooling/words/compileWords.ts";
import { pseudoEnd, pseudoMessage, pseudoStart } from "../../src/tooling/words/pseudoLanguage.ts";
import { withOwnWords } from "../../src/tooling/words/wordsInBuild.ts";

const catalogue = readCatalogue();

describe("the catalogue", () => {
  it("is compiled as it stands: npm run words", () => {
    const compiled = readdirSync(compiledFolder, { recursive: true, encoding: "utf8" })
      .filter((file) => file.endsWith(".ts"))
      .map((file) => file.replaceAll("\\", "/"))
      .sort();
    const written = compiledCatalogue(catalogue);
    expect(compiled).toEqual([...written.keys()].sort());
    for (const [path, code] of written) {
      const file = join(compiledFolder, path);
      expect(readFileSync(file, "utf8") === code, file).toBe(true);
    }
  });

  it("has keys that are names, and no text twice in a room", () => {
    for (const [room, messages] of catalogue) {
      const keys = Object.keys(messages);
      expect(keys.filter((key) => !/^[a-z][A-Za-z0-9]*$/.test(key))).toEqual([]);
      const texts = Object.values(messages);
      expect(
        texts.filter((text, index) => texts.indexOf(text) !== index),
        room,
      ).toEqual([]);
    }
  });

  it("formats no values: numbers come as text, in the person's units", () => {
    const typeOf = (token: Token): string[] => [
      token.type,
      ...casesOf(token).flatMap(({ tokens }) => tokens.flatMap(typeOf)),
    ];
    const formats = [...catalogue].flatMap(([room, messages]) =>
      Object.entries(messages)
        .filter(([, message]) => tokensOf(message).flatMap(typeOf).includes("function"))
        .map(([key]) => `${room}: ${key}`),
    );
    expect(formats).toEqual([]);
  });
});

describe("a message", () => {
  const message =
    "There {n, plural, one {is one check} other {are {n} checks}} on the {side, select, left {left} other {right}}{hasName, select, true {, {name}} other {}}.";

  it("says what its values may be", () => {
    expect([...valuesOf(message)]).toEqual([
      ["n", "number"],
      ["side", "string | undefined"],
      ["hasName", "boolean"],
      ["name", "string | number | undefined"],
    ]);
    expect([...valuesOf("{a, select, x {{b}} other {}} {b}")]).toEqual([
      ["a", "string | undefined"],
      ["b", "string | number"],
    ]);
  });

  it("tells every text that it can become", () => {
    const texts = textsOf(message);
    expect(texts).toHaveLength(8);
    expect(texts).toContain("There is one check on the left, X.");
    expect(texts).toContain("There are X checks on the right.");
  });

  it("is a text where it takes no values, else a function that puts them in", () => {
    const { byKey } = compiledMessages({ plain: "It's.", told: "{a}{b}" });
    expect(byKey.get("told")?.code).toBe('"" + d.a + d.b');
    expect(wordsModule({ plain: "Don't." })).toContain('export const plain: string = "Don\'t.";');
    const written = wordsModule({ message });
    expect(written).toContain(
      "(d: { n: number; side: string | undefined; hasName: boolean; name: string | number | undefined }): string =>",
    );
  });

  it("is named by its code where its room does not say it, with its values as they are", () => {
    const written = codesModule("records/check", {
      plain: "Don't.",
      told: "{a}{n, plural, one {x} other {y}}",
    });
    expect(written).toContain('import type { Message, MessageValue } from "../../message.ts";');
    expect(written).toContain('export const plain: Message = { code: "records/check.plain" };');
    expect(written).toContain(
      'export const told = (values: { a: MessageValue; n: number }): Message => ({ code: "records/check.told", values });',
    );
    const texts = textsModule({ "records/check.plain": "Don't.", "records/check.told": "{a}!" });
    expect(texts).toContain('"records/check.plain": "Don\'t.",');
    expect(texts).toContain('"records/check.told": (d) => "" + d.a + "!",');
  });

  it("has its text once, with the first screen where that may show it", () => {
    const { first, later } = textsByCode(catalogue);
    const named = [...catalogue].filter(([room]) =>
      /^(physics|records|sharing|storage)/.test(room),
    );
    const count = named.reduce((sum, [, messages]) => sum + Object.keys(messages).length, 0);
    expect(Object.keys(first).length + Object.keys(later).length).toBeGreaterThanOrEqual(count);
    expect(Object.keys(first).filter((code) => code in later)).toEqual([]);
    // The list of checks names one without a name; it shows no verdict's sentences.
    expect(Object.keys(first)).toContain("records/check.noNameYet");
    expect(Object.keys(first).filter((code) => code.startsWith("physics"))).toEqual([]);
    expect(Object.keys(first).length).toBeLessThan(20);
  });

  it("stands in a build where it is said, with nothing of its room that is not", () => {
    const words = compiledMessages({ a: "One", b: "{n, plural, one {x} other {y}}", c: "Three" });
    const line = 'import * as messages from "../words/compiled/x.ts";';
    const code = withOwnWords(
      `import y from "./messages.ts";\n${line}\nshow(messages.a, messages.b({ n }), messages.b({ n: 2 }));`,
      line,
      words,
    );
    expect(code).toBe(
      [
        'import { en } from "@messageformat/runtime/lib/cardinals";',
        'import { plural } from "@messageformat/runtime";',
        'const said_b = (d) => plural(d.n, 0, en, { one: "x", other: "y" });',
        'import y from "./messages.ts";',
        "",
        'show("One", said_b({ n }), said_b({ n: 2 }));',
      ].join("\n"),
    );
    expect(() => withOwnWords(`${line}\nmessages.d`, line, words)).toThrow("no message d");
  });
});

describe("the language for tests", () => {
  it("is longer by two fifths at least, between marks, with its values and choices untouched", () => {
    for (const [, messages] of catalogue) {
      for (const message of Object.values(messages)) {
        const said = pseudoMessage(message);
        expect([...valuesOf(said)]).toEqual([...valuesOf(message)]);
        const [longest, plain] = [textsOf(said), textsOf(message)].map((texts) =>
          Math.max(...texts.map((text) => text.length)),
        );
        if (!/[A-Za-z]/.test(textsOf(message).join("").replace(/X/g, ""))) continue;
        const letters = Math.max(
          ...textsOf(message).map((text) => text.replace(/X|[^A-Za-z]/g, "").length),
        );
        expect(longest).toBeGreaterThanOrEqual((plain ?? 0) + 0.4 * letters);
        for (const text of textsOf(said)) {
          expect(text.trim().startsWith(pseudoStart) && text.trim().endsWith(pseudoEnd)).toBe(true);
          expect(text.replace(/X/g, "")).not.toMatch(/[A-Za-z]/);
        }
      }
    }
  });

  it("keeps space at the ends, and marks of the format that are text", () => {
    expect(pseudoMessage(" and ")).toBe(" ⟦áńđóó⟧ ");
    expect(textsOf(pseudoMessage("a '{b}'"))).toEqual(["⟦á {ƀ}ó⟧"]);
    expect(pseudoMessage("± {x}")).toBe("± {x}");
  });
});
