import type { JSX } from "preact";
import type { State } from "../../physics/fitment.ts";
import * as messages from "../../words/compiled/screens/drawings.ts";

const words: Record<State, string> = {
  ok: messages.fits,
  care: messages.warning,
  no: messages.doesntFit,
  unsure: messages.notSure,
};

const outlines: Record<State, JSX.Element> = {
  ok: <circle cx="12" cy="12" r="11" />,
  care: <path d="M12 1.8 23 21.6H1Z" stroke-width="1.6" stroke-linejoin="round" />,
  no: <path d="M7.5 1h9l6.5 6.5v9L16.5 23h-9L1 16.5v-9Z" />,
  unsure: <path d="M12 .8 23.2 12 12 23.2 .8 12Z" />,
};

const glyphs: Record<State, JSX.Element> = {
  ok: <path d="m6.5 12.5 3.8 3.8 7.3-8" />,
  care: <path d="M12 8.5v6M12 18v.1" />,
  no: <path d="M6.5 12h11" stroke-width="3.4" stroke-linecap="butt" />,
  unsure: (
    <path d="M9.2 9.3c.2-3.8 5.8-3.7 5.7-.1 0 2.2-2.9 2.4-2.9 5M12 17.6v.1" stroke-width="2.2" />
  ),
};

export interface StateMarkProps {
  readonly state: State;
  /** Width and height in px. */
  readonly size?: number;
  /** What a screen reader says; an empty label hides the mark where the words stand beside it. */
  readonly label?: string;
}

export function StateMark({ state, size = 24, label = words[state] }: StateMarkProps) {
  const named = label !== "";
  return (
    <svg
      class={`state-mark state-mark-${state}`}
      viewBox="0 0 24 24"
      width={size}
      height={size}
      style={{ flex: "none", color: `var(--${state})` }}
      {...(named ? { role: "img", "aria-label": label } : { "aria-hidden": true })}
    >
      <title>{label}</title>
      <g fill="currentColor" stroke={state === "care" ? "currentColor" : "none"}>
        {outlines[state]}
      </g>
      <g
        fill="none"
        stroke="var(--paper)"
        stroke-width="2.6"
        stroke-linecap="round"
        stroke-linejoin="round"
      >
        {glyphs[state]}
      </g>
    </svg>
  );
}
