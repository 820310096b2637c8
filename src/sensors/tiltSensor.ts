import { sampleEveryMs, type TiltSamples } from "./tiltSamples.ts";

type Ask = () => Promise<unknown>;

function askOf(event: unknown): Ask | null {
  if (typeof event !== "function") return null;
  const ask: unknown = Reflect.get(event, "requestPermission");
  return typeof ask === "function" ? () => Promise.resolve(ask.call(event)) : null;
}

function asks(): Ask[] {
  const events: unknown[] = [
    Reflect.get(globalThis, "DeviceOrientationEvent"),
    Reflect.get(globalThis, "DeviceMotionEvent"),
  ];
  return events.map(askOf).filter((ask) => ask !== null);
}

/** Some browsers give the sensor only after a question that a tap must bring up. */
export function mustAskForTilt(): boolean {
  return asks().length > 0;
}

/** To be called in the tap itself. True: the sensor may be used. */
export async function askForTilt(): Promise<boolean> {
  // All are asked before the first answer: after it the tap no longer counts.
  const answers = await Promise.allSettled(asks().map((ask) => ask()));
  return answers.some((answer) => answer.status === "fulfilled" && answer.value === "granted");
}

/** Feeds the samples from the browser's events, and looks at them at even times, until stopped. */
export function listenToTilt(samples: TiltSamples): () => void {
  const onOrientation = ({ beta, gamma }: DeviceOrientationEvent) =>
    samples.orientation(performance.now(), beta, gamma);
  const onMotion = ({ accelerationIncludingGravity }: DeviceMotionEvent) => {
    if (accelerationIncludingGravity === null) return;
    const { x, y, z } = accelerationIncludingGravity;
    samples.motion(performance.now(), x, y, z);
  };
  window.addEventListener("deviceorientation", onOrientation);
  window.addEventListener("devicemotion", onMotion);
  const timer = setInterval(() => samples.sample(performance.now()), sampleEveryMs);
  return () => {
    clearInterval(timer);
    window.removeEventListener("deviceorientation", onOrientation);
    window.removeEventListener("devicemotion", onMotion);
  };
}
