import { useEffect, useRef } from "preact/hooks";
import { say } from "./voice.ts";

/** Quiet time after which a number counts as entered, ms. */
const enteredAfter = 900;

/**
 * Says a number once it has been entered: after a moment without another key, or at once where the
 * screen is left before that. Not what stood there already.
 */
export function useReadBack(words: string | null, wanted: boolean): void {
  const last = useRef(words);
  const waiting = useRef<string | null>(null);
  useEffect(() => {
    if (words === last.current) return;
    last.current = words;
    waiting.current = wanted ? words : null;
    const timer = setTimeout(() => {
      if (waiting.current !== null) say(waiting.current);
      waiting.current = null;
    }, enteredAfter);
    return () => clearTimeout(timer);
  }, [words, wanted]);
  useEffect(
    () => () => {
      if (waiting.current !== null) say(waiting.current);
    },
    [],
  );
}
