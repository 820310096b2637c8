import { posix } from "node:path";
import type { Plugin } from "vite";
import {
  codeOf,
  compiledFolder,
  isSaid,
  type Messages,
  readCatalogue,
  valuesOf,
} from "./catalogue.ts";
import { textFiles, textsByCode } from "./compiledCatalogue.ts";
import { type CompiledMessages, compiledMessages, textsModule } from "./compileWords.ts";
import { messageSaid } from "./firstMessages.ts";
import { pseudoMessages } from "./pseudoLanguage.ts";

const importOfWords = /^import \* as messages from "([^"]+)";$/m;

/**
 * Puts a file's own messages into it in place of the import of its room's: a screen loads the words that it
 * says and no others, or the codes of those that it names.
 *
 * @param language "pseudo" builds the app in the language for tests
 */
export function wordsInBuild(language: "en" | "pseudo"): Plugin {
  const rooms = new Map<string, CompiledMessages>();
  const texts = new Map<string, Messages>();
  const inLanguage = (messages: Messages) =>
    language === "pseudo" ? pseudoMessages(messages) : messages;
  return {
    name: "words-in-build",
    enforce: "pre",
    buildStart: () => {
      const catalogue = readCatalogue();
      for (const [room, messages] of catalogue) {
        rooms.set(
          room,
          isSaid(room) ? compiledMessages(inLanguage(messages)) : messageCodes(room, messages),
        );
      }
      const { first, later } = textsByCode(catalogue);
      texts.set(textFiles.first, inLanguage(first));
      texts.set(textFiles.later, inLanguage(later));
    },
    transform: (code, id) => {
      const [, textFile = ""] = new RegExp(`/${compiledFolder}/(texts/.*)$`).exec(id) ?? [];
      const own = texts.get(textFile);
      if (own !== undefined) return textsModule(own).replace(": MessageTexts", "");
      const [line, path = ""] = importOfWords.exec(code) ?? [];
      const file = posix.join(posix.dirname(id.replaceAll("\\", "/")), path);
      const [, room = ""] = new RegExp(`/${compiledFolder}/(.*)\\.ts$`).exec(file) ?? [];
      const words = rooms.get(room);
      return line === undefined || words === undefined ? null : withOwnWords(code, line, words);
    },
  };
}

/** The messages of a room that names them. */
function messageCodes(room: string, messages: Messages): CompiledMessages {
  const byKey = Object.entries(messages).map(([key, message]) => {
    const values = valuesOf(message);
    const code = `code: "${codeOf(room, key)}"`;
    return [
      key,
      { code: values.size === 0 ? `{ ${code} }` : `({ ${code}, values: d })`, values },
    ] as const;
  });
  return { imports: [], byKey: new Map(byKey) };
}

/** The code with its messages written where they are said; those of values stand at its head, once each. */
export function withOwnWords(code: string, importLine: string, words: CompiledMessages): string {
  const heads = new Map<string, string>();
  const body = code.replace(importLine, "").replace(messageSaid, (_, key: string) => {
    const message = words.byKey.get(key);
    if (message === undefined) throw new Error(`There is no message ${key}.`);
    if (message.values.size === 0)
      return message.code.startsWith("{") ? `(${message.code})` : message.code;
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
