import type { Entry } from "../entry/entry.ts";
import { choicesOf, isChoiceId } from "./choices.ts";
import type { StoredCheck } from "./storedCheck.ts";

type Entries = { readonly [id: string]: Entry };

/**
 * Up to the fifth version of the store a choice stood as an entry of one text. So it does in what leaves the
 * phone, which every version reads.
 */
export function entriesWithChoices({
  entries,
  choices,
}: Pick<StoredCheck, "entries" | "choices">): Entries {
  const chosen = Object.entries(choices).flatMap(([id, value]): [string, Entry][] =>
    value === undefined ? [] : [[id, { texts: [value], unit: "", tol: "" }]],
  );
  return { ...entries, ...Object.fromEntries(chosen) };
}

/** What was typed and what was chosen, of entries with both. A choice that stands apart already goes before. */
export function choicesApart(
  given: Entries,
  known?: unknown,
): Pick<StoredCheck, "entries" | "choices"> {
  // A choice has no unit: most entries need no closer look.
  const isChoice = (id: string, { unit }: Entry): boolean => unit === "" && isChoiceId(id);
  const all = Object.entries(given);
  const old = all.flatMap(([id, entry]) => (isChoice(id, entry) ? [[id, entry.texts[0]]] : []));
  return {
    entries: Object.fromEntries(all.filter(([id, entry]) => !isChoice(id, entry))),
    choices: { ...choicesOf(Object.fromEntries(old)), ...choicesOf(known) },
  };
}
