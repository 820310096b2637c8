import type { CornerAssessment, Fitment } from "../../../physics/fitment.ts";
import { rulesOf } from "../../../physics/road/index.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import * as messages from "../../../words/compiled/screens/answer/afterHit.ts";
import { eventWords } from "../../assessment/eventWords.ts";
import { sideWords } from "../../assessment/stateWords.ts";
import { DataTable } from "../../charts/DataTable.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { eventsFromTest, failsByTest } from "./fromTest.ts";

/** The ± that the stop's test leaves in the hits, and which of them are faster than it. */
export function FromTest({
  fitment,
  assessed,
  unit,
}: {
  fitment: Fitment;
  assessed: CornerAssessment;
  unit: LengthUnit;
}) {
  const found = eventsFromTest(assessed, unit);
  if (found === null || found.length === 0) return null;
  const { events } = rulesOf(fitment.use, fitment.rules);
  const fails = failsByTest(assessed);
  return (
    <section class="stack-close" aria-label={messages.whatItsTestLeaves({ side: assessed.side })}>
      <h3>{messages.fromItsTest({ side: sideWords[assessed.side] })}</h3>
      {fails && (
        <Notice tone="care">
          <p>{fails}</p>
        </Notice>
      )}
      <div class="stack-close tested-events">
        {found.map(({ eventIndex, rows, faster }) => {
          const event = events[eventIndex];
          const title = event ? eventWords(event, unit) : messages.eventWord;
          return (
            <div key={eventIndex} class="stack-close">
              {faster && (
                <Notice tone="care">
                  <p>
                    <strong>{title}.</strong> {faster}
                  </p>
                </Notice>
              )}
              <DataTable
                caption={title}
                columns={[{ name: messages.figure }, { name: messages.predicted }, { name: "±" }]}
                rows={rows.map(({ name, value, off }) => [name, value, off])}
              />
            </div>
          );
        })}
      </div>
      <p class="small soft">{messages.eachHolds95Of}</p>
    </section>
  );
}
