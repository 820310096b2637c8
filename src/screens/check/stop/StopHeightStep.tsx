import { useState } from "preact/hooks";
import { stopFaults } from "../../../records/check/recordRules.ts";
import { sidesOf } from "../../../records/filling/sides.ts";
import { sentenceText } from "../../../saying/sentenceText.ts";
import * as messages from "../../../words/compiled/screens/check/stop.ts";
import { drawingValues } from "../../drawings/drawingValues.ts";
import { ReadingDrawing } from "../../drawings/ReadingDrawing.tsx";
import { isPractised } from "../../guide/practice.ts";
import type { StepProps } from "../../guide/stepProps.ts";
import { Notice } from "../../parts/Notice.tsx";
import { readingWords, wordedLayout } from "../../readings/readingWords.ts";
import { NumberEntry } from "../NumberEntry.tsx";
import { ReadingEntry } from "../reading/ReadingEntry.tsx";
import { shownText, shownUnit } from "../reading/shownReading.ts";
import { WhatGoesWrong } from "../reading/WhatGoesWrong.tsx";

const height = "stop.freeHeight";

export function StopHeightStep({ stored, change, preferences }: StepProps) {
  const { record } = stored;
  const guide = readingWords(height, wordedLayout(record));
  const side = sidesOf(stored)[0] ?? "left";
  const fault = stopFaults(record.stop ?? {}).find(({ code }) => code === "usableAboveHeight");
  const [practised] = useState(isPractised);
  const how = (
    <>
      <p>{guide.how}</p>
      <WhatGoesWrong wrong={guide.wrong} reading="freeHeight" kind={record.layout?.kind} />
    </>
  );
  return (
    <div class="reading-layout">
      <div class="reading-show">
        <ReadingDrawing
          layoutKind={record.layout?.kind ?? "arm"}
          reading="freeHeight"
          values={drawingValues(record, side)}
          side={side}
          axle={record.axle}
          unit={shownUnit(stored, height, preferences.length)}
          text={shownText(stored, height)}
        />
      </div>
      <div class="stack">
        <ReadingEntry
          id={height}
          stored={stored}
          change={change}
          preferences={preferences}
          first={stored.entries[height] === undefined}
          brief={practised}
          how={how}
        >
          {!practised && <div class="reading-how">{how}</div>}
        </ReadingEntry>
        <NumberEntry
          id="stop.usableCompressionMm"
          stored={stored}
          change={change}
          preferences={preferences}
          label={messages.usableCompression}
          hint={messages.howFarItMay}
          unitChoice
        />
        <NumberEntry
          id="stop.usableTolMm"
          stored={stored}
          change={change}
          preferences={preferences}
          label={messages.ofUsableCompression}
          hint={messages.howMuchPartsOf}
          allowed="zeroOrMore"
          unitChoice
        />
        {fault && (
          <Notice tone="no" live>
            <p>{sentenceText(fault.sentence, preferences.length)}</p>
          </Notice>
        )}
      </div>
    </div>
  );
}
