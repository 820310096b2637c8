import { useEffect, useMemo, useRef, useState } from "preact/hooks";
import type { Fault } from "../../../physics/outcome.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import { answering } from "../../../records/findings/answering.ts";
import { measuredAgainstPack } from "../../../records/findings/measuredAgainstPack.ts";
import { decidingReadings, verdictsByPlatform } from "../../../records/findings/verdicts.ts";
import type { DeskCheck } from "../../../records/review/decision.ts";
import * as messages from "../../../words/compiled/screens/desk/findings.ts";
import { language } from "../../../words/language.ts";
import { Button } from "../../parts/Button.tsx";
import { FaultNotice } from "../../parts/FaultNotice.tsx";
import { Screen, useHeadingFocus } from "../../parts/Screen.tsx";
import { useReferencePack } from "../../referencePack.ts";
import { saveCsvFile } from "../csvFile.ts";
import type { Desk } from "../useDesk.ts";
import { countWords } from "../words.ts";
import { AgainstPackTable } from "./AgainstPackTable.tsx";
import { Coverage } from "./Coverage.tsx";
import { findingsFile } from "./findingsFile.ts";
import { spreadWords } from "./findingsWords.ts";
import { type Gathered, gather } from "./gather.ts";
import { DecidingTable, VerdictsTable } from "./VerdictTables.tsx";
import "../../charts/charts.css";
import "./findings.css";

export interface FindingsScreenProps {
  readonly desk: Desk;
  /** Those that the list's filter shows. */
  readonly checks: readonly DeskCheck[];
  readonly filtered: boolean;
  readonly unit: LengthUnit;
  onLeave(): void;
}

/** What the checks tell the maker, over whatever the list shows. */
export function FindingsScreen({ desk, checks, filtered, unit, onLeave }: FindingsScreenProps) {
  const heading = useHeadingFocus("findings");
  const pack = useReferencePack();
  const [subjects, setSubjects] = useState<readonly Gathered[] | null>(null);
  const [done, setDone] = useState(0);
  const [fault, setFault] = useState<Fault | null>(null);
  const { store, decisions } = desk;
  const chosen = useRef(checks);
  const start = checks.length > 0 && store !== null;
  useEffect(() => {
    if (!store || !start) return;
    // Checks that come in meanwhile are in it the next time.
    chosen.current = checks;
    const own = new AbortController();
    gather(store, checks, decisions, setDone, own.signal).then((outcome) => {
      if (own.signal.aborted) return;
      if (outcome.ok) setSubjects(outcome.value);
      else setFault(outcome.fault);
    });
    return () => own.abort();
  }, [store, start]);

  const verdicts = useMemo(() => verdictsByPlatform(subjects ?? [], pack), [subjects, pack]);
  const deciding = useMemo(() => decidingReadings(subjects ?? []), [subjects]);
  const against = useMemo(() => measuredAgainstPack(subjects ?? [], pack), [subjects, pack]);
  const answers = useMemo(() => answering(subjects ?? []), [subjects]);
  const computed = verdicts.reduce((sum, { count }) => sum + count, 0);

  return (
    <Screen
      wide
      top={
        <>
          <Button look="quiet" icon="back" label={messages.toReviewDesksList} onClick={onLeave} />
          <span class="screen-name">{messages.reviewDesk}</span>
        </>
      }
      actions={
        <Button
          disabled={!subjects}
          onClick={async () => {
            const tables = findingsFile({ verdicts, deciding, against, answers }, new Date());
            setFault(await saveCsvFile(tables));
          }}
        >
          {messages.saveTablesCsv}
        </Button>
      }
    >
      <h1 ref={heading} tabIndex={-1}>
        {messages.whatChecksTell}
      </h1>
      <p role="status">
        {subjects === null
          ? messages.readingOf({
              done: done.toLocaleString(language),
              count: countWords(checks.length, "check"),
            })
          : messages.overAsListIs({
              count: countWords(subjects.length, "check"),
              isFiltered: Boolean(filtered),
              computed: computed.toLocaleString(language),
            })}
      </p>
      {fault && <FaultNotice fault={fault} />}
      {subjects && (
        <>
          <VerdictsTable rows={verdicts} />
          <DecidingTable rows={deciding} />
          <AgainstPackTable rows={against} pack={pack} unit={unit} shared={desk.shared} />
          <section class="card" aria-labelledby="answering-heading">
            <h2 id="answering-heading">{messages.answering}</h2>
            <dl class="facts">
              <dt>{messages.answered}</dt>
              <dd>{messages.ofWord({ answered: answers.answered, checks: answers.checks })}</dd>
              <dt>{messages.readingsAskedForAgain}</dt>
              <dd>
                {messages.ofAnswered({
                  askedAgain: answers.askedAgain,
                  answered: answers.answered,
                })}
              </dd>
              <dt>{messages.daysToFirstAnswer}</dt>
              <dd>
                {answers.days === null
                  ? messages.noneYet
                  : spreadWords(answers.days, (days) => days.toFixed(1))}
              </dd>
            </dl>
          </section>
          <Coverage subjects={subjects} pack={pack} unit={unit} />
        </>
      )}
    </Screen>
  );
}
