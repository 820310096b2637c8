import { useCallback, useEffect, useRef, useState } from "preact/hooks";
import { type AngleKind, angleOf, postureOf } from "../../../sensors/phoneAngle.ts";
import { type TiltReading, TiltSamples, type TiltState } from "../../../sensors/tiltSamples.ts";
import { askForTilt, listenToTilt, mustAskForTilt } from "../../../sensors/tiltSensor.ts";
import * as messages from "../../../words/compiled/screens/check/tilt.ts";
import { faultSentence } from "./tiltTask.ts";

type SensorState = "mustAsk" | "refused" | "waiting" | "none" | "live";

/** A sensor that has said nothing by then is taken not to be there. */
const patienceMs = 2500;
/** How long a tap waits for the phone to be held still. */
const holdMs = 8000;
const turnMs = 60_000;
/** After a turn it must stay still for longer: a pause on the way round is not the end of it. */
const restMs = 1200;
const lookEveryMs = 100;

interface Hold {
  readonly since: number;
  readonly afterTurn: boolean;
  readonly taken: (reading: TiltReading) => void;
  moved: boolean;
  stillSince: number | null;
}

export interface Tilt {
  readonly sensor: SensorState;
  readonly allow: () => void;
  readonly live: TiltState;
  /** Takes a reading once the phone has been still for a second after this tap. */
  readonly take: (taken: (reading: TiltReading) => void) => void;
  /** Takes a reading once the phone has been moved and then lies still again. */
  readonly takeAfterTurn: (taken: (reading: TiltReading) => void) => void;
  readonly leaveOff: () => void;
  readonly holding: boolean;
  /** Why the last tap took nothing. */
  readonly refusal: string | null;
}

function buzz(): void {
  if (typeof navigator.vibrate === "function") navigator.vibrate(80);
}

/**
 * The tilt sensor while the screen is open, for one kind of angle. It is listened to before it is asked
 * for as well: many a browser that has the question gives the sensor without it.
 */
export function useTilt(kind: AngleKind): Tilt {
  const [sensor, setSensor] = useState<SensorState>(mustAskForTilt() ? "mustAsk" : "waiting");
  const [live, setLive] = useState<TiltState>({ state: "silent" });
  const [holding, setHolding] = useState(false);
  const [refusal, setRefusal] = useState<string | null>(null);
  const hold = useRef<Hold | null>(null);
  const listening = sensor !== "refused";
  const asked = sensor !== "mustAsk";

  useEffect(() => {
    if (!listening) return;
    const samples = new TiltSamples();
    const stop = listenToTilt(samples);
    const began = performance.now();
    const end = (why: string | null) => {
      hold.current = null;
      setHolding(false);
      setRefusal(why);
    };
    const look = () => {
      const now = performance.now();
      const angle = angleOf(kind);
      if (samples.heard) setSensor("live");
      else if (asked && now - began > patienceMs) setSensor("none");
      setLive(samples.state(now, angle));
      const held = hold.current;
      if (held === null) return;
      const state = samples.state(now, angle, held.since);
      if (state.state === "moving" && now - held.since > 200) {
        const before = samples.state(now, angle);
        if (before.state === "moving") held.moved = true;
      }
      if (state.state !== "still") held.stillSince = null;
      if (state.state === "still" && (held.moved || !held.afterTurn)) {
        held.stillSince ??= now;
        if (held.afterTurn && now - held.stillSince < restMs) return;
        const posture = postureOf(kind, state.reading.up);
        if (!posture.ok) {
          if (!held.afterTurn)
            end(messages.nothingWasTaken({ faultSentence: faultSentence(kind, posture.fault) }));
          return;
        }
        buzz();
        end(null);
        held.taken(state.reading);
        return;
      }
      if (now - held.since > (held.afterTurn ? turnMs : holdMs)) {
        end(
          state.state === "silent" ? messages.sensorHasStoppedNothing : messages.phoneWentOnMoving,
        );
      }
    };
    const timer = setInterval(look, lookEveryMs);
    return () => {
      clearInterval(timer);
      stop();
      hold.current = null;
      setHolding(false);
    };
  }, [listening, asked, kind]);

  const begin = useCallback((taken: (reading: TiltReading) => void, afterTurn: boolean) => {
    hold.current = { since: performance.now(), afterTurn, taken, moved: false, stillSince: null };
    setRefusal(null);
    setHolding(true);
  }, []);

  return {
    sensor,
    live,
    holding,
    refusal,
    allow: useCallback(() => {
      askForTilt().then((granted) => setSensor(granted ? "waiting" : "refused"));
    }, []),
    take: useCallback((taken) => begin(taken, false), [begin]),
    takeAfterTurn: useCallback((taken) => begin(taken, true), [begin]),
    leaveOff: useCallback(() => {
      hold.current = null;
      setHolding(false);
      setRefusal(null);
    }, []),
  };
}
