import type { RefObject } from "preact";
import { useEffect, useState } from "preact/hooks";
import { type CodeReader, createCodeReader } from "../../compute/codeReader.ts";
import type { Fault } from "../../physics/outcome.ts";
import { pictureFault } from "../../records/photo/pictureFault.ts";
import * as messages from "../../words/compiled/screens/camera.ts";
import { type CameraState, useCamera } from "./useCamera.ts";

/** Between two looks at the camera: often enough to feel prompt, seldom enough to stay cool. */
const pauseMs = 150;

const noCode: Fault = {
  code: "noCodeInPicture",
  sentence: [messages.noCodeWasFound],
};

const noPicture: Fault = {
  code: "pictureUnreadable",
  sentence: [messages.thisFileIsNot],
};

export interface Scanner {
  readonly camera: CameraState;
  readonly ready: boolean;
  /** Why a picture gave no code; null where it did. */
  readonly fault: Fault | null;
  tryAgain(): void;
  readPictures(pictures: readonly File[]): Promise<void>;
}

/** Codes that the camera in `video` sees, or that stand in pictures: each text is handed to `take`. */
export function useScanner(
  video: RefObject<HTMLVideoElement | null>,
  take: (text: string) => void,
  startReader: () => Promise<CodeReader> = createCodeReader,
): Scanner {
  const { camera, tryAgain } = useCamera(video, true);
  const reader = useReader(startReader);
  const [fault, setFault] = useState<Fault | null>(null);

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

  const readPictures = async (pictures: readonly File[]) => {
    setFault(null);
    for (const picture of pictures) {
      const found = await textsIn(picture, reader);
      if (found === null) setFault(noPicture);
      else if (found.length === 0) setFault(noCode);
      else for (const text of found) take(text);
    }
  };

  return { camera, ready: reader !== null, fault, tryAgain, readPictures };
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
