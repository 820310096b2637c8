import type { RemeasurePlan } from "../../physics/remeasure/index.ts";
import { sentenceText } from "../../records/entry/quantityText.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { chanceWords, removesWords } from "./remeasureWords.ts";

/** Which readings, in which order, and what each would do: said before any is taken. */
export function Forecast({ plan, unit }: { plan: RemeasurePlan; unit: LengthUnit }) {
  const doubtful = plan.items.some(({ forecast }) => forecast !== null);
  return (
    <section class="stack-close" aria-label="What each reading would do">
      <ol class="readings-to-take">
        {plan.items.map(({ reading, forecast, sentence }) => (
          <li key={reading}>
            <p>{sentenceText(sentence, unit)}</p>
            <p class="small soft">
              {removesWords(forecast?.removed ?? null)}
              {forecast && `; settles it ${chanceWords(forecast.settlesVerdict)}`}.
            </p>
          </li>
        ))}
      </ol>
      {plan.others.length > 0 && (
        <>
          <p class="small">What else narrows it:</p>
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
        <p class="small">All of them together settle it {chanceWords(plan.settlesAll)}.</p>
      )}
      {doubtful && (
        <p class="small soft">
          Worked out from the readings so far: a repeat narrows only the scatter, a better tool its
          ±. It stops by itself once settled.
        </p>
      )}
    </section>
  );
}
