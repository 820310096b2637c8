import { useLayoutEffect, useRef, useState } from "preact/hooks";
import type { ImpactTrace } from "../../physics/impact/index.ts";

/** One moment of a computed event. */
export interface PlayedMoment {
  readonly timeS: number;
  readonly travelMm: number;
  readonly bodyMm: number;
  readonly roadMm: number;
  readonly compressionMm: number;
  readonly stopForceN: number;
}

/** The computed point next before a time. */
export function momentAt(trace: ImpactTrace, timeS: number): PlayedMoment {
  const last = trace.timeS.length - 1;
  const end = trace.timeS[last] ?? 0;
  const index = Math.min(last, Math.max(0, Math.floor((timeS / Math.max(end, 1e-9)) * last)));
  const of = (series: Float64Array) => series[index] ?? 0;
  return {
    timeS: of(trace.timeS),
    travelMm: of(trace.wheelTravelMm),
    bodyMm: of(trace.bodyMm),
    roadMm: of(trace.roadMm),
    compressionMm: of(trace.compressionMm),
    stopForceN: of(trace.stopForceN),
  };
}

/** The time of the greatest wheel travel, s. */
export function hardestTime({ timeS, wheelTravelMm }: ImpactTrace): number {
  let hardest = 0;
  for (let i = 1; i < wheelTravelMm.length; i++) {
    if ((wheelTravelMm[i] ?? 0) > (wheelTravelMm[hardest] ?? 0)) hardest = i;
  }
  return timeS[hardest] ?? 0;
}

export interface Played {
  readonly timeS: number;
  readonly running: boolean;
  /** From the start; who wants less motion is shown the hardest moment instead. */
  play(trace: ImpactTrace): void;
  pause(): void;
  goTo(trace: ImpactTrace, timeS: number): void;
}

function wantsLessMotion(): boolean {
  return window.matchMedia?.("(prefers-reduced-motion: reduce)").matches ?? false;
}

/**
 * @param slowness 1 in real time, 8 eight times slower
 * @param onTime is told each time as it is reached, s, and whether the next frame shows a later one
 */
export function usePlayed(
  slowness: number,
  onTime: (trace: ImpactTrace, timeS: number, moving: boolean) => void,
): Played {
  const [timeS, setTimeS] = useState(0);
  const [running, setRunning] = useState<ImpactTrace | null>(null);
  const latest = useRef({ slowness, onTime });
  latest.current = { slowness, onTime };

  const reach = (trace: ImpactTrace, time: number, moving = false) => {
    setTimeS(time);
    latest.current.onTime(trace, time, moving);
  };

  // Before the next frame, so that none is drawn of an event that has been left.
  useLayoutEffect(() => {
    if (running === null) return;
    const end = running.timeS.at(-1) ?? 0;
    let at = 0;
    let before: number | null = null;
    let frame = requestAnimationFrame(function next(now) {
      if (before !== null) at += (now - before) / 1000 / latest.current.slowness;
      before = now;
      reach(running, Math.min(at, end), at < end);
      if (at >= end) setRunning(null);
      else frame = requestAnimationFrame(next);
    });
    return () => cancelAnimationFrame(frame);
  }, [running]);

  return {
    timeS,
    running: running !== null,
    play: (trace) => {
      if (wantsLessMotion()) {
        reach(trace, hardestTime(trace));
        return;
      }
      reach(trace, 0);
      setRunning(trace);
    },
    pause: () => setRunning(null),
    goTo: (trace, time) => {
      setRunning(null);
      reach(trace, time);
    },
  };
}
