import { useState } from "preact/hooks";
import type { Side } from "../../../physics/fitment.ts";
import { sentenceText } from "../../../records/entry/quantityText.ts";
import { helperInputs } from "../../../records/filling/helperInputs.ts";
import { packCornerMass } from "../../../records/filling/platforms.ts";
import { drawingValues } from "../../drawings/drawingValues.ts";
import { ReadingDrawing } from "../../drawings/ReadingDrawing.tsx";
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
  const side: Side = step.id.startsWith("right") ? "right" : "left";
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
        legend={`How do you know the weight on the ${side} wheel?`}
        legendUnseen
        value={way}
        onChange={(value) => change((current) => withMassWay(current, side, value))}
        options={[
          { value: "scale", name: "Wheel scale", hint: "This wheel by itself." },
          {
            value: "axle",
            name: "Half of the axle's weight",
            hint: "From a truck scale: both wheels of this axle on the plate.",
          },
          ...(pack
            ? [{ value: "pack" as const, name: packOption.name, hint: packOption.hint }]
            : []),
          { value: "unknown", name: "Not known" },
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
              label="Weight of this axle"
              hint="As the vehicle stands now, driver out."
              usual="2 %"
            />
            <p class="small">
              No ticket? The axle rating (GAWR) on the door label is an upper bound: this axle
              weighs less as it stands. Don't type it here; use it as a limit for the payload.
            </p>
            <Notice tone="care">
              <p>
                Half of it counts for each wheel, ± 5 % for the difference left to right (common
                practice). Tank, battery and driver make one side heavier; a wheel scale says how
                much.
              </p>
            </Notice>
          </>
        )}
        {way === "pack" && pack && (
          <Notice tone="care">
            <p>
              <strong>
                {sentenceText([{ kind: "mass", value: pack.values[0] ?? 0 }], massUnit)} ±{" "}
                {sentenceText([{ kind: "mass", value: pack.tol }], massUnit)}
              </strong>
              , usual for this vehicle by the parts library. Bodies, tanks and racks differ: a truck
              scale ticket is better.
            </p>
          </Notice>
        )}
        {way === "unknown" && (
          <Notice tone="unsure" live>
            <p>
              The answer then can't say how often or how hard the wheel reaches the stop, nor which
              stiffness works. A truck scale ticket for this axle is enough.
            </p>
          </Notice>
        )}
      </div>
    </>
  );
}
