import type { RefObject } from "preact";
import * as messages from "../../words/compiled/screens/camera.ts";
import { Button } from "../parts/Button.tsx";
import { FaultNotice } from "../parts/FaultNotice.tsx";
import type { CameraState } from "./useCamera.ts";
import "./camera.css";

export function CameraView({
  video,
  camera,
  onTryAgain,
}: {
  video: RefObject<HTMLVideoElement | null>;
  camera: CameraState;
  onTryAgain: () => void;
}) {
  return (
    <>
      <div class="camera" hidden={camera.state === "failed"}>
        <video ref={video} muted playsInline aria-label={messages.whatCameraSees} />
        {camera.state === "on" && <div class="camera-frame" />}
        {camera.state === "starting" && <p class="camera-wait">{messages.startingCamera}</p>}
        {camera.state === "resting" && (
          <div class="camera-wait">
            <div class="stack-close">
              <p>{messages.cameraIsOffWhile}</p>
              <Button onClick={onTryAgain}>{messages.switchItOn}</Button>
            </div>
          </div>
        )}
      </div>
      {camera.state === "failed" && (
        <>
          <FaultNotice fault={camera.fault} />
          <div class="row">
            <Button onClick={onTryAgain}>{messages.tryCameraAgain}</Button>
          </div>
        </>
      )}
    </>
  );
}
