import { posix } from "node:path";
import type { Plugin } from "vite";
import { compiledFolder, type Messages, readCatalogue } from "./catalogue.ts";
import { type CompiledMessages, compiledMessages } from "./compileWords.ts";
import { pseudoMessages } from "./pseudoLanguage.ts";

const importOfWords = /^import \* as messages from "([^"]+)";$/m;

/**
 * Puts a file's own messages into it in place of the import of its room's: a screen loads the words that it
 * says and no others.
 *
 * @param language "pseudo" builds the app in the language for tests
 */
export function wordsInBuild(language: "en" | "pseudo"): Plugin {
  const rooms = new Map<string, CompiledMessages>();
  const inLanguage = (messages: Messages) =>
    compiledMessages(language === "pseudo" ? pseudoMessages(messages) : messages);
  return {
    name: "words-in-build",
    enforce: "pre",
    buildStart: () => {
      for (const [room, messages] of readCatalogue()) rooms.set(room, inLanguage(messages));
    },
    transform: (code, id) => {
      const [line, path = ""] = importOfWords.exec(code) ?? [];
      const file = posix.join(posix.dirname(id.replaceAll("\\", "/")), path);
      const [, room = ""] = new RegExp(`/${compiledFolder}/(.*)\\.ts$`).exec(file) ?? [];
      const words = rooms.get(room);
      return line === undefined || words === undefined ? null : withOwnWords(code, line, words);
    },
  };
}

/** The code with its messages written where they are said; those of values stand at its head, once each. */
export function withOwnWords(code: string, importLine: string, words: CompiledMessages): string {
  const heads = new Map<string, string>();
  const body = code
    .replace(importLine, "")
    .replace(/(?<![\w./])messages\s*\.\s*(\w+)/g, (_, key: string) => {
      const message = words.byKey.get(key);
      if (message === undefined) throw new Error(`There is no message ${key}.`);
      if (message.values.size === 0) return message.code;
      heads.set(key, `const said_${key} = (d) => ${message.code};`);
      return `said_${key}`;
    });
  const head = [...heads.values()];
  const called = (name: string) =>
    head.some((line) => new RegExp(`\\b${name}\\(|, ${name}, `).test(line));
  const imports = words.imports.map((line) =>
    line.replace(
      /\{ (.*) \}/,
      (_, names: string) => `{ ${names.split(", ").filter(called).join(", ")} }`,
    ),
  );
  return [...imports.filter((line) => !line.includes("{  }")), ...head, body].join("\n");
}
