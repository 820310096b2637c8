import { useMemo } from "preact/hooks";

/** No more are drawn at once: an old phone draws them before the next key. */
export const mostShown = 40;

/**
 * Those of which the text holds every word that is looked for, in any order; all where none is. Texts are
 * made once for a list and a unit, not with each key.
 */
export function useFound<Item>(
  items: readonly Item[],
  textOf: (item: Item) => string,
  wanted: string,
  unit?: string,
): readonly Item[] {
  const texts = useMemo(() => items.map((item) => textOf(item).toLowerCase()), [items, unit]);
  return useMemo(() => {
    const words = wanted.trim().toLowerCase().split(/\s+/);
    return items.filter((_, place) => words.every((word) => texts[place]?.includes(word)));
  }, [items, texts, wanted]);
}
