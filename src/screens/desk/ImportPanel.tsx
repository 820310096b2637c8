import { sentenceText } from "../../records/entry/quantityText.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { cleanName } from "../../records/text/soundText.ts";
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
    (await import("../saved/backupHere.ts")).handBackup(file, "taken to the review desk");
    goTo(savedHref);
  };
  return (
    <>
      {dropped !== null && (
        <Notice tone="care" live>
          <p>
            The page was closed while the files of an import started {momentText(dropped)} were
            still being read. Nothing of it was taken in. Choose the files again.
          </p>
          <div class="row">
            <Button onClick={desk.forgetDropped}>All right</Button>
          </div>
        </Notice>
      )}
      {backup !== null && (
        <Notice tone="care" live>
          <p>
            <bdi>{cleanName(backup.name, 80)}</bdi> is a backup. Nothing of it was taken in.
          </p>
          <div class="row">
            <Button onClick={desk.forgetBackup}>Cancel</Button>
            <Button onClick={() => lookInto(backup)}>See what is in it</Button>
          </div>
        </Notice>
      )}
      {importing && <Import progress={importing} desk={desk} unit={unit} />}
      <Computing desk={desk} />
    </>
  );
}

function doneWords({ state, total, added, present, refusedCount }: ImportProgress): string {
  if (state === "reading") return `Reading: ${countWords(total, "file")} so far.`;
  const parts = [
    `${countWords(added, "check")} added`,
    ...(present > 0 ? [`${present.toLocaleString("en-GB")} here already`] : []),
    ...(refusedCount > 0 ? [`${refusedCount.toLocaleString("en-GB")} not taken in`] : []),
  ];
  const begin = { running: "Taking in", ended: "Taken in", stopped: "Stopped", failed: "Stopped" };
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
      {resumed !== null && (
        <p>
          This import was started {momentText(resumed)}; its page was closed, and it went on here by
          itself.
        </p>
      )}
      {state === "running" && total > 1 && (
        <progress aria-label="How far the import is" max={total} value={through} />
      )}
      {fault && <p>{sentenceText(fault.sentence, unit)}</p>}
      {state === "failed" && total > through && (
        <p>What is not taken in yet is saved, and taken in when the review desk is opened again.</p>
      )}
      {refused.length > 0 && (
        <Disclosure summary="What was not taken in, and why" open={refused.length <= 5}>
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
              <li>And {countWords(refusedCount - refused.length, "more file")}.</li>
            )}
          </ul>
        </Disclosure>
      )}
      <div class="row">
        {isUnderWay(progress) ? (
          <Button onClick={desk.stopImport}>Stop</Button>
        ) : (
          <Button onClick={desk.closeImport}>Close</Button>
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
          {computing ? "Computing" : stopped ? "Not computing" : "Computing begins"}:{" "}
          {done.toLocaleString("en-GB")} of {countWords(checks.length, "check")}
        </span>
        <progress max={checks.length} value={done} />
      </label>
      <Button onClick={stopped ? compute : stopComputing}>
        {stopped ? "Go on computing" : "Stop computing"}
      </Button>
    </div>
  );
}
