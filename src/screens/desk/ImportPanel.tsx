import type { LengthUnit } from "../../records/entry/units.ts";
import { cleanName } from "../../records/text/soundText.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import * as messages from "../../words/compiled/screens/desk.ts";
import { language } from "../../words/language.ts";
import { goTo } from "../addresses.ts";
import { Button } from "../parts/Button.tsx";
import { Disclosure } from "../parts/Disclosure.tsx";
import { Notice } from "../parts/Notice.tsx";
import { savedHref } from "../saved/savedRoute.ts";
import type { ImportProgress } from "./importRun.ts";
import type { Desk } from "./useDesk.ts";
import { countWords, momentText } from "./words.ts";

export function isUnderWay(importing: ImportProgress | null): boolean {
  return importing?.state === "reading" || importing?.state === "running";
}

/** What an import does and did, what was not taken in and why, and how far computing is. */
export function ImportPanel({ desk, unit }: { desk: Desk; unit: LengthUnit }) {
  const { importing, dropped, backup } = desk;
  const lookInto = async (file: File) => {
    (await import("../saved/backupHere.ts")).handBackup(file, messages.takenToReviewDesk);
    goTo(savedHref);
  };
  return (
    <>
      {dropped !== null && (
        <Notice tone="care" live>
          <p>{messages.pageWasClosedWhile({ dropped: momentText(dropped) })}</p>
          <div class="row">
            <Button onClick={desk.forgetDropped}>{messages.allRight}</Button>
          </div>
        </Notice>
      )}
      {backup !== null && (
        <Notice tone="care" live>
          <p>
            <bdi>{cleanName(backup.name, 80)}</bdi> {messages.isBackupNothingOf}
          </p>
          <div class="row">
            <Button onClick={desk.forgetBackup}>{messages.cancel}</Button>
            <Button onClick={() => lookInto(backup)}>{messages.seeWhatIsIn}</Button>
          </div>
        </Notice>
      )}
      {importing && <Import progress={importing} desk={desk} unit={unit} />}
      <Computing desk={desk} />
    </>
  );
}

function doneWords({ state, total, added, present, refusedCount }: ImportProgress): string {
  if (state === "reading") return messages.readingSoFar({ count: countWords(total, "file") });
  const parts = [
    messages.added({ count: countWords(added, "check") }),
    ...(present > 0 ? [messages.hereAlready({ present: present.toLocaleString(language) })] : []),
    ...(refusedCount > 0
      ? [messages.notTakenIn({ refusedCount: refusedCount.toLocaleString(language) })]
      : []),
  ];
  const begin = {
    running: messages.takingIn,
    ended: messages.takenIn,
    stopped: messages.stopped,
    failed: messages.stopped,
  };
  return `${begin[state]}: ${parts.join(", ")}.`;
}

function Import({
  progress,
  desk,
  unit,
}: {
  progress: ImportProgress;
  desk: Desk;
  unit: LengthUnit;
}) {
  const { state, total, through, refused, refusedCount, fault, resumed } = progress;
  const tone = state === "failed" ? "no" : refusedCount > 0 ? "care" : "info";
  return (
    <Notice tone={tone} live>
      <p data-import={state}>{doneWords(progress)}</p>
      {resumed !== null && <p>{messages.thisImportWasStarted({ resumed: momentText(resumed) })}</p>}
      {state === "running" && total > 1 && (
        <progress aria-label={messages.howFarImportIs} max={total} value={through} />
      )}
      {fault && <p>{sentenceText(fault.sentence, unit)}</p>}
      {state === "failed" && total > through && <p>{messages.whatIsNotTaken}</p>}
      {refused.length > 0 && (
        <Disclosure summary={messages.whatWasNotTaken} open={refused.length <= 5}>
          <ul class="plain-list desk-refused">
            {refused.map(({ name, sentence }, index) => (
              <li key={`${name} ${index}`}>
                <strong>
                  <bdi>{cleanName(name, 80)}</bdi>
                </strong>
                : {sentenceText(sentence, unit)}
              </li>
            ))}
            {refusedCount > refused.length && (
              <li>
                {messages.and({
                  count: countWords(refusedCount - refused.length, "moreFile"),
                })}
              </li>
            )}
          </ul>
        </Disclosure>
      )}
      <div class="row">
        {isUnderWay(progress) ? (
          <Button onClick={desk.stopImport}>{messages.stopWord}</Button>
        ) : (
          <Button onClick={desk.closeImport}>{messages.closeWord}</Button>
        )}
      </div>
    </Notice>
  );
}

function Computing({
  desk: { checks, computing, stopped, compute, stopComputing, importing },
}: {
  desk: Desk;
}) {
  if (!checks || checks.length === 0) return null;
  const waiting = checks.filter(({ latest }) => latest.isComputed === 0).length;
  if (waiting === 0 || isUnderWay(importing)) return null;
  const done = checks.length - waiting;
  return (
    <div class="desk-computing">
      <label class="desk-progress">
        <span>
          {messages.computing({
            isComputing: Boolean(computing),
            isStopped: Boolean(stopped),
            done: done.toLocaleString(language),
            count: countWords(checks.length, "check"),
          })}
        </span>
        <progress max={checks.length} value={done} />
      </label>
      <Button onClick={stopped ? compute : stopComputing}>
        {stopped ? messages.goOnComputing : messages.stopComputing}
      </Button>
    </div>
  );
}
