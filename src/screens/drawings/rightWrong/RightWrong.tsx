import type { LayoutKind } from "../../../physics/fitment.ts";
import type { LimitPlace } from "../../../physics/readings/index.ts";
import * as messages from "../../../words/compiled/screens/drawings/rightWrong.ts";
import type { PicturedReading } from "../drawnNumbers.ts";
import type { Panel } from "./pair.ts";
import { pairOf } from "./pairOf.ts";
import { pairSize } from "./shapes.tsx";
import "../drawings.css";
import "./rightWrong.css";

export interface RightWrongProps {
  readonly reading: PicturedReading;
  readonly kind: LayoutKind;
  readonly at?: LimitPlace | undefined;
}

/** How a reading is taken, and the commonest way it goes wrong, side by side. */
export function RightWrong({ reading, kind, at }: RightWrongProps) {
  const pair = pairOf(reading, kind, at);
  if (!pair) return null;
  return (
    <div class="right-wrong">
      <PanelFigure panel={pair.right} state="right" />
      <PanelFigure panel={pair.wrong} state="wrong" />
    </div>
  );
}

function PanelFigure({ panel, state }: { panel: Panel; state: "right" | "wrong" }) {
  return (
    <figure class={`panel-${state}`}>
      <svg class="drawing" viewBox={`0 0 ${pairSize.width} ${pairSize.height}`} aria-hidden="true">
        {panel.picture}
      </svg>
      <figcaption>
        <span class="panel-word">
          <svg class="panel-mark" viewBox="0 0 20 20" aria-hidden="true">
            <circle cx={10} cy={10} r={8.5} />
            <path d={state === "right" ? "M5.5 10.5l3 3 6-7" : "M5 10h10"} />
          </svg>
          {state === "right" ? messages.right : messages.wrong}
        </span>
        <span class="small">{panel.words}</span>
      </figcaption>
    </figure>
  );
}
