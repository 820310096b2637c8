import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import * as messages from "../../words/compiled/screens/parts.ts";
import { Button } from "./Button.tsx";
import type { IconName } from "./Icon.tsx";

export interface RowAction {
  readonly words: string;
  readonly icon: IconName;
  readonly danger?: boolean;
  readonly act: () => void;
}

/** One thing of a list: a tap goes to it, the button beside shows what else can be done. */
export function MenuRow({
  name,
  facts,
  href,
  mark,
  current = false,
  actions,
}: {
  name: string;
  facts: string;
  href: string;
  mark?: ComponentChildren;
  /** It is open beside the list. */
  current?: boolean;
  actions: readonly RowAction[];
}) {
  const [open, setOpen] = useState(false);
  return (
    <li class="check-row">
      <div class="check-row-top">
        <a class="check-link" href={href} aria-current={current ? "page" : undefined}>
          {mark}
          <span class="check-words">
            <bdi class="check-name">{name}</bdi>
            <span class="small soft">{facts}</span>
          </span>
        </a>
        <Button
          look="quiet"
          icon="more"
          label={messages.moreFor({ name })}
          expanded={open}
          onClick={() => setOpen(!open)}
        />
      </div>
      {open && (
        <div class="check-actions">
          {actions.map(({ words, icon, danger, act }) => (
            <Button
              key={words}
              {...(danger && { look: "danger" as const })}
              icon={icon}
              onClick={() => {
                setOpen(false);
                act();
              }}
            >
              {words}
            </Button>
          ))}
        </div>
      )}
    </li>
  );
}
