import { useMemo, useRef, useState } from "preact/hooks";
import type { Assessor } from "../../compute/assessor.ts";
import type { Assessment, Fitment } from "../../physics/fitment.ts";
import type { Fault } from "../../physics/outcome.ts";
import { capital } from "../../physics/sentence.ts";
import { secantRate, stopCurve } from "../../physics/stop/index.ts";
import { meanOf } from "../../physics/uncertainty/index.ts";
import type { CheckRecord } from "../../records/check/checkRecord.ts";
import { recordBounds } from "../../records/check/recordFormat.ts";
import { newId } from "../../records/check/storedCheck.ts";
import { sentenceText } from "../../records/entry/quantityText.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { type Decision, standingDecision } from "../../records/review/decision.ts";
import type { Listed } from "../../records/review/listedSubmission.ts";
import type { OddReading } from "../../records/review/oddReadings.ts";
import { acceptText, askAgainText, otherPartText } from "../../records/review/replyText.ts";
import { unitOf } from "../../records/review/submission.ts";
import { verdictWords } from "../assessment/stateWords.ts";
import type { Prescribing } from "../assessment/usePrescription.ts";
import { StateMark } from "../drawings/StateMark.tsx";
import { FaultNotice } from "../exchange/FaultNotice.tsx";
import { Button } from "../parts/Button.tsx";
import { CheckLine, Segmented } from "../parts/Choices.tsx";
import { TextField } from "../parts/Field.tsx";
import { Notice } from "../parts/Notice.tsx";
import { rankedName } from "../ranking/rankingWords.ts";
import { type DecisionDraft, draftOf, hasWords } from "./decisionDraft.ts";
import { deskName, keepDeskName } from "./deskName.ts";
import { ReplyWays } from "./ReplyWays.tsx";
import { askable, askedReadings, toldAnswer } from "./replyItems.ts";
import { DecidedTwice, SharedReply } from "./shared/SharedCheck.tsx";
import type { Desk } from "./useDesk.ts";
import { type PartsTried, type TriedPart, usePartsTried } from "./usePartsTried.ts";
import { decisionWords, momentText } from "./words.ts";

const kinds = [
  { value: "accept", name: "Accept" },
  { value: "askAgain", name: "Ask again" },
  { value: "otherPart", name: "Other part" },
] as const;

export interface DecideProps {
  readonly desk: Desk;
  readonly record: CheckRecord;
  readonly submission: Listed;
  readonly fitment: Fitment;
  /** Null until it is whole. */
  readonly assessment: Assessment | null;
  readonly prescribing: Prescribing;
  readonly assessor: Assessor;
  readonly odd: readonly OddReading[];
  readonly draft: DecisionDraft;
  /** Null: nothing is begun any more. */
  onDraft(change: Partial<DecisionDraft> | null): void;
  readonly decisions: readonly Decision[];
}

/** What is decided of this version, and the reply that goes with it. */
export function Decide(props: DecideProps) {
  const { desk, record, submission, decisions, draft, onDraft } = props;
  const standing = standingDecision(decisions, submission.key);
  const [fault, setFault] = useState<Fault | null>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  const decide = async (decision: Decision) => {
    const outcome = await desk.decide(decision);
    setFault(outcome.ok ? null : outcome.fault);
    // Taken back, it is there to be changed; decided, nothing is begun any more.
    if (outcome.ok) onDraft(decision.kind === "undo" && standing ? draftOf(standing) : null);
    heading.current?.focus();
    heading.current?.scrollIntoView({ block: "nearest" });
  };
  return (
    <section class="card desk-decide" aria-labelledby="decide-heading">
      <h2 id="decide-heading" ref={heading} tabIndex={-1}>
        {standing ? "Decided" : "Decide"}
      </h2>
      {fault && <FaultNotice fault={fault} />}
      {standing ? (
        <Decided desk={desk} record={record} decision={standing} draft={draft} onUndo={decide} />
      ) : (
        <Deciding {...props} onDecide={decide} />
      )}
      <DecidedTwice decisions={decisions} submission={submission.key} />
    </section>
  );
}

