import type { ComponentChildren } from "preact";

export type Tone = "info" | "ok" | "care" | "no" | "unsure";

const shapes: Record<Tone, { outline: string; inner: string; name: string }> = {
  info: { outline: "M12 2a10 10 0 100 20 10 10 0 000-20z", inner: "M12 11v6M12 7h.01", name: "" },
  ok: { outline: "M12 2a10 10 0 100 20 10 10 0 000-20z", inner: "M7 12.5l3.5 3.5L17 9", name: "" },
  care: { outline: "M12 2.5L23 21.5H1z", inner: "M12 9.5v5.5M12 18.2h.01", name: "Take care: " },
  no: {
    outline: "M7.9 2h8.2L22 7.9v8.2L16.1 22H7.9L2 16.1V7.9z",
    inner: "M7 12h10",
    name: "Wrong: ",
  },
  unsure: {
    outline: "M12 1l11 11-11 11L1 12z",
    inner: "M9.6 9.8a2.4 2.4 0 113.4 2.2c-.7.4-1 .8-1 1.6M12 16.6h.01",
    name: "Not sure: ",
  },
};

/** One or two plain sentences with a mark whose shape tells the tone apart without colour. */
export function Notice({
  tone,
  live = false,
  children,
}: {
  tone: Tone;
  /** Read out when it appears or changes. */
  live?: boolean;
  children: ComponentChildren;
}) {
  const shape = shapes[tone];
  return (
    <div class={`notice notice-${tone}`} role={live ? "status" : undefined}>
      <svg width="24" height="24" viewBox="0 0 24 24" class={`tone-${tone}`} aria-hidden="true">
        <path d={shape.outline} fill="currentColor" />
        <path
          d={shape.inner}
          fill="none"
          stroke={`var(--${tone === "info" ? "accent" : tone}-wash)`}
          stroke-width="2.4"
          stroke-linecap="round"
          stroke-linejoin="round"
        />
      </svg>
      <div class="stack-close">
        {shape.name && <span class="unseen">{shape.name}</span>}
        {children}
      </div>
    </div>
  );
}
