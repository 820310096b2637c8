import { useRef } from "preact/hooks";
import { type CodeReader, createCodeReader } from "../../compute/codeReader.ts";
import { inModelUnits } from "../../saying/modelUnits.ts";
import { said } from "../../saying/texts.ts";
import { missingWords } from "../../sharing/codeCollection.ts";
import type { Frame } from "../../sharing/frame.ts";
import * as messages from "../../words/compiled/screens/exchange.ts";
import { CameraView } from "../camera/CameraView.tsx";
import { useScanner } from "../camera/useScanner.ts";
import { Button } from "../parts/Button.tsx";
import { FaultNotice } from "../parts/FaultNotice.tsx";
import { Icon } from "../parts/Icon.tsx";
import { Notice } from "../parts/Notice.tsx";
import { Screen, useHeadingFocus } from "../parts/Screen.tsx";
import { type ScannedCodes, useCodes } from "./useCodes.ts";
import "./exchange.css";

export interface ScanScreenProps {
  /** A code that was read before this screen: by the device's own camera program. */
  readonly begun?: Frame | null;
  /** The whole check, once its last code is read. */
  onWhole(frame: Frame): void;
  onLeave(): void;
  readonly startReader?: () => Promise<CodeReader>;
}

/** Codes of a check read by the camera, or from pictures of them. */
export default function ScanScreen({
  begun = null,
  onWhole,
  onLeave,
  startReader = createCodeReader,
}: ScanScreenProps) {
  const heading = useHeadingFocus("scan");
  const video = useRef<HTMLVideoElement>(null);
  const picker = useRef<HTMLInputElement>(null);
  const codes = useCodes(begun, onWhole);
  const { take } = codes;
  const { camera, tryAgain, ready, fault, readPictures } = useScanner(video, take, startReader);
  return (
    <Screen
      top={<span class="screen-name brand">{messages.stopfit}</span>}
      actions={
        <>
          <Button onClick={onLeave}>{messages.leave}</Button>
          <Button look="main" onClick={() => picker.current?.click()} disabled={!ready}>
            {messages.usePictureOfCode}
          </Button>
        </>
      }
    >
      <h1 ref={heading} tabIndex={-1}>
        {messages.scanCode}
      </h1>
      <input
        ref={picker}
        type="file"
        accept="image/*"
        multiple
        class="unseen"
        tabIndex={-1}
        aria-label={messages.picturesOfCodes}
        onChange={({ currentTarget }) => {
          const pictures = [...(currentTarget.files ?? [])];
          currentTarget.value = "";
          readPictures(pictures);
        }}
      />
      <CameraView video={video} camera={camera} onTryAgain={tryAgain} />
      <Progress codes={codes} />
      {fault && <FaultNotice fault={fault} />}
      {camera.state === "on" && codes.collection === null && <p>{messages.holdCameraSoThat}</p>}
      <p class="small soft">{messages.whatCameraSeesStays}</p>
    </Screen>
  );
}

function Progress({ codes }: { codes: ScannedCodes }) {
  const { collection, fault, other, startOver } = codes;
  const numbers = Array.from({ length: collection?.parts ?? 0 }, (_, part) => part + 1);
  return (
    <>
      {collection && collection.parts > 1 && (
        <div class="stack-close">
          <p role="status">
            <strong>
              {messages.ofCodesRead({ bodies: collection.bodies.size, parts: collection.parts })}
            </strong>
            ; {said(missingWords(collection))}.
          </p>
          <ul class="scanned-codes">
            {numbers.map((number) => {
              const scanned = collection.bodies.has(number - 1);
              return (
                <li key={number} class="scanned-code" data-scanned={scanned}>
                  {scanned && <Icon name="tick" size={18} />}
                  {number}
                  <span class="unseen">{scanned ? " read" : " missing"}</span>
                </li>
              );
            })}
          </ul>
        </div>
      )}
      {fault && (
        <Notice tone="care" live>
          <p>{inModelUnits(fault.sentence)}</p>
          {other && (
            <div class="row">
              <Button onClick={() => startOver(other)}>{messages.startOverWithThis}</Button>
            </div>
          )}
        </Notice>
      )}
    </>
  );
}
