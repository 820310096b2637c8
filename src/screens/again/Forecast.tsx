import type { AgainPlan } from "../../physics/remeasure/planAgain.ts";
import { sentenceText } from "../../records/quantityText.ts";
import type { StoredCheck } from "../../records/storedCheck.ts";
import type { LengthUnit } from "../../records/units.ts";
import { chanceWords, lineName, removesWords } from "./againWords.ts";

/** Which readings, in which order, and what each would do: said before any is taken. */
export function Forecast({
  stored,
  plan,
  unit,
}: {
  stored: StoredCheck;
  plan: AgainPlan;
  unit: LengthUnit;
}) {
  const doubtful = plan.items.some(({ forecast }) => forecast !== null);
  return (
    <section class="stack-close" aria-label="What each reading would do">
      <ol class="readings-to-take">
        {plan.items.map(({ reading, forecast, sentence }) => (
          <li key={reading}>
            <p>
              <strong>{lineName(stored, reading)}.</strong>{" "}
              {removesWords(forecast?.removed ?? null)}
              {forecast && `, settles it ${chanceWords(forecast.settlesVerdict)}`}.
            </p>
            <p class="small soft">{sentenceText(sentence, unit)}</p>
          </li>
        ))}
      </ol>
      {doubtful && plan.items.length > 1 && (
        <p class="small">All of them together settle it {chanceWords(plan.settlesAll)}.</p>
      )}
      {doubtful && (
        <p class="small soft">
          Reckoned with the readings as they stand: a repeat narrows only the scatter, a better tool
          its ±. Stops by itself once it is settled.
        </p>
      )}
    </section>
  );
}
