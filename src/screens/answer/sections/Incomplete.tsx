import type { MissingField } from "../../../records/check/completeRecord.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import { sentenceText } from "../../../saying/sentenceText.ts";
import * as messages from "../../../words/compiled/screens/answer/sections.ts";
import { StateMark } from "../../drawings/StateMark.tsx";
import { Icon } from "../../parts/Icon.tsx";

/** A check without an answer yet: everything that is missing, each a way to its step. */
export function Incomplete({
  missing,
  unit,
  go,
}: {
  missing: readonly MissingField[];
  unit: LengthUnit;
  go: (step: string) => void;
}) {
  return (
    <section class="verdict verdict-unsure">
      <div class="verdict-head">
        <StateMark state="unsure" size={56} label="" />
        <h1 class="tone-unsure" tabIndex={-1}>
          {messages.noAnswerYet}
        </h1>
      </div>
      <p class="verdict-reason">
        {missing.length === 1
          ? messages.oneThingIsMissing
          : messages.thingsAreMissing({ missing: missing.length })}
      </p>
      <ul class="remeasure-list">
        {missing.map(({ field, sentence }) => (
          <li key={`${field} ${sentenceText(sentence, unit)}`}>
            <button type="button" class="remeasure" onClick={() => go(field)}>
              <span class="remeasure-why">{sentenceText(sentence, unit)}</span>
              <Icon name="forward" />
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
