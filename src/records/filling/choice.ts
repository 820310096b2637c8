import { type ChoiceId, type Choices, type ChoiceValue, choicesOf } from "../check/choices.ts";
import type { StoredCheck } from "../check/storedCheck.ts";

/** What was chosen on a screen that no field of the record holds; null: nothing yet. */
export function chosen<Id extends ChoiceId>(
  { choices }: Pick<StoredCheck, "choices">,
  id: Id,
): ChoiceValue<Id> | null {
  return choices[id] ?? null;
}

export function withChoice<Id extends ChoiceId>(
  stored: StoredCheck,
  id: Id,
  value: ChoiceValue<Id> | null,
): StoredCheck {
  const { [id]: _, ...others } = stored.choices;
  const choices: Choices = value === null ? others : { ...others, [id]: value };
  return { ...stored, updatedAt: new Date().toISOString(), choices };
}

/** What was typed and what was chosen, under other ids; null: it goes. */
export function movedTo(
  { entries, choices }: Pick<StoredCheck, "entries" | "choices">,
  place: (id: string) => string | null,
): Pick<StoredCheck, "entries" | "choices"> {
  const moved = <Held>(held: { readonly [id: string]: Held }): { [id: string]: Held } =>
    Object.fromEntries(
      Object.entries(held).flatMap(([id, item]) => {
        const next = place(id);
        return next === null ? [] : [[next, item] as const];
      }),
    );
  return { entries: moved(entries), choices: choicesOf(moved(choices)) };
}
