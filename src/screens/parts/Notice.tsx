import type { ComponentChildren } from "preact";
import type { State } from "../../physics/fitment.ts";
import * as messages from "../../words/compiled/screens/parts.ts";
import { StateMark } from "../drawings/StateMark.tsx";
import { Icon } from "./Icon.tsx";

export type Tone = "info" | State;

const spoken: Record<State, string> = {
  ok: "",
  care: messages.warning,
  no: messages.wrong,
  unsure: messages.notSure,
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
  return (
    <div class={`notice notice-${tone}`} role={live ? "status" : undefined}>
      {tone === "info" ? (
        <span class="tone-info">
          <Icon name="info" size={24} />
        </span>
      ) : (
        <StateMark state={tone} size={24} label="" />
      )}
      <div class="stack-close">
        {tone !== "info" && spoken[tone] && <span class="unseen">{spoken[tone]}</span>}
        {children}
      </div>
    </div>
  );
}
