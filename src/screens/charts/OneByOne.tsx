import type { ComponentChildren } from "preact";
import { toChildArray } from "preact";
import { useEffect, useState } from "preact/hooks";

/** Puts its children on the page one a frame, so that no frame has to wait for all of them. */
export function OneByOne({ children }: { children: ComponentChildren }) {
  const all = toChildArray(children);
  const [shown, setShown] = useState(1);
  useEffect(() => {
    if (shown >= all.length) return;
    // A timeout as well: a hidden page paints no frames.
    const next = () => setShown((before) => Math.max(before, shown + 1));
    const frame = requestAnimationFrame(next);
    const timer = setTimeout(next, 200);
    return () => {
      cancelAnimationFrame(frame);
      clearTimeout(timer);
    };
  }, [shown, all.length]);
  return <>{all.slice(0, shown)}</>;
}
