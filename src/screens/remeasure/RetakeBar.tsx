import type { ComponentChildren } from "preact";
import type { State } from "../../physics/fitment.ts";
import { StateMark } from "../drawings/StateMark.tsx";
import "./remeasure.css";

/** Over a step: that readings are being taken again, how far that is, and the ways on. */
export function RetakeBar({
  label,
  state,
  words,
  detail,
  children,
}: {
  label: string;
  state: State;
  words: ComponentChildren;
  detail?: ComponentChildren;
  children?: ComponentChildren;
}) {
  return (
    <aside class="retake-bar" aria-label={label}>
      <div>
        <p class="retake-words">
          <StateMark state={state} size={22} label="" /> <span>{words}</span>
        </p>
        {detail && <p class="small">{detail}</p>}
      </div>
      {children && <div class="retake-ways">{children}</div>}
    </aside>
  );
}
