import { useState } from "preact/hooks";
import { type AngleKind, type Posture, postureOf } from "../../../sensors/phoneAngle.ts";
import type { TiltReading } from "../../../sensors/tiltSamples.ts";
import { leastTiltTolerance, sensorLimits } from "../../../sensors/tiltTolerance.ts";
import {
  keepTiltZero,
  type Turned,
  zeroByTurning,
  zeroOnLevel,
} from "../../../sensors/tiltZero.ts";
import * as messages from "../../../words/compiled/screens/check/tilt.ts";
import { Button } from "../../parts/Button.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { TurnPicture } from "./HoldPicture.tsx";
import { degreesText } from "./tiltTask.ts";
import type { Tilt } from "./useTilt.ts";

const refusals = {
  offsetTooLarge: messages.phoneWouldBeMore,
  surfaceTooSteep: messages.surfaceLeansMoreThan,
  otherEdge: messages.secondTimeItStood,
} as const;

/** The posture; a reading is only ever taken in one that will do. */
function postureIn(kind: AngleKind, { up }: TiltReading): Posture {
  const found = postureOf(kind, up);
  return found.ok ? found.posture : "upright";
}

/** Finds the sensor's offset: on a level surface, or on any flat one by turning the phone round. */
export function ZeroPhone({
  kind,
  tilt,
  onLeave,
}: {
  kind: AngleKind;
  tilt: Tilt;
  onLeave: () => void;
}) {
  const [first, setFirst] = useState<TiltReading | null>(null);
  const [done, setDone] = useState<Turned | { readonly ok: false; fault: "otherEdge" } | null>(
    null,
  );
  const finish = (turned: Turned) => {
    if (turned.ok) keepTiltZero(turned.zero);
    setDone(turned);
  };
  const level = () => {
    setDone(null);
    tilt.take((reading) => finish(zeroOnLevel(postureIn(kind, reading), reading, new Date())));
  };
  const turn = () => {
    setDone(null);
    tilt.take((reading) => {
      setFirst(reading);
      tilt.takeAfterTurn((second) => {
        setFirst(null);
        const posture = postureIn(kind, reading);
        if (postureIn(kind, second) !== posture) setDone({ ok: false, fault: "otherEdge" });
        else finish(zeroByTurning(posture, reading, second, new Date()));
      });
    });
  };
  const stand = kind === "line" ? messages.standPhoneOnIts : messages.standPhoneUprightOn;

  return (
    <>
      <TurnPicture kind={kind} />
      {first === null && (
        <>
          <p>{stand}</p>
          <p class="small">{messages.turningItAroundIs}</p>
        </>
      )}
      <div aria-live="assertive" class="stack-close">
        {first !== null && (
          <Notice tone="info">
            <p>
              <strong>{messages.firstTakenNowTurn}</strong>
              {messages.sameEdgeSameSpot}
            </p>
          </Notice>
        )}
        {tilt.refusal && (
          <Notice tone="no">
            <p>{tilt.refusal}</p>
          </Notice>
        )}
        {done && !done.ok && (
          <Notice tone="no">
            <p>{refusals[done.fault]}</p>
          </Notice>
        )}
        {done?.ok && (
          <Notice tone="ok">
            <p>
              {messages.zeroedSensorShowedToo({
                degrees: degreesText(Math.abs(done.zero.offsetDegrees)),
                isOffsetDegrees: done.zero.offsetDegrees < 0,
                way: Math.max(sensorLimits[done.zero.way], leastTiltTolerance),
              })}
              {done.zero.way === "turned" &&
                messages.surfaceLeansBy({ degrees: degreesText(Math.abs(done.surfaceDegrees)) })}
            </p>
          </Notice>
        )}
      </div>
      {!done?.ok && (
        <>
          <Button look="main" wide disabled={tilt.holding} onClick={turn}>
            {tilt.holding
              ? first
                ? messages.turnItAround
                : messages.holdStill
              : messages.zeroByTurningAround}
          </Button>
          <Button wide disabled={tilt.holding} onClick={level}>
            {messages.surfaceIsLevelZero}
          </Button>
        </>
      )}
      <Button wide look={done?.ok ? "main" : "plain"} onClick={onLeave}>
        {done?.ok ? messages.measureNow : "Cancel"}
      </Button>
    </>
  );
}
