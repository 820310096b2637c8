import { useEffect, useRef, useState } from "preact/hooks";
import { inModelUnits } from "../../physics/sentence.ts";
import { dateText } from "../../records/check/checkName.ts";
import { cleanName } from "../../records/text/soundText.ts";
import type { BackupSurvey } from "../../storage/surveyBackup.ts";
import { Button } from "../parts/Button.tsx";
import { CheckLine } from "../parts/Choices.tsx";
import { Notice } from "../parts/Notice.tsx";
import type { HandedBackup } from "./backupHere.ts";
import { checksText } from "./savedWords.ts";

const shownNames = 6;

function Names({ names }: { names: readonly string[] }) {
  return (
    <ul class="stack-close">
      {names.slice(0, shownNames).map((name, index) => (
        <li key={index}>
          <bdi>{cleanName(name, 60)}</bdi>
        </li>
      ))}
      {names.length > shownNames && <li>and {names.length - shownNames} more</li>}
    </ul>
  );
}

function decisionsText(count: number): string {
  return count === 1 ? "1 decision of a review desk" : `${count} decisions of a review desk`;
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
  const { added, replaced, filled, present } = checks;
  const nothing =
    added.length + replaced.length + filled.length + submissions.added + decisions.added === 0;
  return (
    <div class="stack" data-survey>
      <h3 ref={heading} tabIndex={-1}>
        What is in this backup
      </h3>
      <p>
        <bdi>{cleanName(file.name, 80)}</bdi> was {way}. It says that it was made{" "}
        {dateText(createdAt)} {madeHere ? "on this phone" : "on another device"}; nobody can verify
        that.
      </p>
      {fault && (
        <Notice tone="care" live>
          <p>{inModelUnits(fault.sentence)}</p>
          <p>What can be read of it can be restored.</p>
        </Notice>
      )}
      {added.length > 0 && (
        <div>
          <p>
            <strong>{checksText(added.length)}</strong> not here, to be added:
          </p>
          <Names names={added} />
        </div>
      )}
      {replaced.length > 0 && (
        <Notice tone="care">
          <p>
            <strong>{checksText(replaced.length)}</strong> here in another version. Readings in it
            are replaced by the backup's, which are newer:
          </p>
          <Names names={replaced} />
          <p>What is replaced goes to the deleted checks, where it can be brought back.</p>
        </Notice>
      )}
      {filled.length > 0 && (
        <div>
          <p>
            <strong>{checksText(filled.length)}</strong> here, to get what only the backup has:
          </p>
          <Names names={filled} />
        </div>
      )}
      {present > 0 && (
        <p>{checksText(present)} here already, or deleted here since: nothing changes in them.</p>
      )}
      {submissions.added + submissions.present > 0 && (
        <p>
          At the review desk: {checksText(submissions.added)} to be added, {submissions.present}{" "}
          here already.
        </p>
      )}
      {decisions.added > 0 && (
        <Notice tone="care">
          <p>
            <strong>{decisionsText(decisions.added)}</strong> that this review desk has not made. A
            file can't prove who decided.
          </p>
          <CheckLine checked={withDecisions} onChange={setWithDecisions}>
            Let them count here, marked “from a backup”
          </CheckLine>
        </Notice>
      )}
      {nothing && <p>Nothing in it is new here.</p>}
      <div class="row">
        <Button onClick={onLeave}>{nothing ? "Close" : "Cancel"}</Button>
        {!nothing && (
          <Button look="main" onClick={() => onRestore(withDecisions)}>
            Restore
          </Button>
        )}
      </div>
    </div>
  );
}
