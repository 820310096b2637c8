import { readCatalogue, textsOf } from "../../src/tooling/words/catalogue.ts";

export interface CatalogueText {
  /** Its room and key, "screens/desk: noChecksYet". */
  readonly place: string;
  /** Values stand as X. */
  readonly text: string;
}

/** Every text that a message of the catalogue can become. */
export function catalogueTexts(): readonly CatalogueText[] {
  return [...readCatalogue()].flatMap(([room, messages]) =>
    Object.entries(messages).flatMap(([key, message]) =>
      textsOf(message).map((text) => ({
        place: `${room}: ${key}`,
        text: text.replace(/\s+/g, " ").trim(),
      })),
    ),
  );
}
