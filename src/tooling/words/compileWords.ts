import MessageFormat from "@messageformat/core";
import compileModule from "@messageformat/core/lib/compile-module.js";
import { type Messages, valuesOf } from "./catalogue.ts";

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

/** The messages of a room as a module of TypeScript: a text for each that takes no values, a function for each that does. */
export function wordsModule(messages: Messages, language = "en"): string {
  const { imports, byKey } = compiledMessages(messages, language);
  const lines = [...byKey].map(([key, { code, values }]) => {
    if (values.size === 0) return `export const ${key}: string = ${code};`;
    const types = [...values].map(([name, type]) => `${name}: ${type}`).join("; ");
    return `export const ${key} = (d: { ${types} }): string => ${code};`;
  });
  return [heading, ...imports, ...lines, ""].join("\n");
}
