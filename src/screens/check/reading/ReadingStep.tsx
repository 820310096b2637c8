import { useState } from "preact/hooks";
import type { Side } from "../../../physics/fitment.ts";
import { limitOf, type ReadingId, sideOf as sideOfId } from "../../../physics/readings/index.ts";
import type { StoredCheck } from "../../../records/check/storedCheck.ts";
import { limitIn } from "../../../records/entry/entryPath.ts";
import { chosen } from "../../../records/filling/choice.ts";
import { isHeightSettled } from "../../../records/filling/settledHeight.ts";
import { sidesOf } from "../../../records/filling/sides.ts";
import * as messages from "../../../words/compiled/screens/check/reading.ts";
import { drawingValues, drawnReadingOf } from "../../drawings/drawingValues.ts";
import { ReadingDrawing } from "../../drawings/ReadingDrawing.tsx";
import { isPractised } from "../../guide/practice.ts";
import type { StepProps } from "../../guide/stepProps.ts";
import type { ReadingWords } from "../../layouts/wordedReading.ts";
import { readingWords, wordedLayout } from "../../readings/readingWords.ts";
import { TiltButton } from "../tilt/TiltButton.tsx";
import { type TiltTask, tiltTaskOf } from "../tilt/tiltTask.ts";
import { CautionHere } from "./CautionHere.tsx";
import { LimitDistance, LimitPlace } from "./LimitPlace.tsx";
import { MakingChoice } from "./MakingChoice.tsx";
import { MovedBetween } from "./MovedBetween.tsx";
import { entryOf, ReadingEntry } from "./ReadingEntry.tsx";
import { isRideHeightStep, SettledChoice, SettledHeight } from "./SettledHeight.tsx";
import { isStandStep, StandChoice } from "./StandChoice.tsx";
import { shownText, shownUnit } from "./shownReading.ts";
import { WhatGoesWrong } from "./WhatGoesWrong.tsx";
import { WheelPerOuter } from "./WheelPerOuter.tsx";

/** The side a reading is taken on; shared geometry is measured on the first side. */
function sideOf(stored: StoredCheck, id: string): Side {
  return sideOfId(id) ?? sidesOf(stored)[0] ?? "left";
}

function wordsOf(stored: StoredCheck, id: ReadingId): ReadingWords {
  return readingWords(id, wordedLayout(stored.record), limitIn(stored.record, id));
}

function signsOf(task: TiltTask | null) {
  if (task?.kind === "line") return { plus: messages.lowerAtWheel, minus: messages.higherAtWheel };
  return task?.pivotAt ? { plus: messages.topTowardPivot, minus: messages.topAway } : undefined;
}

/** One reading on one screen. */
export function ReadingStep(props: StepProps & { readonly id: ReadingId }) {
  const { stored, change, id, preferences, next } = props;
  const guide = wordsOf(stored, id);
  const side = sideOf(stored, id);
  const { record } = stored;
  const index = limitOf(id)?.index ?? -1;
  const limit = record.corners.find((corner) => corner.side === side)?.limits[index];
  const drawn = drawnReadingOf(id, limit?.kind);
  const layout = wordedLayout(record);
  const asksStand = isStandStep(id);
  const typed = stored.entries[id]?.texts.some((text) => text.trim() !== "") ?? false;
  const settledFirst = asksStand && chosen(stored, `${side}.stand`) === null && !typed;
  const settles = isRideHeightStep(id);
  const tilt = tiltTaskOf(stored, id);
  const byPhone = tilt !== null;
  const [practised] = useState(isPractised);
  const how = (
    <>
      <p>{guide.how}</p>
      <WhatGoesWrong
        wrong={guide.wrong}
        reading={drawn}
        kind={record.layout?.kind}
        at={limit?.at}
      />
      {guide.note && <p class="small soft">{guide.note}</p>}
      {guide.skipped && <p class="small soft">{guide.skipped}</p>}
    </>
  );
  const often = settles && <SettledChoice {...props} />;
  return (
    <>
      {asksStand && <StandChoice {...props} />}
      <div class="reading-layout">
        {drawn && (
          <div class="reading-show">
            <ReadingDrawing
              layoutKind={layout.kind}
              reading={drawn}
              values={drawingValues(record, side, index)}
              side={side}
              axle={record.axle}
              armRole={layout.armRole}
              stopOn={layout.stopOn}
              at={limit?.at}
              unit={shownUnit(stored, id, preferences.length)}
              text={shownText(stored, id)}
            />
          </div>
        )}
        <div class="stack">
          {byPhone && (
            <div class="other-way">
              <TiltButton
                id={id}
                name={guide.name}
                stored={stored}
                change={change}
                preferences={preferences}
                entryOf={entryOf}
              />
            </div>
          )}
          {settles && <SettledHeight {...props} />}
          <ReadingEntry
            id={id}
            stored={stored}
            change={change}
            preferences={preferences}
            signs={signsOf(tilt)}
            onEnter={next}
            first={
              !typed && !settledFirst && !byPhone && !(settles && isHeightSettled(stored, side))
            }
            brief={practised}
            how={
              <>
                {how}
                {often}
                <MakingChoice {...props} />
              </>
            }
          >
            {!practised && often}
            {limit && <LimitPlace {...props} />}
            <div class="reading-how">
              {!practised && how}
              <CautionHere id={id} limit={limit?.kind} />
            </div>
            {limit && <MovedBetween {...props} />}
            {!practised && <MakingChoice {...props} />}
          </ReadingEntry>
          {limit && <LimitDistance {...props} />}
          {id === "pivotToOuter" && (
            <WheelPerOuter stored={stored} change={change} preferences={preferences} />
          )}
        </div>
      </div>
    </>
  );
}
