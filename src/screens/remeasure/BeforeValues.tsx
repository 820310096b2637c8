import { useEffect, useState } from "preact/hooks";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import { isReading } from "../../records/entry/entryPath.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { isBlank, isSameEntry } from "../../records/remeasure/earlierValues.ts";
import { addRepeat, putBack, takeAnew } from "../../records/remeasure/remeasureWalk.ts";
import type { ReadingNow } from "../../records/remeasure/underWay.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import * as messages from "../../words/compiled/screens/remeasure.ts";
import { filled } from "../filled.ts";
import type { Change } from "../guide/stepProps.ts";
import { Button } from "../parts/Button.tsx";
import { valuesWords } from "./remeasureWords.ts";

/** Earlier value, and the ways to take it again. */
export function BeforeValues({
  stored,
  now,
  change,
  unit,
}: {
  stored: StoredCheck;
  now: ReadingNow;
  change: Change;
  unit: LengthUnit;
}) {
  const { before, reading, tool } = now;
  const entry = stored.entries[reading];
  const [typing, setTyping] = useState(0);
  useEffect(() => {
    if (typing === 0) return;
    const fields = document.querySelectorAll<HTMLInputElement>(".reading-entry input");
    [...fields].find(({ value }) => value === "")?.focus();
  }, [typing]);
  const type: Change = (update) => {
    change(update);
    setTyping((count) => count + 1);
  };
  const untouched = isSameEntry(entry, before ?? undefined);
  return (
    <section class="before-values" aria-label={messages.earlierValue}>
      <p class="small">{sentenceText(now.sentence, unit)}</p>
      {before && !isBlank(before) && (
        <>
          <p>
            {filled(messages.before, { values: <strong>{valuesWords(reading, before)}</strong> })}
          </p>
          <div class="before-ways">
            {untouched && !isReading(reading) ? null : untouched ? (
              <>
                <Button onClick={() => type((current) => takeAnew(current, tool?.id ?? null))}>
                  {tool ? messages.reMeasureWith({ name: tool.name }) : messages.reMeasure}
                </Button>
                {tool && (
                  <Button onClick={() => type((current) => takeAnew(current, null))}>
                    {messages.reMeasureSameTool}
                  </Button>
                )}
                <Button onClick={() => type(addRepeat)}>{messages.addRepeat}</Button>
              </>
            ) : (
              <Button onClick={() => change(putBack)}>{messages.restoreOldValue}</Button>
            )}
          </div>
        </>
      )}
    </section>
  );
}
