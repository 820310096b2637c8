import { isSameAdvice } from "../../records/check/advised.ts";
import type { CheckRecord } from "../../records/check/checkRecord.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { adviceOf } from "../../records/filling/advised.ts";
import type { Pack } from "../../records/pack/pack.ts";
import { adviceGiven, adviceWords } from "../../records/review/adviceWords.ts";
import { inModelUnits } from "../../saying/modelUnits.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import { said } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/desk.ts";
import type { Prescribing } from "../assessment/usePrescription.ts";

/** What the app prescribed on the phone, by the record, beside what is computed here. */
export function AdvisedByApp({
  record,
  prescribing,
  pack,
  unit,
}: {
  record: CheckRecord;
  prescribing: Prescribing;
  pack: Pack;
  unit: LengthUnit;
}) {
  const [newest, ...before] = [...(record.advised ?? [])].reverse();
  if (newest === undefined) return null;
  const here =
    prescribing.state === "found" && prescribing.whole
      ? adviceOf(prescribing.prescription, record, pack, inModelUnits)
      : null;
  return (
    <section class="card" aria-labelledby="advised-heading">
      <h2 id="advised-heading">{messages.whatAppPrescribedOn}</h2>
      <p>
        <bdi>{sentenceText(adviceWords(newest), unit)}</bdi>
        {messages.shown({ adviceGiven: said(adviceGiven(newest)) })}
      </p>
      {here && (
        <p>
          {isSameAdvice(here, newest)
            ? messages.computedHereSame
            : messages.computedHereWithThis({ advice: sentenceText(adviceWords(here), unit) })}
        </p>
      )}
      {before.length > 0 && (
        <>
          <p>{messages.shownBeforeThat}</p>
          <ul>
            {before.map((each) => (
              <li key={each.at}>
                <bdi>{sentenceText(adviceWords(each), unit)}</bdi>, {said(adviceGiven(each))}
              </li>
            ))}
          </ul>
        </>
      )}
      <p class="small soft">{messages.thisIsWhatRecord}</p>
    </section>
  );
}
