import { useState } from "preact/hooks";
import { sideOf } from "../../../physics/readings/index.ts";
import { helperInputs } from "../../../records/filling/helperInputs.ts";
import { packCornerMass } from "../../../records/filling/platforms.ts";
import { sentenceText } from "../../../saying/sentenceText.ts";
import * as messages from "../../../words/compiled/screens/check/ride.ts";
import { drawingValues } from "../../drawings/drawingValues.ts";
import { ReadingDrawing } from "../../drawings/ReadingDrawing.tsx";
import { filled } from "../../filled.ts";
import { isPractised } from "../../guide/practice.ts";
import type { StepProps } from "../../guide/stepProps.ts";
import { Choices } from "../../parts/Choices.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { readingWords, wordedLayout } from "../../readings/readingWords.ts";
import { referencePack } from "../../referencePack.ts";
import { ReadingEntry } from "../reading/ReadingEntry.tsx";
import { shownUnit } from "../reading/shownReading.ts";
import { WhatGoesWrong } from "../reading/WhatGoesWrong.tsx";
import { useRevealed } from "../revealed.ts";
import { type MassWay, massWay, withMassWay } from "./cornerMassWay.ts";
import { packOption } from "./RideWays.tsx";
import { TolerancedEntry } from "./TolerancedEntry.tsx";

export function CornerMassStep({ stored, change, step, preferences, next }: StepProps) {
  const side = sideOf(step.id) ?? "left";
  const way = massWay(stored, side);
  const { record } = stored;
  const opened = useRevealed(way);
  const pack = packCornerMass(stored, referencePack());
  const massUnit = preferences.length;
  const guide = readingWords("cornerMassKg", wordedLayout(record));
  const [practised] = useState(isPractised);
  const how = (
    <>
      <p>{guide.how}</p>
      <WhatGoesWrong wrong={guide.wrong} reading="cornerMass" kind={record.layout?.kind} />
    </>
  );
  return (
    <>
      <Choices<MassWay>
        legend={messages.howDoYouKnow({ side })}
        legendUnseen
        value={way}
        onChange={(value) => change((current) => withMassWay(current, side, value))}
        options={[
          { value: "scale", name: messages.wheelScale, hint: messages.thisWheelByItself },
          {
            value: "axle",
            name: messages.halfOfAxlesWeight,
            hint: messages.fromTruckScaleBoth,
          },
          ...(pack ? [packOption] : []),
          { value: "unknown", name: messages.notKnown },
        ]}
      />
      <div ref={opened} class="stack">
        {way === "scale" && (
          <div class="reading-layout">
            <div class="reading-show">
              <ReadingDrawing
                layoutKind={record.layout?.kind ?? "arm"}
                reading="cornerMass"
                values={drawingValues(record, side)}
                side={side}
                axle={record.axle}
                unit={shownUnit(stored, step.id, massUnit)}
              />
            </div>
            <div class="stack">
              <ReadingEntry
                id={`${side}.cornerMassKg`}
                stored={stored}
                change={change}
                preferences={preferences}
                onEnter={next}
                brief={practised}
                how={how}
              >
                {!practised && <div class="reading-how">{how}</div>}
              </ReadingEntry>
            </div>
          </div>
        )}
        {way === "axle" && (
          <>
            <TolerancedEntry
              input={helperInputs.axleMass}
              stored={stored}
              change={change}
              preferences={preferences}
              label={messages.weightOfThisAxle}
              hint={messages.asVehicleStandsNow}
              usual="2 %"
            />
            <p class="small">{messages.noTicketAxleRating}</p>
            <Notice tone="care">
              <p>{messages.halfOfItCounts}</p>
            </Notice>
          </>
        )}
        {way === "pack" && pack && (
          <Notice tone="care">
            <p>
              {filled(messages.usualForThisVehicle, {
                strong: (
                  <strong>
                    {sentenceText([{ kind: "mass", value: pack.values[0] ?? 0 }], massUnit)} ±{" "}
                    {sentenceText([{ kind: "mass", value: pack.tol }], massUnit)}
                  </strong>
                ),
              })}
            </p>
          </Notice>
        )}
        {way === "unknown" && (
          <Notice tone="unsure" live>
            <p>{messages.answerThenCantSay}</p>
          </Notice>
        )}
      </div>
    </>
  );
}
