import type { RefObject } from "preact";
import { useCallback, useEffect, useState } from "preact/hooks";
import type { Fault } from "../../physics/outcome.ts";
import { type Camera, openCamera } from "../../sharing/camera.ts";

export type CameraState =
  | { readonly state: "starting" }
  | { readonly state: "on" }
  /** The page is hidden: the camera is off until it shows again. */
  | { readonly state: "resting" }
  | { readonly state: "failed"; readonly fault: Fault };

/** The camera in `video` while the page shows; off as soon as it hides, and when it is left. */
export function useCamera(
  video: RefObject<HTMLVideoElement | null>,
  wanted: boolean,
): { readonly camera: CameraState; readonly tryAgain: () => void } {
  const [camera, setCamera] = useState<CameraState>({ state: "starting" });
  const [attempt, setAttempt] = useState(0);
  const tryAgain = useCallback(() => setAttempt((count) => count + 1), []);

  useEffect(() => {
    const element = video.current;
    if (!wanted || !element) return;
    let turn = attempt;
    let current: Camera | null = null;

    const stop = () => {
      turn += 1;
      current?.stop();
      current = null;
    };
    const rest = () => {
      stop();
      setCamera({ state: "resting" });
    };
    const start = async () => {
      stop();
      const mine = turn;
      setCamera({ state: "starting" });
      const outcome = await openCamera(element, () => {
        if (mine === turn) rest();
      });
      if (mine !== turn) {
        if (outcome.ok) outcome.value.stop();
        return;
      }
      if (outcome.ok) {
        current = outcome.value;
        setCamera({ state: "on" });
      } else {
        setCamera({ state: "failed", fault: outcome.fault });
      }
    };
    const follow = () => {
      if (document.visibilityState === "hidden") rest();
      else if (current === null) start();
    };

    follow();
    document.addEventListener("visibilitychange", follow);
    window.addEventListener("pagehide", rest);
    return () => {
      document.removeEventListener("visibilitychange", follow);
      window.removeEventListener("pagehide", rest);
      stop();
    };
  }, [video, wanted, attempt]);

  return { camera, tryAgain };
}
