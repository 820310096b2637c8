import { useEffect, useMemo, useState } from "preact/hooks";
import type { Stop } from "../../physics/fitment.ts";
import type { Prescription } from "../../physics/prescription/index.ts";
import { travelKeptSentence } from "../../physics/prescription/index.ts";
import { capital } from "../../physics/sentence.ts";
import { secantRate, stopCurve } from "../../physics/stop/index.ts";
import { meanOf } from "../../physics/uncertainty/index.ts";
import type { CheckRecord } from "../../records/check/checkRecord.ts";
import { recordBounds } from "../../records/check/recordFormat.ts";
import { newId } from "../../records/check/storedCheck.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { partText } from "../../records/pack/stopFacts.ts";
import { stopTitle } from "../../records/pack/stopTitle.ts";
import type { Decision } from "../../records/review/decision.ts";
import type { Listed } from "../../records/review/listedSubmission.ts";
import { unitOf } from "../../records/review/submission.ts";
import {
  type AdvisedPart,
  acceptText,
  askAgainText,
  otherPartText,
} from "../../saying/replyText.ts";
import { said } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/desk.ts";
import { filled } from "../filled.ts";
import { Button } from "../parts/Button.tsx";
import { CheckLine, Segmented } from "../parts/Choices.tsx";
import { TextField } from "../parts/Field.tsx";
import { useReferencePack } from "../referencePack.ts";
import { TriedStops } from "../triedStops/TriedStops.tsx";
import { rankedName } from "../triedStops/triedWords.ts";
import {
  allTried,
  isAdvisable,
  type TriedStop,
  useTriedStops,
} from "../triedStops/useTriedStops.ts";
import type { DecideProps } from "./decideProps.ts";
import type { DecidedKind } from "./decisionDraft.ts";
import { deskName, keepDeskName } from "./deskName.ts";
import { askable, askedReadings, toldAnswer } from "./replyItems.ts";

const kinds = [
  { value: "accept", name: messages.accept, key: "a" },
  { value: "askAgain", name: messages.askAgain, key: "r" },
  { value: "otherPart", name: messages.otherPart, key: "p" },
] as const;

/** One key each, where nobody is typing; Ctrl+Enter decides and goes on, also from within a text. */
function useDecisionKeys(onKind: (kind: DecidedKind) => void, onDecide: (() => void) | null): void {
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      if (document.querySelector("dialog[open]")) return;
      if (event.key === "Enter" && (event.ctrlKey || event.metaKey)) {
        if (!onDecide) return;
        event.preventDefault();
        onDecide();
        return;
      }
      const { target } = event;
      const typing =
        target instanceof Element && target.matches("input[type=text], textarea, select");
      if (typing || event.ctrlKey || event.metaKey || event.altKey) return;
      const kind = kinds.find(({ key }) => key === event.key);
      if (!kind) return;
      event.preventDefault();
      onKind(kind.value);
    };
    window.addEventListener("keydown", press);
    return () => window.removeEventListener("keydown", press);
  });
}

