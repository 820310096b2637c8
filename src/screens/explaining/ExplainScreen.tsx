import { useMemo } from "preact/hooks";
import type { Assessor } from "../../compute/assessor.ts";
import { spacer } from "../../physics/sentence.ts";
import { checkName, dateText } from "../../records/check/checkName.ts";
import { completeRecord } from "../../records/check/completeRecord.ts";
import { fitmentOf } from "../../records/check/fitmentOf.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { partText } from "../../records/pack/stopFacts.ts";
import { measurersOf } from "../../records/review/measurers.ts";
import { fittedAgainst, otherwiseText } from "../../records/review/partTrace.ts";
import { quantityText } from "../../saying/quantityText.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import { said } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/explaining.ts";
import { answerHref } from "../addresses.ts";
import { verdictWords } from "../assessment/stateWords.ts";
import { useAskedRecord } from "../assessment/useAskedRecord.ts";
import { useAssessment } from "../assessment/useAssessment.ts";
import { useAssessor } from "../assessment/useAssessor.ts";
import { useKeptAdvice } from "../assessment/useKeptAdvice.ts";
import { usePrescription } from "../assessment/usePrescription.ts";
import { StateMark } from "../drawings/StateMark.tsx";
import { cautionsOf } from "../guide/cautions.ts";
import { ButtonLink } from "../parts/Button.tsx";
import { Notice } from "../parts/Notice.tsx";
import { PrintButton } from "../parts/PrintButton.tsx";
import { Screen, useHeadingFocus } from "../parts/Screen.tsx";
import { usePackInUse } from "../referencePack.ts";
import { explained, isNotKnownYet } from "./explainWords.ts";
import "../styles/paper.css";
import "./explain.css";

export interface ExplainScreenProps {
  readonly stored: StoredCheck;
  readonly unit: LengthUnit;
  onChange(stored: StoredCheck): void;
  readonly startAssessor?: () => Assessor;
}

/** The answer for who owns the vehicle: what touches today, what the part does, what it costs, what is unsure. */
export function ExplainScreen({ stored, unit, onChange, startAssessor }: ExplainScreenProps) {
  const heading = useHeadingFocus("explain");
  const asked = useAskedRecord(stored.record);
  const completion = useMemo(() => completeRecord(stored), [asked, stored.entries]);
  const fitment = useMemo(() => (completion.ok ? fitmentOf(completion.value) : null), [completion]);
  const assessor = useAssessor(startAssessor);
  const assessed = useAssessment(assessor, fitment, "explain");
  const whole = assessed.state === "complete";
  const pack = usePackInUse()?.pack ?? null;
  const prescribing = usePrescription(assessor, asked, whole ? fitment : null, pack, unit);
  useKeptAdvice(stored, prescribing, pack, onChange);
  const found = whole && prescribing.state === "found" ? prescribing.prescription : null;
  const notKnown = found !== null && isNotKnownYet(found);
  const { createdAt, vehicle, stop, advised } = stored.record;
  const measurers = completion.ok ? measurersOf(completion.value) : [];
  const { fitted } = stored.record;
  const otherwise = otherwiseText(fittedAgainst(fitted ?? null, null, advised?.at(-1), stop ?? {}));
  return (
    <Screen
      top={
        <>
          <ButtonLink
            look="quiet"
            href={answerHref(stored.id)}
            icon="back"
            label={messages.toAnswer}
          />
          <span class="screen-name">{messages.forCustomer}</span>
        </>
      }
      actions={<PrintButton what="answer" disabled={found === null} />}
    >
      <h1 ref={heading} tabIndex={-1}>
        {said(checkName(stored))}
      </h1>
      {found === null && prescribing.state !== "fault" && assessed.state !== "fault" && (
        <p role="status">{messages.workingItOut}</p>
      )}
      {(prescribing.state === "fault" || assessed.state === "fault") && (
        <Notice tone="unsure" live>
          <p>{messages.thisCheckHasNo}</p>
        </Notice>
      )}
      {found && whole && (
        <>
          <p class="check-state">
            <StateMark
              state={notKnown ? "unsure" : found.none ? "no" : found.verdict}
              size={28}
              label=""
            />
            <strong>
              {notKnown
                ? messages.notKnownYet
                : found.none
                  ? messages.noPartAloneDoes
                  : messages.withIt({ verdict: verdictWords[found.verdict] })}
            </strong>
          </p>
          {explained(assessed.assessment, found).map(({ heading: title, sentences }) => (
            <section key={title} class="card">
              <h2>{title}</h2>
              {sentences.map((sentence) => {
                const text = sentenceText(sentence, unit, { coarse: true });
                return <p key={text}>{text}</p>;
              })}
            </section>
          ))}
          <section class="card">
            <h2>{messages.whoSaidSo}</h2>
            <p>
              {messages.measured}{" "}
              {measurers.length > 0 && (
                <bdi>{messages.by({ measurers: measurers.join(messages.and) })} </bdi>
              )}
              {messages.on({ createdAt: dateText(createdAt) })}
              {pack?.maker &&
                messages.partIsAdvisedFrom({
                  name: pack.maker.name,
                  hasEdition: Boolean(pack.edition),
                  edition: pack.edition,
                })}
            </p>
            {fitted && (
              <p>
                {messages.fittedHasSpacerMmSelectTrue({
                  part: said(partText(fitted)),
                  hasSpacerMm: fitted.spacerMm > 0,
                  spacerMm: quantityText(spacer(fitted.spacerMm), unit),
                  by: fitted.by,
                  at: dateText(fitted.at),
                })}
                {otherwise && messages.thatIs({ otherwise: said(otherwise) })}
              </p>
            )}
          </section>
          <section class="card">
            <h2>{messages.beforeItIsDriven}</h2>
            <ul class="explained-cautions">
              {cautionsOf((vehicle?.liftMm ?? 0) > 0 ? "raised" : "level").map(({ id, words }) => (
                <li key={id}>{words}</li>
              ))}
            </ul>
          </section>
        </>
      )}
    </Screen>
  );
}
