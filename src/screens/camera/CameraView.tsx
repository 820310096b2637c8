import type { RefObject } from "preact";
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
        <video ref={video} muted playsInline aria-label="What the camera sees" />
        {camera.state === "on" && <div class="camera-frame" />}
        {camera.state === "starting" && <p class="camera-wait">Starting the camera …</p>}
        {camera.state === "resting" && (
          <div class="camera-wait">
            <div class="stack-close">
              <p>The camera is off while this page is not looked at.</p>
              <Button onClick={onTryAgain}>Switch it on</Button>
            </div>
          </div>
        )}
      </div>
      {camera.state === "failed" && (
        <>
          <FaultNotice fault={camera.fault} />
          <div class="row">
            <Button onClick={onTryAgain}>Try the camera again</Button>
          </div>
        </>
      )}
    </>
  );
}
