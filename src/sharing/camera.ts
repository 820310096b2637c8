import { fail, type Outcome, succeed } from "../physics/outcome.ts";
import * as messages from "../words/compiled/sharing.ts";

export interface Camera {
  stop(): void;
}

const instead = messages.youCanUsePicture;

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
    return fail("cameraAbsent", [messages.thisBrowserGivesNo({ instead })]);
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
      return fail("cameraRefused", [messages.cameraIsNotAllowed({ instead })]);
    case "NotFoundError":
    case "OverconstrainedError":
      return fail("cameraNone", [messages.noCameraWasFound({ instead })]);
    case "NotReadableError":
      return fail("cameraBusy", [messages.anotherProgramIsUsing({ instead })]);
    default:
      return fail("cameraFailed", [messages.cameraDidNotStart({ instead })]);
  }
}
