import { useEffect, useId, useRef, useState } from "preact/hooks";
import type { ReadingId } from "../../../physics/readings/index.ts";
import type { Entry } from "../../../records/entry/entry.ts";
import { postureOf, quarterTurns } from "../../../sensors/phoneAngle.ts";
import type { TiltReading } from "../../../sensors/tiltSamples.ts";
import { sensorLimits, tiltTolerance } from "../../../sensors/tiltTolerance.ts";
import { type TiltZero, tiltZeros } from "../../../sensors/tiltZero.ts";
import * as messages from "../../../words/compiled/screens/check/tilt.ts";
import { Button } from "../../parts/Button.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { HoldPicture } from "./HoldPicture.tsx";
import {
  degreesText,
  faultSentence,
  recordDegrees,
  signWords,
  type TiltTask,
  withTilt,
  zeroWords,
} from "./tiltTask.ts";
import { type Tilt, useTilt } from "./useTilt.ts";
import { ZeroPhone } from "./ZeroPhone.tsx";
import "./tilt.css";

export interface TiltDialogProps {
  readonly id: ReadingId;
  readonly name: string;
  readonly task: TiltTask;
  readonly entry: Entry;
  readonly onTaken: (entry: (before: Entry) => Entry) => void;
  readonly onLeave: () => void;
}

interface Taken {
  readonly degrees: number;
  readonly tolerance: number;
  readonly scatter: number;
}

/** The offset that holds for the phone as it lies, or null. */
function zeroFor(task: TiltTask, reading: Pick<TiltReading, "up">): TiltZero | null {
  const posture = postureOf(task.kind, reading.up);
  return posture.ok ? (tiltZeros()[posture.posture] ?? null) : null;
}

/** One angle by the phone's own tilt sensor. */
export default function TiltDialog({ id, name, task, entry, onTaken, onLeave }: TiltDialogProps) {
  const heading = useId();
  const dialog = useRef<HTMLDialogElement>(null);
  const tilt = useTilt(task.kind);
  const [zeroing, setZeroing] = useState(false);
  const [taken, setTaken] = useState<Taken | null>(null);
  useEffect(() => {
    const element = dialog.current;
    if (element && !element.open) element.showModal();
  }, []);

  const take = () =>
    tilt.take((reading) => {
      const zero = zeroFor(task, reading);
      const degrees = recordDegrees(task, reading.degrees - (zero?.offsetDegrees ?? 0));
      const tolerance = tiltTolerance(reading, zero);
      setTaken({ degrees, tolerance, scatter: reading.scatterDegrees });
      onTaken((before) => withTilt(id, before, degrees, tolerance));
    });
  const count = entry.texts.filter((text) => text.trim() !== "").length;

  return (
    <dialog
      ref={dialog}
      class="dialog tilt-dialog"
      aria-labelledby={heading}
      onCancel={(event) => {
        event.preventDefault();
        onLeave();
      }}
    >
      <div class="tilt-body">
        <h2 id={heading}>{zeroing ? messages.zeroPhone : name}</h2>
        {tilt.sensor !== "live" && <NoSensor tilt={tilt} />}
        {tilt.sensor === "live" && zeroing && (
          <ZeroPhone
            kind={task.kind}
            tilt={tilt}
            onLeave={() => {
              tilt.leaveOff();
              setZeroing(false);
            }}
          />
        )}
        {tilt.sensor === "live" && !zeroing && (
          <>
            <HoldPicture task={task} brief={taken !== null || tilt.refusal !== null} />
            <LiveAngle task={task} tilt={tilt} />
          </>
        )}
      </div>
      <div class="tilt-actions">
        {tilt.sensor === "live" && !zeroing && (
          <>
            <div aria-live="assertive" class="stack-close">
              {tilt.refusal && (
                <Notice tone="no">
                  <p>{tilt.refusal}</p>
                </Notice>
              )}
              {taken && !tilt.holding && !tilt.refusal && (
                <Notice tone="ok">
                  <p>
                    {messages.takenItScatteredBy({
                      degrees: degreesText(taken.degrees),
                      sign: signWords(task, taken.degrees),
                      tolerance: taken.tolerance.toFixed(2),
                      scatter: taken.scatter.toFixed(2),
                    })}
                    {count > 1 && messages.meanOfReadingsCounts({ count })}
                  </p>
                </Notice>
              )}
            </div>
            <ZeroLine task={task} tilt={tilt} onZero={() => setZeroing(true)} />
            <Button look="main" wide disabled={tilt.holding} onClick={take}>
              {tilt.holding ? messages.holdStill : taken ? messages.takeItAgain : messages.takeIt}
            </Button>
          </>
        )}
        {!zeroing && (
          <Button wide onClick={onLeave}>
            {taken ? messages.done : messages.typeItInstead}
          </Button>
        )}
      </div>
    </dialog>
  );
}

