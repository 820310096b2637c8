import type { ComponentChildren } from "preact";

export interface LegendItem {
  readonly words: string;
  /** Drawn in a box of 28 × 16. */
  readonly sample: ComponentChildren;
}

export function Legend({ items }: { items: readonly LegendItem[] }) {
  return (
    <ul class="legend">
      {items.map(({ words, sample }) => (
        <li key={words}>
          <svg width="28" height="16" viewBox="0 0 28 16" aria-hidden="true">
            {sample}
          </svg>
          {words}
        </li>
      ))}
    </ul>
  );
}
