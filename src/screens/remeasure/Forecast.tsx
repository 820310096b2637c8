import type { RemeasurePlan } from "../../physics/remeasure/index.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import * as messages from "../../words/compiled/screens/remeasure.ts";
import { chanceWords, removesWords } from "./remeasureWords.ts";

/** Which readings, in which order, and what each would do: said before any is taken. */
export function Forecast({ plan, unit }: { plan: RemeasurePlan; unit: LengthUnit }) {
  const doubtful = plan.items.some(({ forecast }) => forecast !== null);
  return (
    <section class="stack-close" aria-label={messages.whatEachReadingWould}>
      <ol class="readings-to-take">
        {plan.items.map(({ reading, forecast, sentence }) => (
          <li key={reading}>
            <p>{sentenceText(sentence, unit)}</p>
            <p class="small soft">
              {removesWords(forecast?.removed ?? null)}
              {forecast && messages.settlesIt({ chance: chanceWords(forecast.settlesVerdict) })}.
            </p>
          </li>
        ))}
      </ol>
      {plan.others.length > 0 && (
        <>
          <p class="small">{messages.whatElseNarrowsIt}</p>
          <ul>
            {plan.others.map(({ forecast, sentence }) => (
              <li key={forecast.way}>
                <p class="small">{sentenceText(sentence, unit)}</p>
              </li>
            ))}
          </ul>
        </>
      )}
      {doubtful && plan.items.length > 1 && (
        <p class="small">{messages.allOfThemTogether({ chance: chanceWords(plan.settlesAll) })}</p>
      )}
      {doubtful && <p class="small soft">{messages.workedOutFromReadings}</p>}
    </section>
  );
}
