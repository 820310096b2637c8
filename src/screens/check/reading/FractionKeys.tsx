import { tapeFractions, withFraction, withoutLast } from "./fractions.ts";

/** What a phone's number keys lack for inches. */
export function FractionKeys({ text, onText }: { text: string; onText: (text: string) => void }) {
  return (
    <fieldset class="fraction-keys">
      <legend class="unseen">Fractions of an inch</legend>
      {tapeFractions.map((fraction) => (
        <button
          key={fraction}
          type="button"
          class="fraction-key"
          aria-pressed={text.trim() === fraction || text.endsWith(` ${fraction}`)}
          onClick={() => onText(withFraction(text, fraction))}
        >
          {fraction}
        </button>
      ))}
      <button
        type="button"
        class="fraction-key"
        aria-label="Space"
        onClick={() => onText(`${text} `)}
      >
        ␣
      </button>
      <button
        type="button"
        class="fraction-key"
        aria-label="Slash"
        onClick={() => onText(`${text}/`)}
      >
        /
      </button>
      <button
        type="button"
        class="fraction-key"
        aria-label="Take back the last"
        onClick={() => onText(withoutLast(text))}
      >
        ⌫
      </button>
    </fieldset>
  );
}
