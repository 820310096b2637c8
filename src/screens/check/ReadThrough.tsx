import type { ComponentChildren } from "preact";

export interface ReadLine {
  readonly id: string;
  readonly picture: ComponentChildren;
  readonly words: string;
  readonly hint?: string;
  readonly stressed?: boolean;
}

/** Marks the last line of what has to be read; the main button looks for it. */
export const readEnd = "data-read-end";

/** A short list that is read as one, each line with its picture. */
export function ReadThrough({ lines }: { lines: readonly ReadLine[] }) {
  return (
    <ul class="read-through">
      {lines.map(({ id, picture, words, hint, stressed = false }, place) => (
        <li
          key={id}
          class={stressed ? "caution-raised" : ""}
          {...(place === lines.length - 1 && { [readEnd]: "" })}
        >
          <span class="standing-picture" aria-hidden="true">
            {picture}
          </span>
          <span>
            {hint ? <strong>{words}</strong> : words}
            {hint && <span class="choice-hint">{hint}</span>}
          </span>
        </li>
      ))}
    </ul>
  );
}
