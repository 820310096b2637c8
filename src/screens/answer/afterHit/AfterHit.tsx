import type { CornerAssessment, Fitment } from "../../../physics/fitment.ts";
import { rulesOf } from "../../../physics/road/index.ts";
import { simulatedStops } from "../../../physics/stop/index.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import { said } from "../../../saying/texts.ts";
import * as messages from "../../../words/compiled/screens/answer/afterHit.ts";
import { eventWords } from "../../assessment/eventWords.ts";
import { sideWords } from "../../assessment/stateWords.ts";
import { type AfterHitRow, afterHit } from "./afterHit.ts";
import "./afterHit.css";

const width = 300;
const barHeight = 12;

/** What follows the hit: a sentence and a picture, this stop beside the same one undamped. */
export function AfterHitView({
  fitment,
  assessed,
  unit,
}: {
  fitment: Fitment;
  assessed: CornerAssessment;
  unit: LengthUnit;
}) {
  if (assessed.events === null) return null;
  const after = afterHit(assessed, unit);
  const event = rulesOf(fitment.use, fitment.rules).events[after?.eventIndex ?? 0];
  return (
    <section class="stack-close after-hit" aria-label={messages.afterHit({ side: assessed.side })}>
      <h3>{messages.afterHit2({ side: sideWords[assessed.side] })}</h3>
      <p class="small soft">{said(simulatedStops)}</p>
      {after === null ? (
        <p>{messages.thisStopWasNot}</p>
      ) : (
        <>
          <p>{after.sentence}</p>
          <dl>
            {after.rows.map((row) => (
              <div key={row.name}>
                <dt>{row.name}</dt>
                <dd>
                  <Bars row={row} />
                </dd>
              </div>
            ))}
          </dl>
          <p class="small soft">
            {event && `${eventWords(event, unit)}. `}
            {messages.riseAndTireOff}
          </p>
        </>
      )}
    </section>
  );
}

function Bars({ row }: { row: AfterHitRow }) {
  const most = Math.max(row.own, row.undamped, 1e-9);
  const bars = [
    { name: messages.thisStop, text: row.ownText, value: row.own, look: "after-hit-own" },
    {
      name: messages.undamped,
      text: row.undampedText,
      value: row.undamped,
      look: "after-hit-undamped",
    },
  ];
  return (
    <>
      {bars.map(({ name, text, value, look }) => (
        <div key={name} class="after-hit-bar">
          <svg viewBox={`0 0 ${width} ${barHeight}`} preserveAspectRatio="none" aria-hidden="true">
            <rect class={look} width={(width * value) / most} height={barHeight} />
          </svg>
          <span class="small">
            {name} <strong>{text}</strong>
          </span>
        </div>
      ))}
    </>
  );
}
