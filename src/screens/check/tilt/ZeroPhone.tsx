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
import { Button } from "../../parts/Button.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { TurnPicture } from "./HoldPicture.tsx";
import { degreesText } from "./tiltTask.ts";
import type { Tilt } from "./useTilt.ts";

const refusals = {
  offsetTooLarge:
    "The phone would be more than 5° off. Either the surface is not level, or the phone was not turned around on the same edge and spot. Start over.",
  surfaceTooSteep: "The surface leans more than 15°. Find a flatter one and start over.",
  otherEdge: "The second time it stood on another edge. Start over, on the same edge both times.",
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
  const stand =
    kind === "line"
      ? "Stand the phone on its long edge, the one that will lie along the line, on a firm flat surface."
      : "Stand the phone upright on its lower edge on a firm flat surface. A case with a bulge: take it off.";

  return (
    <>
      <TurnPicture kind={kind} />
      {first === null && (
        <>
          <p>{stand}</p>
          <p class="small">
            Turning it around is better: the surface need not be level. Tap and let it stand still
            for the first reading. Then turn it around to face the other way on the same edge and
            spot. The second is taken by itself, with a buzz.
          </p>
        </>
      )}
      <div aria-live="assertive" class="stack-close">
        {first !== null && (
          <Notice tone="info">
            <p>
              <strong>First taken. Now turn it around</strong>, same edge, same spot, and let it
              stand still. The second is taken by itself.
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
              Zeroed: the sensor showed {degreesText(Math.abs(done.zero.offsetDegrees))} too{" "}
              {done.zero.offsetDegrees < 0 ? "little" : "much"}, which is corrected from now on. It
              is good to ± {Math.max(sensorLimits[done.zero.way], leastTiltTolerance)}°.
              {done.zero.way === "turned" &&
                ` The surface leans by ${degreesText(Math.abs(done.surfaceDegrees))}.`}
            </p>
          </Notice>
        )}
      </div>
      {!done?.ok && (
        <>
          <Button look="main" wide disabled={tilt.holding} onClick={turn}>
            {tilt.holding
              ? first
                ? "Turn it around …"
                : "Hold still …"
              : "Zero by turning around"}
          </Button>
          <Button wide disabled={tilt.holding} onClick={level}>
            The surface is level: zero here
          </Button>
        </>
      )}
      <Button wide look={done?.ok ? "main" : "plain"} onClick={onLeave}>
        {done?.ok ? "Measure now" : "Cancel"}
      </Button>
    </>
  );
}
