import type { ComponentChildren } from "preact";
import { Icon } from "./Icon.tsx";

export function Disclosure({
  summary,
  open = false,
  children,
}: {
  summary: ComponentChildren;
  open?: boolean;
  children: ComponentChildren;
}) {
  return (
    <details class="disclosure" open={open}>
      <summary>
        <Icon name="forward" />
        <span>{summary}</span>
      </summary>
      <div class="disclosure-body">{children}</div>
    </details>
  );
}
