import type { RefObject } from "preact";
import { useEffect, useRef } from "preact/hooks";

/** What a choice has opened is brought into view; not what was open already. */
export function useRevealed(choice: string | null): RefObject<HTMLDivElement | null> {
  const place = useRef<HTMLDivElement>(null);
  const before = useRef(choice);
  useEffect(() => {
    if (before.current === choice) return;
    before.current = choice;
    const gentle = !globalThis.matchMedia?.("(prefers-reduced-motion: reduce)").matches;
    place.current?.scrollIntoView?.({ block: "nearest", behavior: gentle ? "smooth" : "auto" });
  }, [choice]);
  return place;
}
