import { fail, type Outcome, succeed } from "../physics/outcome.ts";

export interface Camera {
  stop(): void;
}

const instead = "You can use a picture of the code instead.";

/**
 * Shows the camera at the back, or the only one, in `video`. `onEnded` is called when it ends by
 * itself: unplugged, or taken by another program.
 */
export async function openCamera(
  video: HTMLVideoElement,
  onEnded: () => void,
): Promise<Outcome<Camera>> {
  const devices = (navigator as { mediaDevices?: MediaDevices }).mediaDevices;
  if (typeof devices?.getUserMedia !== "function") {
    return fail("cameraAbsent", [`This browser gives no page a camera here. ${instead}`]);
  }
  let stream: MediaStream;
  try {
    stream = await devices.getUserMedia({
      audio: false,
      video: {
        facingMode: { ideal: "environment" },
        width: { ideal: 1920 },
        height: { ideal: 1080 },
      },
    });
  } catch (error) {
    return cameraFault(error);
  }
  const stop = () => {
    for (const track of stream.getTracks()) track.stop();
    if (video.srcObject === stream) video.srcObject = null;
  };
  stream.getVideoTracks()[0]?.addEventListener("ended", onEnded);
  try {
    video.srcObject = stream;
    await video.play();
  } catch (error) {
    stop();
    return cameraFault(error);
  }
  return succeed({ stop });
}

function cameraFault(error: unknown): Outcome<never> {
  const name = error instanceof Error ? error.name : "";
  switch (name) {
    case "NotAllowedError":
    case "SecurityError":
      return fail("cameraRefused", [
        `The camera is not allowed for this page. Allow it in the browser's settings for this page, then try again. ${instead}`,
      ]);
    case "NotFoundError":
    case "OverconstrainedError":
      return fail("cameraNone", [`No camera was found on this device. ${instead}`]);
    case "NotReadableError":
      return fail("cameraBusy", [
        `Another program is using the camera. Close it, then try again. ${instead}`,
      ]);
    default:
      return fail("cameraFailed", [`The camera did not start. Try again. ${instead}`]);
  }
}
