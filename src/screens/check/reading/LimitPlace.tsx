import { useState } from "preact/hooks";
import type { LayoutKind, Side } from "../../../physics/fitment.ts";
import { limitOf, parseReadingId } from "../../../physics/readings/index.ts";
import { mean } from "../../../physics/uncertainty/index.ts";
import { limitIn } from "../../../records/entry/entryPath.ts";
import { plainDecimal } from "../../../records/entry/units.ts";
import {
  asksPlaceOnArm,
  chooseLimitPlace,
  type LimitPlaceChoice,
  limitPlaceOf,
} from "../../../records/filling/limitPlace.ts";
import { quantityText } from "../../../saying/quantityText.ts";
import * as messages from "../../../words/compiled/screens/check/reading.ts";
import { drawingValues } from "../../drawings/drawingValues.ts";
import { ReadingDrawing } from "../../drawings/ReadingDrawing.tsx";
import { Decided } from "../../guide/Known.tsx";
import { isPractised } from "../../guide/practice.ts";
import type { StepProps } from "../../guide/stepProps.ts";
import { layoutsOnScreen } from "../../layouts/layoutsOnScreen.ts";
import { Choices, Segmented } from "../../parts/Choices.tsx";
import { Disclosure } from "../../parts/Disclosure.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { wordedLayout } from "../../readings/readingWords.ts";
import { NumberEntry } from "../NumberEntry.tsx";
import { ReadingEntry } from "./ReadingEntry.tsx";
import { shownText, shownUnit } from "./shownReading.ts";

function placesOf(
  kind: LayoutKind,
): readonly { value: LimitPlaceChoice; name: string; hint?: string }[] {
  const { placeOnArm } = layoutsOnScreen[kind].words;
  return [
    ...(placeOnArm === null ? [] : [placeOnArm]),
    { value: "joint", name: messages.atOuterJoint },
    { value: "distance", name: messages.elsewhereOnArm, hint: messages.itsDistanceIsMeasured },
    { value: "stop", name: messages.asClosingOfStops },
    { value: "wheel", name: messages.notOnArmIt },
  ];
}

const placesBeside: readonly { value: LimitPlaceChoice; name: string }[] = [
  { value: "wheel", name: messages.atPartItself },
  { value: "stop", name: messages.atStop },
];

/** Where a clearance was measured, and how fast it closes. Nothing on other readings. */
export function LimitPlace(props: StepProps) {
  const { stored, change, preferences, step } = props;
  const found = parseReadingId(step.id);
  if (found?.of !== "limit" || found.name !== "reading") return null;
  const { side, index } = found;
  const limit = stored.record.corners.find((corner) => corner.side === side)?.limits[index];
  if (!limit) return null;
  const layout = wordedLayout(stored.record);
  const place = limitPlaceOf(stored, side, index);
  const choose = (chosen: LimitPlaceChoice) =>
    change((current) => chooseLimitPlace(current, side, index, chosen));
  const options = asksPlaceOnArm(stored, limit) ? placesOf(layout.kind) : placesBeside;
  const question =
    options === placesBeside ? (
      <Segmented<LimitPlaceChoice>
        legend={messages.whereWasItMeasured}
        value={place}
        onChange={choose}
        options={placesBeside}
      />
    ) : (
      <Choices
        legend={messages.whereWouldItTouch}
        value={place}
        onChange={choose}
        options={options}
      />
    );
  const said = options.find(({ value }) => value === place)?.name;
  const closing = place === "wheel" && (
    <Disclosure
      summary={messages.closesByPer({
        unit: preferences.length,
        perWheel:
          limit.perWheel === undefined ? "1" : plainDecimal(Number(limit.perWheel.toPrecision(3))),
      })}
    >
      <p class="small">{messages.straightOverWheelIt}</p>
      <NumberEntry
        stored={stored}
        change={change}
        preferences={preferences}
        id={`${step.id}.perWheel`}
        label={messages.closingPerWheelTravel}
        hint={messages.emptyMeans1}
        unitWords={messages.lengthPerLength({ unit: preferences.length })}
      />
    </Disclosure>
  );
  // Straight over the tire is where it usually is: then that stands with its place.
  const straight = limit.kind === "tyre" && (limit.perWheel === undefined || limit.perWheel === 1);
  return (
    <div class="stack">
      <Decided known={said !== undefined} summary={messages.place({ said: said ?? "" })}>
        {question}
        {straight && closing}
      </Decided>
      {!straight && closing}
      {place === "stop" && (
        <Notice tone="info">
          <p>{messages.typeHowFarGap}</p>
        </Notice>
      )}
    </div>
  );
}

/** How far out on the arm a clearance sits that is at none of its named places. */
export function LimitDistance(props: StepProps) {
  const place = limitOf(props.step.id);
  if (place === null) return null;
  const { side, index } = place;
  if (limitPlaceOf(props.stored, side, index) !== "distance") return null;
  return <DistanceOnArm {...props} side={side} index={index} />;
}

function DistanceOnArm({
  stored,
  change,
  preferences,
  side,
  index,
}: StepProps & { readonly side: Side; readonly index: number }) {
  const layout = wordedLayout(stored.record);
  const id = `${side}.limits.${index}.distance` as const;
  const { distance } = limitIn(stored.record, id) ?? {};
  const unit = shownUnit(stored, id, preferences.length);
  const known = distance && quantityText({ kind: "length", value: mean(distance.values) }, unit);
  const [practised] = useState(isPractised);
  return (
    <Decided
      known={known !== undefined}
      summary={messages.distanceFromPivotLine({ known: known ?? "" })}
    >
      <ReadingDrawing
        layoutKind={layout.kind}
        armRole={layout.armRole}
        reading="limitDistance"
        values={drawingValues(stored.record, side, index)}
        side={side}
        axle={stored.record.axle}
        unit={unit}
        text={shownText(stored, id)}
      />
      <ReadingEntry
        id={id}
        stored={stored}
        change={change}
        preferences={preferences}
        brief={practised}
      />
    </Decided>
  );
}