function Decided({
  desk,
  record,
  decision,
  draft,
  onUndo,
}: {
  desk: Desk;
  record: CheckRecord;
  decision: Decision;
  draft: DecisionDraft;
  onUndo: (decision: Decision) => void;
}) {
  const undo = () =>
    onUndo({
      key: newId(),
      checkId: decision.checkId,
      submission: decision.submission,
      kind: "undo",
      by: desk.shared?.state?.person ?? deskName(),
      at: new Date().toISOString(),
      note: "",
      undoes: decision.key,
    });
  return (
    <div class="stack" data-decided={decision.kind}>
      <p role="status">
        <strong>{decisionWords[decision.kind]}</strong> by {decision.by || "no name"},{" "}
        {momentText(decision.at)}.
      </p>
      {decision.fromBackup !== undefined && (
        <Notice tone="care">
          <p>
            From a backup that was restored here {momentText(decision.fromBackup)}. A file can't
            prove who decided.
          </p>
        </Notice>
      )}
      {hasWords(draft) && (
        <Notice tone="care" live>
          <p>It was decided in another tab while you were writing. What you wrote is still here:</p>
          {[draft.note, ...Object.values(draft.typed)].filter(Boolean).map((text) => (
            <pre key={text} class="desk-reply">
              {text}
            </pre>
          ))}
        </Notice>
      )}
      {decision.note && <p>{decision.note}</p>}
      <pre class="desk-reply">{decision.reply}</pre>
      {desk.shared?.sentBy.has(decision.submission) ? (
        <SharedReply shared={desk.shared} record={record} decision={decision} />
      ) : (
        <ReplyWays record={record} decision={decision} />
      )}
      <Button icon="undo" onClick={undo}>
        Take the decision back
      </Button>
    </div>
  );
}

function Deciding({
  desk,
  record,
  submission,
  fitment,
  assessment,
  prescribing,
  assessor,
  odd,
  draft,
  onDraft,
  onDecide,
}: DecideProps & { onDecide: (decision: Decision) => void }) {
  const { note, picked, asked } = draft;
  const kind = draft.kind ?? (odd.length > 0 ? "askAgain" : "accept");
  const typed = draft.typed[kind] ?? null;
  const [typedName, setBy] = useState(deskName);
  const signedIn = desk.shared?.state?.person;
  const by = signedIn || typedName;
  const unit = unitOf(record);
  const tried = usePartsTried(assessor, record, fitment, kind === "otherPart", unit);
  const part = tried.parts.find(({ key }) => key === picked) ?? null;
  const needsReason = kind === "otherPart" && part !== null && !advisable(part);
  const written = useMemo(() => {
    const content = { record: letterTo(record, submission), unit, from: by, note };
    if (kind === "askAgain") {
      const readings = askedReadings(asked, record, fitment, odd, assessment);
      return readings.length === 0 ? null : askAgainText(content, readings);
    }
    if (kind === "accept") {
      if (assessment === null) return null;
      const prescription = prescribing.state === "found" ? prescribing.prescription : null;
      return acceptText(content, toldAnswer(assessment, prescription));
    }
    if (part === null || part.ranked.assessment === null) return null;
    if (!advisable(part) && note.trim() === "") return null;
    return otherPartText(content, advisedPart(part, part.ranked.assessment, unit));
  }, [
    kind,
    asked,
    record,
    fitment,
    odd,
    assessment,
    prescribing,
    part,
    by,
    note,
    unit,
    submission,
  ]);
  const text = typed ?? written ?? "";
  const searching =
    kind === "accept" &&
    (prescribing.state === "searching" || (prescribing.state === "found" && !prescribing.whole));
  const missing =
    written !== null
      ? searching
        ? "What to do is still being worked out."
        : null
      : kind === "askAgain"
        ? "Choose the readings to re-measure."
        : kind === "accept"
          ? "The answer is still being worked out."
          : needsReason
            ? "This part is not known to fit here. Write the reason for it in the note."
            : "Choose a stop.";
  const nameless = by.trim() === "";

  const decide = () => {
    if (!signedIn) keepDeskName(by);
    onDecide({
      key: newId(),
      checkId: record.id,
      submission: submission.key,
      kind,
      by: by.trim(),
      at: new Date().toISOString(),
      note: note.trim(),
      reply: text,
      ...(kind === "askAgain" && { readings: [...asked] }),
      ...(kind === "otherPart" && part && { stop: rankedName(part.ranked, unit) }),
    });
  };
  const setTyped = (words: string | null) => {
    const { [kind]: _, ...others } = draft.typed;
    onDraft({ typed: words === null ? others : { ...others, [kind]: words } });
  };

  return (
    <div class="stack">
      <Segmented
        legend="Decision"
        legendUnseen
        options={kinds}
        value={kind}
        onChange={(next) => onDraft({ kind: next })}
      />
      {kind === "askAgain" && (
        <fieldset class="desk-asked">
          <legend class="field-label">Readings to re-measure</legend>
          {askable(record, fitment, assessment).map(({ id, name }) => (
            <CheckLine
              key={id}
              checked={asked.includes(id)}
              onChange={(checked) =>
                onDraft({ asked: checked ? [...asked, id] : asked.filter((one) => one !== id) })
              }
            >
              {capital(name)}
            </CheckLine>
          ))}
        </fieldset>
      )}
      {kind === "otherPart" && (
        <StopChoice
          tried={tried}
          picked={picked}
          onPick={(id) => onDraft({ picked: id })}
          unit={unit}
        />
      )}
      {signedIn ? (
        <p class="small">
          Decided as <strong>{signedIn}</strong>, by your credential.
        </p>
      ) : (
        <TextField
          label="Your name"
          value={by}
          onInput={setBy}
          maxLength={recordBounds.labelCharacters}
          capitals
        />
      )}
      <label class="field">
        <span class="field-label">Note, also in the reply</span>
        <textarea
          class="paste-text"
          rows={2}
          value={note}
          maxLength={2000}
          onInput={(event) => onDraft({ note: event.currentTarget.value })}
        />
      </label>
      {written !== null && (
        <label class="field">
          <span class="field-label">Reply (in {unit === "in" ? "inches" : "mm"})</span>
          <textarea
            class="paste-text desk-reply-text"
            rows={10}
            value={text}
            maxLength={recordBounds.notesCharacters}
            onInput={(event) => setTyped(event.currentTarget.value)}
          />
        </label>
      )}
      {typed !== null && typed !== written && (
        <Button onClick={() => setTyped(null)}>Rewrite it</Button>
      )}
      {(missing || nameless) && (
        <p class="small soft">{missing ?? "Give your name: it stands beside the decision."}</p>
      )}
      <Button look="main" wide disabled={missing !== null || nameless} onClick={decide}>
        {kind === "accept" ? "Accept" : kind === "askAgain" ? "Ask again" : "Advise this part"}
      </Button>
    </div>
  );
}

