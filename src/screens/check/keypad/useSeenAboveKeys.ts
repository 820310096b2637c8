import type { RefObject } from "preact";
import { useLayoutEffect } from "preact/hooks";

/** Room between what is said and the keys below it, px. */
const margin = 12;

/** Brings what is said about a number above the keys as it appears, as far as the number stays in view. */
export function useSeenAboveKeys(said: RefObject<HTMLElement | null>, words: string): void {
  useLayoutEffect(() => {
    const pad = document.querySelector<HTMLElement>(".keypad");
    const field = said.current?.closest(".reading-entry")?.querySelector("input");
    if (words === "" || !pad || !said.current || !field) return;
    const head = document.querySelector(".screen-top")?.getBoundingClientRect().bottom ?? 0;
    const hidden = said.current.getBoundingClientRect().bottom + margin;
    const below = hidden - pad.getBoundingClientRect().top;
    const room = field.getBoundingClientRect().top - head - margin;
    if (below > 0 && room > 0) window.scrollBy(0, Math.min(below, room));
  }, [said, words]);
}
