import { useEffect, useRef, useState } from "preact/hooks";
import type { Words } from "../../physics/sentence.ts";
import { dateText } from "../../records/check/checkName.ts";
import { cleanName } from "../../records/text/soundText.ts";
import { inModelUnits } from "../../saying/modelUnits.ts";
import { said } from "../../saying/texts.ts";
import type { BackupSurvey } from "../../storage/surveyBackup.ts";
import * as messages from "../../words/compiled/screens/saved.ts";
import { filled } from "../filled.ts";
import { Button } from "../parts/Button.tsx";
import { CheckLine } from "../parts/Choices.tsx";
import { Notice } from "../parts/Notice.tsx";
import type { HandedBackup } from "./backupHere.ts";
import { checksText } from "./savedWords.ts";

const shownNames = 6;

function Names({ names }: { names: readonly Words[] }) {
  return (
    <ul class="stack-close">
      {names.slice(0, shownNames).map((name, index) => (
        <li key={index}>
          <bdi>{cleanName(said(name), 60)}</bdi>
        </li>
      ))}
      {names.length > shownNames && (
        <li>{messages.andMore({ names: names.length - shownNames })}</li>
      )}
    </ul>
  );
}

function decisionsText(count: number): string {
  return count === 1 ? messages.n1DecisionOfReview : messages.decisionsOfReviewDesk({ count });
}

/** What a backup holds and what it would change, and the taps that say yes or no to it. */
export function BackupSurveyCard({
  backup: { file, way },
  survey: { createdAt, madeHere, checks, submissions, decisions, fault },
  onLeave,
  onRestore,
}: {
  backup: HandedBackup;
  survey: BackupSurvey;
  onLeave: () => void;
  onRestore: (withDecisions: boolean) => void;
}) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  const [withDecisions, setWithDecisions] = useState(false);
  const { added, replaced, filled: gapsFilled, present } = checks;
  const nothing =
    added.length + replaced.length + gapsFilled.length + submissions.added + decisions.added === 0;
  return (
    <div class="stack" data-survey>
      <h3 ref={heading} tabIndex={-1}>
        {messages.whatIsInThis}
      </h3>
      <p>
        <bdi>{cleanName(file.name, 80)}</bdi>{" "}
        {messages.wasItSaysThat({
          way,
          createdAt: dateText(createdAt),
          isMadeHere: Boolean(madeHere),
        })}
      </p>
      {fault && (
        <Notice tone="care" live>
          <p>{inModelUnits(fault.sentence)}</p>
          <p>{messages.whatCanBeRead}</p>
        </Notice>
      )}
      {added.length > 0 && (
        <div>
          <p>
            {filled(messages.notHereToBe, { checks: <strong>{checksText(added.length)}</strong> })}
          </p>
          <Names names={added} />
        </div>
      )}
      {replaced.length > 0 && (
        <Notice tone="care">
          <p>
            {filled(messages.hereInAnotherVersion, {
              checks: <strong>{checksText(replaced.length)}</strong>,
            })}
          </p>
          <Names names={replaced} />
          <p>{messages.whatIsReplacedGoes}</p>
        </Notice>
      )}
      {gapsFilled.length > 0 && (
        <div>
          <p>
            {filled(messages.hereToGetWhat, {
              checks: <strong>{checksText(gapsFilled.length)}</strong>,
            })}
          </p>
          <Names names={gapsFilled} />
        </div>
      )}
      {present > 0 && <p>{messages.hereAlreadyOrDeleted({ checks: checksText(present) })}</p>}
      {submissions.added + submissions.present > 0 && (
        <p>
          {messages.atReviewDeskTo({
            checks: checksText(submissions.added),
            present: submissions.present,
          })}
        </p>
      )}
      {decisions.added > 0 && (
        <Notice tone="care">
          <p>
            {filled(messages.thatThisReviewDesk, {
              decisions: <strong>{decisionsText(decisions.added)}</strong>,
            })}
          </p>
          <CheckLine checked={withDecisions} onChange={setWithDecisions}>
            {messages.letThemCountHere}
          </CheckLine>
        </Notice>
      )}
      {nothing && <p>{messages.nothingInItIs}</p>}
      <div class="row">
        <Button onClick={onLeave}>{nothing ? messages.closeWord : "Cancel"}</Button>
        {!nothing && (
          <Button look="main" onClick={() => onRestore(withDecisions)}>
            {messages.restore}
          </Button>
        )}
      </div>
    </div>
  );
}