/** A letter by the shared desk stays there for good: it names nobody. */
function letterTo(record: CheckRecord, { way }: Listed): CheckRecord {
  if (way !== "desk") return record;
  const { name: _, ...author } = record.author;
  return { ...record, author };
}

/** Tested to fit, with care at most, and known to mount there. */
function advisable({ ranked: { verdict }, unclear }: TriedPart): boolean {
  return !unclear && (verdict === "ok" || verdict === "care");
}

function advisedPart({ stop, ranked }: TriedPart, assessment: Assessment, unit: LengthUnit) {
  const curve = stopCurve(stop);
  return {
    name: rankedName(ranked, unit),
    heightMm: meanOf(stop.freeHeight),
    rateNPerMm: curve.ok ? secantRate(curve.value) : null,
    answer: toldAnswer(assessment, null),
  };
}

function StopChoice({
  tried: { parts, done, total, finished },
  picked,
  onPick,
  unit,
}: {
  tried: PartsTried;
  picked: string | null;
  onPick: (key: string) => void;
  unit: LengthUnit;
}) {
  return (
    <>
      {!finished && (
        <p class="small soft" role="status">
          {done} of {total} stops worked out
        </p>
      )}
      <ul class="desk-stops" aria-label="Stops of the reference pack, tried on these readings">
        {parts.map(({ key, ranked, unclear }) => {
          const { verdict, assessment, fault } = ranked;
          const shown = unclear && verdict !== "no" ? "unsure" : verdict;
          return (
            <li key={key}>
              <button
                type="button"
                class="desk-stop"
                aria-pressed={picked === key}
                disabled={assessment === null}
                onClick={() => onPick(key)}
              >
                <StateMark state={shown} size={24} label="" />
                <span>
                  <strong>{rankedName(ranked, unit)}</strong>
                  {`: ${unclear ? "check how it mounts first; " : ""}${verdictWords[verdict].toLowerCase()}`}
                  <span class="small soft">
                    {assessment
                      ? sentenceText(assessment.reason, unit)
                      : fault && sentenceText(fault.sentence, unit)}
                  </span>
                </span>
              </button>
            </li>
          );
        })}
      </ul>
    </>
  );
}