export function Deciding({
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
}: DecideProps & { onDecide: (decision: Decision, next: boolean) => void }) {
  const { note, picked, asked } = draft;
  // What does not fit is decided by a person, not by a default.
  const usual =
    odd.length > 0 ? "askAgain" : assessment && assessment.verdict !== "no" ? "accept" : null;
  const kind = draft.kind ?? usual;
  const typed = (kind && draft.typed[kind]) ?? null;
  const [typedName, setBy] = useState(deskName);
  const signedIn = desk.shared?.state?.person;
  const by = signedIn || typedName;
  const unit = unitOf(record);
  const pack = useReferencePack();
  const wanted = kind === "otherPart" ? fitment : null;
  const tried = useTriedStops(assessor, record, wanted, pack, unit);
  const part = allTried(tried).find(({ key, asFitted }) => key === picked && !asFitted) ?? null;
  const prescription = prescribing.state === "found" ? prescribing.prescription : null;
  const needsReason = kind === "otherPart" && part !== null && !isAdvisable(part);
  const written = useMemo(() => {
    const content = { record: letterTo(record, submission), unit, from: by, note };
    if (kind === "askAgain") {
      const readings = askedReadings(asked, record, fitment, odd, assessment);
      return readings.length === 0 ? null : askAgainText(content, readings);
    }
    if (kind === "accept") {
      if (assessment === null) return null;
      return acceptText(content, toldAnswer(assessment, prescription));
    }
    const advice = part && advisedPart(part, unit);
    if (part === null || advice === null) return null;
    if (!isAdvisable(part) && note.trim() === "") return null;
    return otherPartText(content, advice);
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
        ? messages.whatToDoIs
        : null
      : kind === "askAgain"
        ? messages.chooseReadingsToRe
        : kind === "accept"
          ? messages.answerIsStillBeing
          : kind === null
            ? assessment === null
              ? messages.answerIsStillBeing
              : messages.itDoesNotFit
            : needsReason
              ? messages.thisPartIsNot
              : messages.chooseStop;
  const nameless = by.trim() === "";

  const decide = (next: boolean) => {
    if (kind === null) return;
    if (!signedIn) keepDeskName(by);
    onDecide(
      {
        key: newId(),
        checkId: record.id,
        submission: submission.key,
        kind,
        by: by.trim(),
        at: new Date().toISOString(),
        note: note.trim(),
        reply: text,
        ...(kind === "askAgain" && { readings: [...asked] }),
        ...advised(kind, part, prescription, unit),
      },
      next,
    );
  };
  useDecisionKeys(
    (next) => onDraft({ kind: next }),
    missing !== null || nameless ? null : () => decide(true),
  );
  const setTyped = (words: string | null) => {
    if (kind === null) return;
    const { [kind]: _, ...others } = draft.typed;
    onDraft({ typed: words === null ? others : { ...others, [kind]: words } });
  };

  return (
    <div class="stack">
      <Segmented
        legend={messages.decision}
        legendUnseen
        options={kinds}
        value={kind}
        onChange={(next) => onDraft({ kind: next })}
      />
      <p class="small soft desk-keys">{messages.keysAcceptRAsk}</p>
      {kind === "askAgain" && (
        <fieldset class="desk-asked">
          <legend class="field-label">{messages.readingsToReMeasure}</legend>
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
        <TriedStops
          tried={tried}
          level={3}
          unit={unit}
          choice={({ key, ranked, asFitted }) =>
            !asFitted && (
              <div class="row">
                <Button pressed={picked === key} onClick={() => onDraft({ picked: key })}>
                  {picked === key ? messages.chosen : messages.choose}
                  <span class="unseen"> {rankedName(ranked, unit)}</span>
                </Button>
              </div>
            )
          }
        />
      )}
      {signedIn ? (
        <p class="small">
          {filled(messages.decidedAsByYour, { signedIn: <strong>{signedIn}</strong> })}
        </p>
      ) : (
        <TextField
          label={messages.yourName}
          value={by}
          onInput={setBy}
          maxLength={recordBounds.labelCharacters}
          capitals
        />
      )}
      <label class="field">
        <span class="field-label">{messages.noteAlsoInReply}</span>
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
          <span class="field-label">{messages.replyInInches({ unit })}</span>
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
        <Button onClick={() => setTyped(null)}>{messages.rewriteIt}</Button>
      )}
      {(missing || nameless) && <p class="small soft">{missing ?? messages.giveYourNameIt}</p>}
      <Button
        look="main"
        wide
        disabled={missing !== null || nameless}
        onClick={() => decide(false)}
      >
        {kind === null || kind === "accept"
          ? messages.accept
          : kind === "askAgain"
            ? messages.askAgain
            : messages.adviseThisPart}
      </Button>
      <Button wide disabled={missing !== null || nameless} onClick={() => decide(true)}>
        {signedIn ? messages.decideSendNextNew : messages.decideNextNew}
      </Button>
    </div>
  );
}

/** The stop that a decision advises, if it advises another one than was checked. */
function advised(
  kind: DecidedKind,
  part: TriedStop | null,
  prescription: Prescription | null,
  unit: LengthUnit,
): Pick<Decision, "stop" | "part"> {
  const tried = part?.ranked.fitment?.stop;
  if (kind === "otherPart" && part && tried) {
    return { stop: rankedName(part.ranked, unit), ...orderable(tried) };
  }
  if (kind !== "accept" || !prescription || prescription.none) return {};
  const { change, candidate } = prescription;
  return change === "stop" || change === "both"
    ? { stop: said(stopTitle(candidate.stop)), ...orderable(candidate.stop) }
    : {};
}

function orderable({ partNumber, revision }: Stop): Pick<Decision, "part"> {
  if (partNumber === undefined) return {};
  return { part: { partNumber, ...(revision !== undefined && { revision }) } };
}

/** A letter by the shared desk stays there for good: it names nobody. */
function letterTo(record: CheckRecord, { way }: Listed): CheckRecord {
  if (way !== "desk") return record;
  const { name: _, ...author } = record.author;
  return { ...record, author };
}

/** Null where it could not be assessed. */
function advisedPart({ ranked }: TriedStop, unit: LengthUnit): AdvisedPart | null {
  const { fitment, assessment } = ranked;
  if (fitment === null || assessment === null) return null;
  const { stop } = fitment;
  const curve = stopCurve(stop);
  return {
    name: rankedName(ranked, unit),
    part: stop.partNumber === undefined ? null : said(partText(stop)),
    heightMm: meanOf(stop.freeHeight),
    rateNPerMm: curve.ok ? secantRate(curve.value) : null,
    answer: {
      ...toldAnswer(assessment, null),
      advice: ranked.placed?.judgement.keepsTravel === false ? [travelKeptSentence] : [],
    },
  };
}
