import { useId } from "preact/hooks";
import { completeRecord } from "../../records/check/completeRecord.ts";
import { recordBounds } from "../../records/check/recordFormat.ts";
import { changeRecord } from "../../records/check/storedCheck.ts";
import { withoutSheet } from "../../records/check/withoutSheet.ts";
import { withField } from "../../records/entry/entryPath.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import * as messages from "../../words/compiled/screens/check.ts";
import { stepHref } from "../addresses.ts";
import { SimilarForces } from "../choosing/SimilarForces.tsx";
import type { StepProps } from "../guide/stepProps.ts";
import { cautionsHold, headingOf, stepFor } from "../guide/steps.ts";
import { ButtonLink } from "../parts/Button.tsx";
import { Card } from "../parts/Card.tsx";
import { Notice } from "../parts/Notice.tsx";
import { SaveCheckButton } from "../SaveCheckButton.tsx";

/** What is still missing, with the way there; what was passed over, with what stays unsaid. */
export function FinishStep({ stored, change, all, preferences }: StepProps) {
  const completion = completeRecord(stored);
  const missing = completion.ok ? [] : completion.missing;
  const asked = new Set([
    "finish",
    "cautions",
    ...missing.map(({ field }) => stepFor(field, all) ?? field),
  ]);
  const passed = all.filter((step) => step.state !== "done" && !asked.has(step.id));
  const notes = useId();
  const nameOf = (id: string) => all.find((step) => step.id === id)?.name ?? id;
  return (
    <>
      {missing.length > 0 ? (
        <Card
          heading={
            missing.length === 1
              ? messages.oneThingIsMissing
              : messages.thingsAreMissing({ missing: missing.length })
          }
        >
          <ul class="missing">
            {missing.map(({ field, sentence }) => {
              const step = stepFor(field, all);
              return (
                <li key={field}>
                  <p>{sentenceText(sentence, preferences.length)}</p>
                  {step && (
                    <ButtonLink
                      href={stepHref(stored.id, step)}
                      label={messages.goThere({ nameOf: nameOf(step) })}
                    >
                      {messages.goThere2}
                    </ButtonLink>
                  )}
                </li>
              );
            })}
          </ul>
        </Card>
      ) : (
        <Notice tone="ok" live>
          <p>{messages.answerHasEverythingIt}</p>
        </Notice>
      )}
      {withoutSheet(stored, completion) && (
        <SimilarForces stored={stored} onTake={change} unit={preferences.length} />
      )}
      {!cautionsHold(stored) && (
        <Notice tone="care">
          <p>{messages.cautionsForThisVehicle}</p>
          <div class="row">
            <ButtonLink href={stepHref(stored.id, "cautions")}>{messages.readThem}</ButtonLink>
          </div>
        </Notice>
      )}
      {passed.length > 0 && (
        <Card heading={messages.skipped}>
          <p class="small soft known-lead">{messages.answerComesWithoutThese}</p>
          <ul class="passed">
            {passed.map((step) => (
              <li key={step.id}>
                <a href={stepHref(stored.id, step.id)}>{headingOf(step)}</a>
              </li>
            ))}
          </ul>
        </Card>
      )}
      <div class="field">
        <label class="field-label" for={notes}>
          {messages.notes}
        </label>
        <span class="field-hint">{messages.whatNextPersonShould}</span>
        <span class="field-box">
          <textarea
            id={notes}
            rows={4}
            maxLength={recordBounds.notesCharacters}
            value={stored.record.notes ?? ""}
            onInput={(event) => {
              const text = event.currentTarget.value;
              change((current) =>
                changeRecord(current, (record) => withField(record, "notes", text || undefined)),
              );
            }}
          />
        </span>
      </div>
      <SaveCheckButton checks={[stored]} wide label={messages.saveAsFile} />
    </>
  );
}
