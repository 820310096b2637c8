import { useId } from "preact/hooks";
import { completeRecord } from "../../records/check/completeRecord.ts";
import { recordBounds } from "../../records/check/recordFormat.ts";
import { changeRecord } from "../../records/check/storedCheck.ts";
import { withoutSheet } from "../../records/check/withoutSheet.ts";
import { withField } from "../../records/entry/entryPath.ts";
import { sentenceText } from "../../records/entry/quantityText.ts";
import { stepHref } from "../addresses.ts";
import { saveCheckFile } from "../checkFile.ts";
import { SimilarForces } from "../choosing/SimilarForces.tsx";
import type { StepProps } from "../guide/stepProps.ts";
import { cautionsHold, headingOf, stepFor } from "../guide/steps.ts";
import { Button, ButtonLink } from "../parts/Button.tsx";
import { Card } from "../parts/Card.tsx";
import { Notice } from "../parts/Notice.tsx";

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
            missing.length === 1 ? "One thing is missing" : `${missing.length} things are missing`
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
                      label={`Go there: ${nameOf(step)}`}
                    >
                      Go there
                    </ButtonLink>
                  )}
                </li>
              );
            })}
          </ul>
        </Card>
      ) : (
        <Notice tone="ok" live>
          <p>The answer has everything it needs.</p>
        </Notice>
      )}
      {withoutSheet(stored, completion) && (
        <SimilarForces stored={stored} onTake={change} unit={preferences.length} />
      )}
      {!cautionsHold(stored) && (
        <Notice tone="care">
          <p>The cautions for this vehicle are not acknowledged yet.</p>
          <div class="row">
            <ButtonLink href={stepHref(stored.id, "cautions")}>Read them</ButtonLink>
          </div>
        </Notice>
      )}
      {passed.length > 0 && (
        <Card heading="Skipped">
          <p class="small soft known-lead">
            The answer comes without these, and says what it then can't say. You can come back any
            time.
          </p>
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
          Notes
        </label>
        <span class="field-hint">
          What the next person should know: worn parts, what was hard to reach.
        </span>
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
      <Button wide icon="file" onClick={() => saveCheckFile(stored)}>
        Save as a file
      </Button>
    </>
  );
}
