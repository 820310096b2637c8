import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import { Icon } from "./Icon.tsx";

/** A disclosure whose content is made when it is first opened: most of an answer is never unfolded. */
export function Unfolding({
  summary,
  look = "disclosure",
  figure,
  children,
}: {
  summary: ComponentChildren;
  look?: "disclosure" | "figure";
  figure?: string;
  children: () => ComponentChildren;
}) {
  const [opened, setOpened] = useState(false);
  return (
    <details
      class={look}
      data-figure={figure}
      onToggle={(event) => {
        if (event.currentTarget.open) setOpened(true);
      }}
    >
      <summary>
        <Icon name="forward" />
        {summary}
      </summary>
      {opened && <div class={`${look}-body`}>{children()}</div>}
    </details>
  );
}
