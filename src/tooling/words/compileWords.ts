import MessageFormat from "@messageformat/core";
import compileModule from "@messageformat/core/lib/compile-module.js";
import { codeOf, type Messages, valuesOf } from "./catalogue.ts";

/** A message as JavaScript: a text, or a function of its values. */
interface CompiledMessage {
  readonly code: string;
  /** Its values by name, as TypeScript; none where it is a text. */
  readonly values: ReadonlyMap<string, string>;
}

export interface CompiledMessages {
  /** What their functions call. */
  readonly imports: readonly string[];
  readonly byKey: ReadonlyMap<string, CompiledMessage>;
}

/** The messages of a room, by the library's compiler. */
export function compiledMessages(messages: Messages, language = "en"): CompiledMessages {
  const written = compileModule(new MessageFormat(language), { ...messages });
  const code = new Map(
    [...written.matchAll(/^ {2}"?(\w+)"?: \(d?\) => (.*?),?$/gm)].map(([, key = "", text = ""]) => [
      key,
      text,
    ]),
  );
  const compiled = Object.entries(messages).map(([key, message]): [string, CompiledMessage] => {
    const text = code.get(key);
    if (text === undefined) throw new Error(`The message ${key} was not compiled.`);
    const values = valuesOf(message);
    // Two numbers side by side are texts one after the other, no sum.
    return [key, { code: values.size === 0 ? text : text.replace(/^d\./, '"" + d.'), values }];
  });
  return { imports: written.match(/^import .*$/gm) ?? [], byKey: new Map(compiled) };
}

/** What a message is called with is checked; how it is put together is the compiler's. */
const heading = `// @ts-nocheck
/* Written by \`npm run words\` from the catalogue; change it there. */`;

const typesOf = (values: ReadonlyMap<string, string>) =>
  [...values].map(([name, type]) => `${name}: ${type}`).join("; ");

/** The messages of a room as a module of TypeScript: a text for each that takes no values, a function for each that does. */
export function wordsModule(messages: Messages, language = "en"): string {
  const { imports, byKey } = compiledMessages(messages, language);
  const lines = [...byKey].map(([key, { code, values }]) =>
    values.size === 0
      ? `export const ${key}: string = ${code};`
      : `export const ${key} = (d: { ${typesOf(values)} }): string => ${code};`,
  );
  return [heading, ...imports, ...lines, ""].join("\n");
}

/** The messages of a room that says nothing itself, by their codes. */
export function codesModule(room: string, messages: Messages): string {
  const toTop = room.replace(/[^/]+/g, "..");
  const lines = Object.entries(messages).map(([key, message]) => {
    const values = valuesOf(message);
    const types = typesOf(values).replaceAll("string | number", "MessageValue");
    const code = `code: "${codeOf(room, key)}"`;
    return values.size === 0
      ? `export const ${key}: Message = { ${code} };`
      : `export const ${key} = (values: { ${types} }): Message => ({ ${code}, values });`;
  });
  const imported = lines.some((line) => line.includes("MessageValue")) ? ", MessageValue" : "";
  return [
    heading.split("\n")[1],
    `import type { Message${imported} } from "${toTop}/message.ts";`,
    ...lines,
    "",
  ].join("\n");
}

/** The texts of messages by their codes, as a module. */
export function textsModule(byCode: Messages, language = "en"): string {
  const { imports, byKey } = compiledMessages(
    Object.fromEntries(Object.entries(byCode).map(([, message], index) => [`m${index}`, message])),
    language,
  );
  const codes = Object.keys(byCode);
  const lines = [...byKey.values()].map(
    ({ code, values }, index) =>
      `  "${codes[index]}": ${values.size === 0 ? code : `(d) => ${code}`},`,
  );
  return [
    heading,
    ...imports,
    'import type { MessageTexts } from "../../message.ts";',
    "export const texts: MessageTexts = {",
    ...lines,
    "};",
    "",
  ].join("\n");
}
