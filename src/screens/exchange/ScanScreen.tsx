import type { RefObject } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import type { Fault } from "../../physics/outcome.ts";
import { inModelUnits } from "../../physics/sentence.ts";
import { pictureFault } from "../../records/photo/pictureFault.ts";
import { missingWords } from "../../sharing/codeCollection.ts";
import { type CodeReader, createCodeReader } from "../../sharing/codeReader.ts";
import type { Frame } from "../../sharing/frame.ts";
import { Button } from "../parts/Button.tsx";
import { Icon } from "../parts/Icon.tsx";
import { Notice } from "../parts/Notice.tsx";
import { Screen, useHeadingFocus } from "../parts/Screen.tsx";
import { FaultNotice } from "./FaultNotice.tsx";
import { type CameraState, useCamera } from "./useCamera.ts";
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

/** Between two looks at the camera: often enough to feel prompt, seldom enough to stay cool. */
const pauseMs = 150;

const noCode: Fault = {
  code: "noCodeInPicture",
  sentence: [
    "No code was found in the picture. Take it again with the code sharp, without glare and filling most of it.",
  ],
};

const noPicture: Fault = {
  code: "pictureUnreadable",
  sentence: ["This file is not a picture that can be read here. Choose a photo of the code."],
};

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
  const { camera, tryAgain } = useCamera(video, true);
  const reader = useReader(startReader);
  const [pictureFault, setPictureFault] = useState<Fault | null>(null);

  useEffect(() => {
    if (reader === null || camera.state !== "on") return;
    let left = false;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const look = async () => {
      const texts = video.current ? await reader.readCamera(video.current) : [];
      if (left) return;
      for (const text of texts) take(text);
      timer = setTimeout(look, pauseMs);
    };
    look();
    return () => {
      left = true;
      clearTimeout(timer);
    };
  }, [reader, camera.state, take]);

  const readPictures = async (list: FileList | null) => {
    const pictures = [...(list ?? [])];
    if (picker.current) picker.current.value = "";
    setPictureFault(null);
    for (const picture of pictures) {
      const found = await textsIn(picture, reader);
      if (found === null) setPictureFault(noPicture);
      else if (found.length === 0) setPictureFault(noCode);
      else for (const text of found) take(text);
    }
  };

  return (
    <Screen
      top={<span class="screen-name brand">Stopfit</span>}
      actions={
        <>
          <Button onClick={onLeave}>Leave</Button>
          <Button look="main" onClick={() => picker.current?.click()} disabled={reader === null}>
            Use a picture of the code
          </Button>
        </>
      }
    >
      <h1 ref={heading} tabIndex={-1}>
        Scan a code
      </h1>
      <input
        ref={picker}
        type="file"
        accept="image/*"
        multiple
        class="unseen"
        tabIndex={-1}
        aria-label="Pictures of codes"
        onChange={(event) => readPictures(event.currentTarget.files)}
      />
      <CameraView video={video} camera={camera} onTryAgain={tryAgain} />
      <Progress codes={codes} />
      {pictureFault && <FaultNotice fault={pictureFault} />}
      {camera.state === "on" && codes.collection === null && (
        <p>Hold the camera so that the code fills the frame. It is read by itself.</p>
      )}
      <p class="small soft">What the camera sees stays on this device.</p>
    </Screen>
  );
}

function useReader(startReader: () => Promise<CodeReader>): CodeReader | null {
  const [reader, setReader] = useState<CodeReader | null>(null);
  useEffect(() => {
    let left = false;
    let started: CodeReader | null = null;
    startReader().then((created) => {
      if (left) created.close();
      else {
        started = created;
        setReader(created);
      }
    });
    return () => {
      left = true;
      started?.close();
    };
  }, [startReader]);
  return reader;
}

/** Texts of the codes in a picture; null where it is none. */
async function textsIn(file: File, reader: CodeReader | null): Promise<readonly string[] | null> {
  try {
    if ((await pictureFault(file)) !== null) return null;
    const picture = await createImageBitmap(file);
    const texts = (await reader?.readPicture(picture)) ?? [];
    picture.close();
    return texts;
  } catch {
    return null;
  }
}

function CameraView({
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

function Progress({ codes }: { codes: ScannedCodes }) {
  const { collection, fault, other, startOver } = codes;
  const numbers = Array.from({ length: collection?.parts ?? 0 }, (_, part) => part + 1);
  return (
    <>
      {collection && collection.parts > 1 && (
        <div class="stack-close">
          <p role="status">
            <strong>
              {collection.bodies.size} of {collection.parts} codes read
            </strong>
            ; {missingWords(collection)}.
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
              <Button onClick={() => startOver(other)}>Start over with this one</Button>
            </div>
          )}
        </Notice>
      )}
    </>
  );
}
