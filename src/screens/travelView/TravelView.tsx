import { useCallback, useMemo, useRef, useState } from "preact/hooks";
import type { Assessor } from "../../compute/assessor.ts";
import type { Assessment, CornerAssessment, Fitment, Side } from "../../physics/fitment.ts";
import type { Sentence } from "../../physics/sentence.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import * as messages from "../../words/compiled/screens/travelView.ts";
import { sideWords } from "../assessment/stateWords.ts";
import { DataTable } from "../charts/DataTable.tsx";
import { Segmented } from "../parts/Choices.tsx";
import { Unfolding } from "../parts/Unfolding.tsx";
import { cornerOf, outboard } from "./cornerOf.ts";
import type { DrawnCorner } from "./drawnCorner.ts";
import { PlayEvents } from "./PlayEvents.tsx";
import { pushedUp, TravelPictures } from "./TravelPictures.tsx";
import { TravelSlider } from "./TravelSlider.tsx";
import { type TravelSpan, travelSpan } from "./travelMarks.ts";
import {
  forceText,
  gapInTable,
  gapWords,
  lengthText,
  ratioText,
  stopForceText,
  travelSentence,
} from "./travelWords.ts";
import type { PlayedMoment } from "./usePlayed.ts";
import "./travelView.css";

export interface PrescribedFitment {
  readonly name: Sentence;
  readonly fitment: Fitment;
  readonly assessment: Assessment;
}

/** Numbers that change more often are not read: a played event says them so far apart, ms. */
const readableMs = 100;

/** The answer's first picture: a corner to scale, moved by hand through its travel. */
export function TravelView({
  assessor,
  fitment,
  assessment,
  axle,
  prescribed,
  unit,
}: {
  assessor: Assessor;
  fitment: Fitment;
  assessment: Assessment;
  axle: "front" | "rear";
  /** What is to be done, tried on this vehicle; null where nothing changes, or nothing is found yet. */
  prescribed: PrescribedFitment | null;
  unit: LengthUnit;
}) {
  const sides = assessment.corners.map(({ side }) => side);
  const [picked, setPicked] = useState<Side>(sides[0] ?? "left");
  const side = sides.includes(picked) ? picked : (sides[0] ?? "left");
  const assessed = assessment.corners.find((corner) => corner.side === side);
  const corner = useMemo(() => cornerOf(fitment, side), [fitment, side]);
  const changed = prescribed?.fitment ?? null;
  const ghost = useMemo(() => (changed ? cornerOf(changed, side) : null), [changed, side]);
  if (!assessed || corner === null) return null;
  return (
    <section class="travel" aria-labelledby="travel-heading">
      <div class="travel-head">
        <h2 id="travel-heading" tabIndex={-1}>
          {messages.travelToScale}
        </h2>
        {sides.length > 1 && (
          <Segmented
            legend={messages.sideDrawn}
            legendUnseen
            options={sides.map((one) => ({ value: one, name: sideWords[one] }))}
            value={side}
            onChange={setPicked}
          />
        )}
      </div>
      <SideTravel
        key={side}
        assessor={assessor}
        fitment={fitment}
        assessed={assessed}
        corner={corner}
        axle={axle}
        ghost={ghost}
        prescribed={prescribed}
        unit={unit}
      />
    </section>
  );
}

