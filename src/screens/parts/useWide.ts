import { useEffect, useState } from "preact/hooks";

/** Whether the window is at least so wide, px; followed as it is turned or drawn wider. */
export function useWide(px: number): boolean {
  const query = `(min-width: ${px}px)`;
  const [wide, setWide] = useState(() => globalThis.matchMedia?.(query).matches ?? true);
  useEffect(() => {
    const watched = globalThis.matchMedia?.(query);
    if (!watched) return;
    const follow = () => setWide(watched.matches);
    follow();
    watched.addEventListener("change", follow);
    return () => watched.removeEventListener("change", follow);
  }, [query]);
  return wide;
}
