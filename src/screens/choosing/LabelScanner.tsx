import { useCallback, useRef } from "preact/hooks";
import type { CodeReader } from "../../compute/codeReader.ts";
import * as messages from "../../words/compiled/screens/choosing.ts";
import { CameraView } from "../camera/CameraView.tsx";
import { useScanner } from "../camera/useScanner.ts";
import { Button } from "../parts/Button.tsx";
import { FaultNotice } from "../parts/FaultNotice.tsx";

export interface LabelScannerProps {
  /** One scanned text; the same one is not handed over twice in a row. */
  onText(text: string): void;
  onLeave(): void;
  readonly startReader?: () => Promise<CodeReader>;
}

/** The camera on the label of a part's bag, or a picture of it. */
export function LabelScanner({ onText, onLeave, startReader }: LabelScannerProps) {
  const video = useRef<HTMLVideoElement>(null);
  const picker = useRef<HTMLInputElement>(null);
  const last = useRef("");
  const take = useCallback(
    (text: string) => {
      if (text === last.current) return;
      last.current = text;
      onText(text);
    },
    [onText],
  );
  const { camera, ready, fault, tryAgain, readPictures } = useScanner(video, take, startReader);
  return (
    <div class="stack-close">
      <input
        ref={picker}
        type="file"
        accept="image/*"
        class="unseen"
        tabIndex={-1}
        aria-label={messages.pictureOfLabel}
        onChange={({ currentTarget }) => {
          const pictures = [...(currentTarget.files ?? [])];
          currentTarget.value = "";
          last.current = "";
          readPictures(pictures);
        }}
      />
      <CameraView video={video} camera={camera} onTryAgain={tryAgain} />
      {fault && <FaultNotice fault={fault} />}
      <p class="small soft">{messages.holdLabelSoThat}</p>
      <div class="row">
        <Button onClick={onLeave}>{messages.closeCamera}</Button>
        <Button disabled={!ready} onClick={() => picker.current?.click()}>
          {messages.usePictureOfLabel}
        </Button>
      </div>
    </div>
  );
}