function NoSensor({ tilt }: { tilt: Tilt }) {
  if (tilt.sensor === "mustAsk") {
    return (
      <>
        <p>{messages.phoneCanMeasureThis}</p>
        <Button look="main" wide onClick={tilt.allow}>
          {messages.allowTiltSensor}
        </Button>
      </>
    );
  }
  if (tilt.sensor === "waiting") {
    return <p role="status">{messages.waitingForTiltSensor}</p>;
  }
  return (
    <Notice tone="care" live>
      <p>
        {tilt.sensor === "refused"
          ? messages.browserBlocksTiltSensor
          : window.isSecureContext
            ? messages.noTiltSensorAnswers
            : messages.browsersGiveTiltSensor}
      </p>
    </Notice>
  );
}

function LiveAngle({ task, tilt: { live } }: { task: TiltTask; tilt: Tilt }) {
  const up = live.state === "still" ? live.reading.up : live.state === "moving" ? live.up : null;
  const raw =
    live.state === "still" ? live.reading.degrees : live.state === "moving" ? live.degrees : null;
  const page = window.screen.orientation?.angle ?? 0;
  if (up === null || raw === null) {
    return (
      <div class="tilt-number">
        <p class="tilt-status">
          {live.state === "silent" ? messages.sensorHasStoppedMove : messages.movingTooHardTo}
        </p>
      </div>
    );
  }
  const posture = postureOf(task.kind, up);
  const degrees = recordDegrees(task, raw - (zeroFor(task, { up })?.offsetDegrees ?? 0));
  if (!posture.ok) {
    return (
      <div class="tilt-wrong">
        <Notice tone="care" live>
          <p>{faultSentence(task.kind, posture.fault)}</p>
        </Notice>
      </div>
    );
  }
  return (
    <div class={`tilt-number tilt-turn-${quarterTurns(up, page)}`}>
      <p class="tilt-degrees">{degreesText(degrees)}</p>
      <p class="tilt-status">{signWords(task, degrees)}</p>
      <p class={`tilt-motion tilt-${live.state}`}>
        {live.state === "still"
          ? messages.stillScatter({ scatterDegrees: live.reading.scatterDegrees.toFixed(2) })
          : messages.movingHoldItStill}
      </p>
    </div>
  );
}

function ZeroLine({ task, tilt, onZero }: { task: TiltTask; tilt: Tilt; onZero: () => void }) {
  const { live } = tilt;
  const up = live.state === "still" ? live.reading.up : live.state === "moving" ? live.up : null;
  const posture = up && postureOf(task.kind, up);
  const zeros = tiltZeros();
  const zero = posture?.ok ? (zeros[posture.posture] ?? null) : null;
  const other =
    task.kind === "line" &&
    posture?.ok &&
    !zero &&
    (posture.posture === "leftEdge" ? zeros.rightEdge : zeros.leftEdge);
  const known = zero && zeroWords(zero, new Date());
  return (
    <div class="tilt-zero">
      <p class="small">
        {known?.words ??
          (other
            ? messages.zeroedOnItsOther({ none: sensorLimits.none })
            : messages.notZeroed({ none: sensorLimits.none }))}
      </p>
      <Button look="quiet" onClick={onZero}>
        {zero ? messages.zeroAgain : messages.zeroPhone}
      </Button>
    </div>
  );
}
