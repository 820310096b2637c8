import { codeOf, isSaid, type Messages } from "./catalogue.ts";
import { codesModule, textsModule, wordsModule } from "./compileWords.ts";
import { firstMessages } from "./firstMessages.ts";

/** Modules with the texts of all messages that are named by their codes: those that the first screen may say, and all others. */
export const textFiles = { first: "texts/first.ts", later: "texts/later.ts" } as const;

/** Every module that is written from the catalogue, by its path in the compiled folder. */
export function compiledCatalogue(
  catalogue: ReadonlyMap<string, Messages>,
): ReadonlyMap<string, string> {
  const modules = [...catalogue].map(([room, messages]): [string, string] => [
    `${room}.ts`,
    isSaid(room) ? wordsModule(messages) : codesModule(room, messages),
  ]);
  const { first, later } = textsByCode(catalogue);
  return new Map([
    ...modules,
    [textFiles.first, textsModule(first)],
    [textFiles.later, textsModule(later)],
  ]);
}

/** The messages of rooms that name them, by their codes. */
export function textsByCode(catalogue: ReadonlyMap<string, Messages>): {
  readonly first: Messages;
  readonly later: Messages;
} {
  const named = [...catalogue]
    .filter(([room]) => !isSaid(room))
    .flatMap(([room, messages]) =>
      Object.entries(messages).map(([key, message]): [string, string] => [
        codeOf(room, key),
        message,
      ]),
    );
  const ofFirst = firstMessages();
  return {
    first: Object.fromEntries(named.filter(([code]) => ofFirst.has(code))),
    later: Object.fromEntries(named.filter(([code]) => !ofFirst.has(code))),
  };
}
