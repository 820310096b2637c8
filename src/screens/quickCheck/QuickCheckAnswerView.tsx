import type { State } from "../../physics/fitment.ts";
import { length } from "../../physics/sentence.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import type { QuickCheckAnswer } from "../../records/quickCheck/quickCheckAnswer.ts";
import { type MeasuredName, measuredNames } from "../../records/quickCheck/quickCheckQuestion.ts";
import { quantityText, type TextOptions } from "../../saying/quantityText.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import * as messages from "../../words/compiled/screens/quickCheck.ts";
import { Cautions } from "../answer/sections/Cautions.tsx";
import { certification } from "../answer/sections/VerdictPanel.tsx";
import { StateMark } from "../drawings/StateMark.tsx";
import { Button } from "../parts/Button.tsx";
import { Disclosure } from "../parts/Disclosure.tsx";

/** Yes without a height that fits is a no to every height: it must not look like a plain yes. */
function toneOf({ answer, heightFits }: QuickCheckAnswer): State {
  if (answer === "cantTell") return "unsure";
  if (answer === "no") return "ok";
  return heightFits === false ? "no" : "care";
}

function headingOf({ answer, heightFits }: QuickCheckAnswer): string {
  if (answer === "cantTell") return messages.cantTellYet;
  if (answer === "no") return messages.noNotTaller;
  return heightFits === false ? messages.tallerAloneWontDo : messages.yesTallerStop;
}

/** As a tape shows them: whole mm or sixteenths of an inch. */
const look: TextOptions = { coarse: true };

/** By how much, both ways of getting it, each with its 95 % range; or how much there is to spare. */
function heights(answer: QuickCheckAnswer, unit: LengthUnit): readonly [string, string, string][] {
  // Height that does not fit is nothing to add.
  if (answer.heightFits === false) return [];
  const text = (value: number) => quantityText(length(value), unit, look);
  const rows: [string, string, string][] = [];
  const add = (what: string, value: number | null, range: readonly [number, number] | null) => {
    if (value === null || range === null) return;
    const spare = value < 0;
    const [least, greatest] = spare ? [-range[1], -range[0]] : range;
    const other = spare ? messages.toAdd : messages.toSpare;
    rows.push([
      spare ? messages.heightToSpare({ what }) : messages.heightToAdd({ what }),
      text(Math.abs(value)),
      least < 0
        ? messages.toToSpare({
            least: text(-least),
            other,
            greatest: text(greatest),
            isSpare: Boolean(spare),
          })
        : messages.to({ least: text(least), greatest: text(greatest) }),
    ]);
  };
  add(messages.withStopOfSame, answer.tallerMm, answer.rangeMm);
  add(messages.withSpacerUnderStop, answer.spacerMm, answer.spacerRangeMm);
  return rows;
}

const measuredWords: Readonly<Record<MeasuredName, string>> = {
  rideHeight: messages.rideHeight,
  gap: messages.gap,
  stopHeight: messages.heightOfStop,
  clearance: messages.clearance,
};

/** What the person read and told, out of five, and what the pack stands in for. */
export function measuredText(measured: readonly MeasuredName[]): string {
  const fromPack = measuredNames.filter((name) => !measured.includes(name));
  const rest = fromPack.map((name) => measuredWords[name]);
  const own =
    measured.length === 0 ? messages.nothing : messages.of5({ measured: measured.length + 1 });
  return messages.measuredByYouFrom({
    own,
    join: [messages.geometryAndWeights, ...rest].join(", "),
  });
}

export function QuickCheckAnswerView({
  answer,
  estimated = null,
  unit,
  onReading,
}: {
  answer: QuickCheckAnswer;
  /** That the stop's curve was not tested, in a sentence. */
  estimated?: string | null;
  unit: LengthUnit;
  /** Back to the reading that would settle it. */
  onReading: () => void;
}) {
  const tone = toneOf(answer);
  const rows = heights(answer, unit);
  return (
    <>
      <section class={`verdict verdict-${tone}`} aria-live="polite">
        <div class="verdict-head">
          <StateMark state={tone} size={56} label="" />
          <h1 class={`tone-${tone}`} tabIndex={-1}>
            {headingOf(answer)}
          </h1>
        </div>
        <p class="small">{measuredText(answer.measured)}</p>
        {rows.length > 0 && (
          <dl class="quick-check-heights">
            {rows.map(([name, value, range]) => (
              <div key={name}>
                <dt>{name}</dt>
                <dd>
                  <strong>{value}</strong> <span class="small">95 %: {range}</span>
                </dd>
              </div>
            ))}
          </dl>
        )}
        {/* With the estimate's own, four sentences at most. */}
        {answer.why.slice(0, estimated === null ? 4 : 3).map((sentence) => {
          const text = sentenceText(sentence, unit, look);
          return <p key={text}>{text}</p>;
        })}
        {estimated !== null && (
          <p>
            <strong>{messages.estimate}</strong> {estimated}
          </p>
        )}
        <p class="verdict-limits">{certification}</p>
      </section>
      {answer.settle && (
        <section class="card" aria-labelledby="settle-heading">
          <h2 id="settle-heading">{messages.whatWouldSettleIt}</h2>
          <p>{sentenceText(answer.settle.sentence, unit, look)}</p>
          <div class="row">
            <Button look="main" icon="pencil" onClick={onReading}>
              {messages.toThatReading}
            </Button>
          </div>
        </section>
      )}
      <Cautions raised={answer.cautionsFor === "raised"} />
      {answer.assumed.length > 0 && (
        <Disclosure summary={messages.whatThisTakesFrom}>
          <ul class="plain-list">
            {answer.assumed.map((sentence) => {
              const text = sentenceText(sentence, unit);
              return <li key={text}>{text}</li>;
            })}
          </ul>
        </Disclosure>
      )}
    </>
  );
}
