import { useEffect, useId, useLayoutEffect, useMemo, useState } from "preact/hooks";
import type { Assessor } from "../../compute/assessor.ts";
import type { DesignEvent, Fitment, Side } from "../../physics/fitment.ts";
import type { ImpactRun, ImpactTrace } from "../../physics/impact/index.ts";
import { rulesOf } from "../../physics/road/index.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import * as messages from "../../words/compiled/screens/travelView.ts";
import { eventWords } from "../assessment/eventWords.ts";
import { Button } from "../parts/Button.tsx";
import { forceText, lengthText } from "./travelWords.ts";
import { momentAt, type PlayedMoment, usePlayed } from "./usePlayed.ts";

const slowly = 8;

/** The computed events of the use, played or moved through by hand. */
export function PlayEvents({
  assessor,
  fitment,
  side,
  missing,
  shown,
  onMoment,
  unit,
}: {
  assessor: Assessor;
  fitment: Fitment;
  side: Side;
  /** Ride data that an event needs are not known. */
  missing: boolean;
  /** Whether the picture shows the event, and not the wheel moved by hand. */
  shown: boolean;
  /** `moving`: a later moment follows with the next frame. */
  onMoment: (moment: PlayedMoment, moving: boolean) => void;
  unit: LengthUnit;
}) {
  const events = useMemo(() => rulesOf(fitment.use, fitment.rules).events, [fitment]);
  const [slow, setSlow] = useState(true);
  const [run, setRun] = useState<{ event: DesignEvent; run: ImpactRun } | null>(null);
  const [said, setSaid] = useState<string | null>(null);
  const played = usePlayed(slow ? slowly : 1, (trace, time, moving) =>
    onMoment(momentAt(trace, time), moving),
  );
  const trace = run?.run.trace ?? null;
  const id = useId();

  useLayoutEffect(() => {
    if (!shown) played.pause();
  }, [shown]);

  useEffect(() => {
    setRun(null);
  }, [fitment, side]);

  const start = async (event: DesignEvent) => {
    setSaid(null);
    const outcome = run?.event === event ? null : await assessor.run(fitment, side, event);
    if (outcome?.ok === false) {
      setSaid(sentenceText(outcome.fault.sentence, unit));
      return;
    }
    const next = outcome?.value ?? run?.run;
    const { trace: found } = next ?? {};
    if (!next || !found) return;
    setRun({ event, run: next });
    // Its slider is painted first: the first played frame is then no longer than any other.
    requestAnimationFrame(() => played.play(found));
  };

  // Not looked through again for each frame that is played.
  const ways = useMemo(
    () => (
      <div class="row">
        {events.map((event) => (
          <Button
            key={eventWords(event, unit)}
            label={`${playName(event, events)}: ${eventWords(event, unit)}`}
            onClick={() => start(event)}
          >
            {playName(event, events)}
          </Button>
        ))}
        <Button
          pressed={slow}
          label={messages.slowTimesSlower({ slowly })}
          onClick={() => setSlow(!slow)}
        >
          {messages.slow}
        </Button>
      </div>
    ),
    [events, unit, slow, run, assessor, fitment, side],
  );

  if (missing || events.length === 0) {
    return <p class="travel-play small soft">{messages.enterRideDataTo}</p>;
  }

  return (
    <div class="travel-play">
      {ways}
      {said && <p role="status">{said}</p>}
      <div class="travel-time">
        {run && trace ? (
          <>
            <label for={id}>
              {eventWords(run.event, unit)}:{" "}
              <strong>{messages.s({ timeS: played.timeS.toFixed(2) })}</strong>
            </label>
            <input
              id={id}
              type="range"
              min={0}
              max={endOf(trace)}
              step="any"
              value={played.timeS}
              aria-valuetext={messages.seconds({ timeS: played.timeS.toFixed(2) })}
              onInput={(event) => {
                played.goTo(trace, Number(event.currentTarget.value));
              }}
            />
            {!played.running && (
              <p class="small" role="status">
                {messages.hardestWheelUpStop({
                  peakWheelTravelMm: lengthText(run.run.result.peakWheelTravelMm, unit),
                  peakCompressionMm: lengthText(run.run.result.peakCompressionMm, unit),
                  peakStopForceN: forceText(run.run.result.peakStopForceN, unit),
                })}
              </p>
            )}
          </>
        ) : (
          <p class="small soft">{messages.playsWhatWasComputed}</p>
        )}
      </div>
    </div>
  );
}

function endOf({ timeS }: ImpactTrace): number {
  return timeS.at(-1) ?? 0;
}

/** "Play landing", "Play bump"; where a use has two of a kind they are counted. */
function playName(event: DesignEvent, events: readonly DesignEvent[]): string {
  const isLanding = ({ kind }: DesignEvent) => kind === "landing";
  const alike = events.filter((other) => isLanding(other) === isLanding(event));
  const name = isLanding(event) ? messages.playLanding : messages.playBump;
  return alike.length > 1 ? `${name} ${alike.indexOf(event) + 1}` : name;
}
