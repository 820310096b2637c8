const key = "stopfit.stopsLately";

/** So many are at hand without a search. */
const most = 3;

/** The stops of the parts library chosen last on this device, the last first, by their ids. */
export function stopsLately(): readonly string[] {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(key) ?? "[]");
    return Array.isArray(kept) ? kept.filter((id) => typeof id === "string").slice(0, most) : [];
  } catch {
    return [];
  }
}

export function noteStop(id: string): void {
  try {
    const others = stopsLately().filter((each) => each !== id);
    localStorage.setItem(key, JSON.stringify([id, ...others].slice(0, most)));
  } catch {
    // Refused: the list stands as the library has it.
  }
}

/** The stops with those chosen lately first; the rest as they stood. */
export function latelyFirst<Stop extends { readonly id: string }>(
  stops: readonly Stop[],
  lately: readonly string[],
): readonly Stop[] {
  const place = ({ id }: Stop) => {
    const at = lately.indexOf(id);
    return at < 0 ? lately.length : at;
  };
  return [...stops].sort((a, b) => place(a) - place(b));
}