function SideTravel({
  assessor,
  fitment,
  assessed,
  corner,
  axle,
  ghost,
  prescribed,
  unit,
}: {
  assessor: Assessor;
  fitment: Fitment;
  assessed: CornerAssessment;
  corner: DrawnCorner;
  axle: "front" | "rear";
  ghost: DrawnCorner | null;
  prescribed: PrescribedFitment | null;
  unit: LengthUnit;
}) {
  const span = useMemo(() => travelSpan(assessed), [assessed]);
  const [travelMm, setTravel] = useState(0);
  const [played, setPlayed] = useState<PlayedMoment | null>(null);
  const [told, setTold] = useState<PlayedMoment | null>(null);
  const toldAt = useRef(0);
  const placed = played ?? pushedUp(travelMm);
  const showMoment = useCallback((moment: PlayedMoment, moving: boolean) => {
    const now = performance.now();
    setPlayed(moment);
    if (moving && now - toldAt.current < readableMs) return;
    toldAt.current = now;
    setTold(moment);
  }, []);
  const moveTo = useCallback((travel: number) => {
    setPlayed(null);
    setTold(null);
    setTravel(travel);
  }, []);
  const words = useMemo(
    () => travelSentence(assessed, corner.travel, span, unit),
    [assessed, corner, span, unit],
  );
  const readouts = useMemo(() => {
    const moment = corner.travel.at(told?.travelMm ?? travelMm);
    const gap = gapWords(moment, unit);
    return (
      <dl class="travel-readouts">
        <Readout name={messages.wheel} text={lengthText(moment.travelMm, unit)} />
        <Readout name={gap.name} text={gap.text} />
        <Readout
          name={messages.stopForce}
          text={
            told ? forceText(told.stopForceN, unit) : stopForceText(corner.travel, moment, unit)
          }
        />
        <Readout name={messages.leverRatio} text={ratioText(moment.leverRatio)} />
      </dl>
    );
  }, [corner, told, travelMm, unit]);
  const eventShown = played !== null;
  // What says the same at every moment is not looked through again for each frame.
  const still = useMemo(
    () => ({
      seenFrom: (
        <p class="small soft">
          {messages.fromBesideIt({
            side: sideWords[assessed.side],
            hasFromSide: Boolean(corner.fromSide),
            axle,
          })}
        </p>
      ),
      events: (
        <PlayEvents
          assessor={assessor}
          fitment={fitment}
          side={assessed.side}
          missing={assessed.missing.length > 0}
          shown={eventShown}
          onMoment={showMoment}
          unit={unit}
        />
      ),
      remarks: (
        <>
          {prescribed && ghost && (
            <Prescribed prescribed={prescribed} side={assessed.side} unit={unit} />
          )}
          {span.fullNotReached && <p class="small">{messages.travelEndsBeforeStop}</p>}
        </>
      ),
      numbers: (
        <div class="travel-numbers">
          <Unfolding summary={messages.showNumbers}>
            {() => (
              <>
                <p>{words}</p>
                <TravelTable corner={corner} span={span} unit={unit} />
              </>
            )}
          </Unfolding>
        </div>
      ),
    }),
    [assessor, fitment, assessed, corner, axle, ghost, prescribed, span, words, unit, eventShown],
  );
  return (
    <div class="travel-body">
      <div class="travel-drawn">
        <TravelPictures
          corner={corner}
          ghost={ghost}
          placed={placed}
          direction={outboard(assessed.side, axle)}
          words={words}
        />
        {still.seenFrom}
      </div>
      <div class="travel-controls">
        {readouts}
        <TravelSlider
          span={span}
          travelMm={placed.travelMm}
          saidMm={told?.travelMm ?? travelMm}
          unit={unit}
          onTravel={moveTo}
        />
      </div>
      {still.events}
      <div class="travel-remarks">{still.remarks}</div>
      {still.numbers}
    </div>
  );
}

function Readout({ name, text }: { readonly name: string; readonly text: string }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{text}</dd>
    </div>
  );
}

function Prescribed({
  prescribed: { name, assessment },
  side,
  unit,
}: {
  readonly prescribed: PrescribedFitment;
  readonly side: Side;
  readonly unit: LengthUnit;
}) {
  const assessed = assessment.corners.find((corner) => corner.side === side);
  if (!assessed) return null;
  return (
    <p class="small travel-prescribed">
      <svg width="28" height="16" viewBox="0 0 28 16" aria-hidden="true">
        <path class="ghost-line" d="M1 8H27" />
      </svg>
      <span>
        {messages.asPrescribedTouchesAt({
          name: sentenceText(name, unit),
          wheelTravelToContactMm: lengthText(assessed.wheelTravelToContactMm, unit),
          wheelTravelToFullStopMm: lengthText(assessed.wheelTravelToFullStopMm, unit),
        })}
      </span>
    </p>
  );
}

function TravelTable({
  corner,
  span,
  unit,
}: {
  readonly corner: DrawnCorner;
  readonly span: TravelSpan;
  readonly unit: LengthUnit;
}) {
  return (
    <DataTable
      caption={messages.namedPlacesOfTravel}
      columns={[
        { name: messages.place },
        { name: messages.wheel },
        { name: messages.gapOrPressed },
        { name: messages.forceOnStop },
        { name: messages.leverRatio },
      ]}
      rows={span.marks.map(({ words, travelMm }) => {
        const moment = corner.travel.at(travelMm);
        return [
          words,
          lengthText(travelMm, unit),
          gapInTable(moment, unit),
          stopForceText(corner.travel, moment, unit),
          ratioText(moment.leverRatio),
        ];
      })}
    />
  );
}
