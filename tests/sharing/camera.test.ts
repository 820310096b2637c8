import { afterEach, describe, expect, it, vi } from "vitest";
import type { Outcome } from "../../src/physics/outcome.ts";
import { inModelUnits } from "../../src/saying/modelUnits.ts";
import { openCamera } from "../../src/sharing/camera.ts";

afterEach(() => vi.unstubAllGlobals());

/** A track of a camera or a microphone. */
class Track extends EventTarget {
  stop = vi.fn();
}

function streamOf(pictures: readonly Track[], sounds: readonly Track[] = []) {
  return { getTracks: () => [...pictures, ...sounds], getVideoTracks: () => pictures };
}

function videoThat(play: () => Promise<void>) {
  const video = { srcObject: null as unknown, play: vi.fn(play) };
  return { video, element: video as unknown as HTMLVideoElement };
}

function cameraThat(getUserMedia: unknown) {
  const asked = vi.fn(getUserMedia as () => unknown);
  vi.stubGlobal("navigator", { mediaDevices: { getUserMedia: asked } });
  return asked;
}

const named = (name: string) => Object.assign(new Error("no"), { name });
const shows = () => Promise.resolve();
const nothing = () => undefined;

const told = (outcome: Outcome<unknown>) =>
  outcome.ok ? "" : `${outcome.fault.code}: ${inModelUnits(outcome.fault.sentence)}`;

describe("the camera", () => {
  it("is asked for at the back, sharp enough for the densest code, and without sound", async () => {
    const asked = cameraThat(() => Promise.resolve(streamOf([new Track()])));
    await openCamera(videoThat(shows).element, nothing);
    expect(asked.mock.calls).toEqual([
      [
        {
          audio: false,
          video: {
            facingMode: { ideal: "environment" },
            width: { ideal: 1920 },
            height: { ideal: 1080 },
          },
        },
      ],
    ]);
  });

  it("is shown in the video until it is stopped, all of it", async () => {
    const tracks = [new Track(), new Track()];
    const stream = streamOf(tracks.slice(0, 1), tracks.slice(1));
    cameraThat(() => Promise.resolve(stream));
    const { video, element } = videoThat(shows);
    const camera = await openCamera(element, nothing);
    expect(video.srcObject).toBe(stream);
    expect(video.play).toHaveBeenCalledTimes(1);
    expect(tracks.some(({ stop }) => stop.mock.calls.length > 0)).toBe(false);
    if (!camera.ok) throw new Error(told(camera));
    camera.value.stop();
    expect(tracks.map(({ stop }) => stop.mock.calls.length)).toEqual([1, 1]);
    expect(video.srcObject).toBeNull();
  });

  it("leaves a video alone that shows another camera by then", async () => {
    cameraThat(() => Promise.resolve(streamOf([new Track()])));
    const { video, element } = videoThat(shows);
    const camera = await openCamera(element, nothing);
    const other = streamOf([new Track()]);
    video.srcObject = other;
    if (camera.ok) camera.value.stop();
    expect(video.srcObject).toBe(other);
  });

  it("tells when it ends by itself, and not before", async () => {
    const track = new Track();
    cameraThat(() => Promise.resolve(streamOf([track])));
    const onEnded = vi.fn();
    await openCamera(videoThat(shows).element, onEnded);
    expect(onEnded).not.toHaveBeenCalled();
    track.dispatchEvent(new Event("ended"));
    expect(onEnded).toHaveBeenCalledTimes(1);
  });

  it("opens also where its stream has no picture yet", async () => {
    cameraThat(() => Promise.resolve(streamOf([])));
    expect(await openCamera(videoThat(shows).element, nothing)).toMatchObject({ ok: true });
  });
});

describe("a camera that does not open", () => {
  const absent =
    "cameraAbsent: This browser gives no page a camera here. You can use a picture of the code instead.";

  it.each([
    ["no devices", {}],
    ["devices without a camera", { mediaDevices: {} }],
  ])("is told where the browser has %s", async (_, navigator) => {
    vi.stubGlobal("navigator", navigator);
    const { video, element } = videoThat(shows);
    expect(told(await openCamera(element, nothing))).toBe(absent);
    expect(video.play).not.toHaveBeenCalled();
  });

  const refused =
    "cameraRefused: The camera is not allowed for this page. Allow it in the browser's settings for this page, then try again. You can use a picture of the code instead.";
  const none =
    "cameraNone: No camera was found on this device. You can use a picture of the code instead.";
  const failed =
    "cameraFailed: The camera did not start. Try again. You can use a picture of the code instead.";

  it.each([
    ["is not allowed", named("NotAllowedError"), refused],
    ["is kept from the page", named("SecurityError"), refused],
    ["is not there", named("NotFoundError"), none],
    ["is not the one asked for", named("OverconstrainedError"), none],
    [
      "is taken",
      named("NotReadableError"),
      "cameraBusy: Another program is using the camera. Close it, then try again. You can use a picture of the code instead.",
    ],
    ["fails otherwise", named("AbortError"), failed],
    ["fails without a name", named(""), failed],
    ["fails without an error", "broken", failed],
  ])("says what to do where it %s", async (_, error, words) => {
    cameraThat(() => Promise.reject(error));
    expect(told(await openCamera(videoThat(shows).element, nothing))).toBe(words);
  });

  it("is let go of where the video can't play it", async () => {
    const track = new Track();
    cameraThat(() => Promise.resolve(streamOf([track])));
    const { video, element } = videoThat(() => Promise.reject(named("NotAllowedError")));
    expect(told(await openCamera(element, nothing))).toBe(refused);
    expect(track.stop).toHaveBeenCalledTimes(1);
    expect(video.srcObject).toBeNull();
  });
});
