import { checkIds } from "../../../physics/choices.ts";
import type { Assessment, Check, CheckId, CornerAssessment } from "../../../physics/fitment.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import { sentenceText } from "../../../saying/sentenceText.ts";
import * as messages from "../../../words/compiled/screens/answer/sections.ts";
import { checkStateWords, checkTitles, sideWords } from "../../assessment/stateWords.ts";
import { StateMark } from "../../drawings/StateMark.tsx";
import { probabilityNumber, probabilityWords } from "../probabilityWords.ts";

const probabilityOf: Partial<Record<CheckId, string>> = {
  clearance: messages.enoughReserve,
  earlyContact: messages.enoughFreeTravel,
};

/** Every check of every side: state, sentence, probability; left and right beside each other. */
export function SideComparison({
  assessment,
  unit,
  complete = true,
}: {
  assessment: Assessment;
  unit: LengthUnit;
  /** False while impacts, and with them the stiffness, are still being worked out. */
  complete?: boolean;
}) {
  const { corners } = assessment;
  const asked = checkIds.filter((id) => corners.some(({ checks }) => checkOf(checks, id)));
  return (
    <table class="sides">
      <caption class="unseen">{messages.checksSideBySide}</caption>
      <thead>
        <tr>
          {corners.map(({ side }) => (
            <th key={side} scope="col">
              {sideWords[side]}
            </th>
          ))}
        </tr>
      </thead>
      {asked.map((id) => (
        <CheckRows key={id} id={id} corners={corners} unit={unit} complete={complete} />
      ))}
    </table>
  );
}

function checkOf(checks: readonly Check[], id: CheckId): Check | undefined {
  return checks.find((check) => check.id === id);
}

function CheckRows({
  id,
  corners,
  unit,
  complete,
}: {
  id: CheckId;
  corners: readonly CornerAssessment[];
  unit: LengthUnit;
  complete: boolean;
}) {
  const pending =
    id === "stiffness" && !complete && corners.every(({ missing }) => missing.length === 0);
  const checks = corners.map((corner) => checkOf(corner.checks, id));
  const texts = checks.map((check) =>
    check ? `${check.state} ${sentenceText(check.sentence, unit)}` : "",
  );
  const [first] = checks;
  const alike = corners.length > 1 && first !== undefined && new Set(texts).size === 1;
  return (
    <tbody>
      <tr class="sides-title">
        <th scope="rowgroup" colSpan={corners.length}>
          {checkTitles[id]}
        </th>
      </tr>
      <tr>
        {pending ? (
          <td colSpan={corners.length} class="soft">
            {messages.beingWorkedOut}
          </td>
        ) : alike ? (
          <td colSpan={corners.length}>
            <CheckCell check={first} unit={unit} both />
          </td>
        ) : (
          checks.map((check, index) => (
            <td key={corners[index]?.side}>
              {check ? <CheckCell check={check} unit={unit} /> : "–"}
            </td>
          ))
        )}
      </tr>
    </tbody>
  );
}

function CheckCell({
  check: { id, state, sentence, probability },
  unit,
  both = false,
}: {
  check: Check;
  unit: LengthUnit;
  both?: boolean;
}) {
  const what = probabilityOf[id];
  return (
    <>
      <p class="check-state">
        <StateMark state={state} size={22} label="" />
        <strong class={`tone-${state}`}>
          {both && messages.bothSides}
          {checkStateWords[state]}
        </strong>
      </p>
      <p class="check-sentence">{sentenceText(sentence, unit)}</p>
      {probability !== undefined && what && (
        <p class="check-probability">
          {what}: {probabilityWords(probability)} ({probabilityNumber(probability)})
        </p>
      )}
    </>
  );
}
