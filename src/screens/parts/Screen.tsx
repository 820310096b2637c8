import type { ComponentChildren, RefObject } from "preact";
import { useEffect, useRef } from "preact/hooks";

/**
 * Moves focus whenever `key` changes: into the field that is to be filled in first, where there is one,
 * else to the heading, so that a screen reader starts at the top.
 */
export function useHeadingFocus(key: string): RefObject<HTMLHeadingElement | null> {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (key) {
      window.scrollTo(0, 0);
      const first = document.querySelector<HTMLElement>("main [data-first]");
      (first ?? heading.current)?.focus({ preventScroll: true });
    }
  }, [key]);
  return heading;
}

/** One screen: a top row, the content, and the main action within a thumb's reach. */
export function Screen({
  top,
  below,
  actions,
  wide = false,
  printed = false,
  children,
}: {
  top: ComponentChildren;
  /** Under the top row and stuck to it: progress. */
  below?: ComponentChildren;
  actions?: ComponentChildren;
  wide?: boolean;
  /** As it stands, without what only serves the screen; needs styles/paper.css. */
  printed?: boolean;
  children: ComponentChildren;
}) {
  return (
    <div class={`screen${wide ? " screen-wide" : ""}${printed ? " screen-printed" : ""}`}>
      <header class="screen-top">
        <div class="screen-top-row">{top}</div>
        {below}
      </header>
      <main class="screen-main">{children}</main>
      {actions && (
        <footer class="action-bar">
          <div class="action-bar-row">{actions}</div>
        </footer>
      )}
    </div>
  );
}
