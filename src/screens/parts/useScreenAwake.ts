import { useEffect } from "preact/hooks";

/** Keeps the screen from going dark while something on it is read by a camera. */
export function useScreenAwake(wanted: boolean): void {
  useEffect(() => {
    const lockable = (navigator as { wakeLock?: WakeLock }).wakeLock;
    if (!wanted || lockable === undefined) return;
    let left = false;
    let lock: WakeLockSentinel | null = null;
    const ask = async () => {
      if (document.visibilityState !== "visible") return;
      try {
        const granted = await lockable.request("screen");
        if (left) await granted.release();
        else lock = granted;
      } catch {
        // Refused, for example to save the battery: the screen goes dark as it always does.
      }
    };
    ask();
    document.addEventListener("visibilitychange", ask);
    return () => {
      left = true;
      document.removeEventListener("visibilitychange", ask);
      lock?.release().catch(() => undefined);
    };
  }, [wanted]);
}
