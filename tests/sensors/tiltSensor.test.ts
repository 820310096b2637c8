import { afterEach, describe, expect, it, vi } from "vitest";
import { longEdgeFall } from "../../src/sensors/phoneAngle.ts";
import { TiltSamples } from "../../src/sensors/tiltSamples.ts";
import { askForTilt, listenToTilt, mustAskForTilt } from "../../src/sensors/tiltSensor.ts";

afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

function browserThatAsks(answer: () => Promise<string>): void {
  vi.stubGlobal(
    "DeviceOrientationEvent",
    class extends Event {
      static requestPermission = answer;
    },
  );
  vi.stubGlobal("DeviceMotionEvent", class extends Event {});
}

describe("permission", () => {
  it("need not be asked for where the browser has no question", async () => {
    vi.stubGlobal("DeviceOrientationEvent", class extends Event {});
    vi.stubGlobal("DeviceMotionEvent", undefined);
    expect(mustAskForTilt()).toBe(false);
    expect(await askForTilt()).toBe(false);
  });

  it.each([
    ["granted", true],
    ["denied", false],
  ])("%s is passed on", async (answer, wanted) => {
    browserThatAsks(async () => answer);
    expect(mustAskForTilt()).toBe(true);
    expect(await askForTilt()).toBe(wanted);
  });

  it("counts as refused where the browser throws, as outside a tap", async () => {
    browserThatAsks(() => Promise.reject(new DOMException("no gesture", "NotAllowedError")));
    expect(await askForTilt()).toBe(false);
  });
});

describe("the browser's events", () => {
  const orientation = (beta: number | null, gamma: number | null) =>
    Object.assign(new Event("deviceorientation"), { alpha: 0, beta, gamma });
  const motion = (value: unknown) =>
    Object.assign(new Event("devicemotion"), { accelerationIncludingGravity: value });

  it("feed the samples until the listening is stopped", () => {
    vi.useFakeTimers({ toFake: ["setInterval", "clearInterval", "performance"] });
    const samples = new TiltSamples();
    const stop = listenToTilt(samples);
    window.dispatchEvent(orientation(-12, 88));
    window.dispatchEvent(motion(null));
    for (let tenth = 0; tenth < 11; tenth++) {
      window.dispatchEvent(motion({ x: -9.6, y: -2, z: 0 }));
      vi.advanceTimersByTime(100);
    }
    const state = samples.state(performance.now(), longEdgeFall);
    if (state.state !== "still") throw new Error(state.state);
    expect(state.reading.degrees).toBeCloseTo(12, 9);
    stop();
    window.dispatchEvent(orientation(-30, 88));
    vi.advanceTimersByTime(2000);
    expect(samples.state(performance.now(), longEdgeFall).state).toBe("silent");
  });
});
