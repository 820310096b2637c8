import type { Pixels } from "../sharing/codeReading.ts";
import type { ReadingReply, ReadingRequest } from "./codeReadingWorker.ts";
import { follow, type WorkerLike } from "./workerLike.ts";

/** Reads QR codes: with the browser's own detector where it has one, else with ours in a worker. */
export interface CodeReader {
  /** Texts of the codes in the camera's present frame; empty where none can be read. */
  readCamera(video: HTMLVideoElement): Promise<readonly string[]>;
  /** Texts of all codes in a still picture. */
  readPicture(picture: ImageBitmap): Promise<readonly string[]>;
  close(): void;
}

/** As much of the Shape Detection API's BarcodeDetector as is used here. */
interface Detector {
  detect(source: CanvasImageSource): Promise<readonly { readonly rawValue: string }[]>;
}

interface DetectorClass {
  new (options: { formats: readonly string[] }): Detector;
  getSupportedFormats(): Promise<readonly string[]>;
}

async function browserDetector(): Promise<Detector | null> {
  const detectorClass = (globalThis as { BarcodeDetector?: DetectorClass }).BarcodeDetector;
  if (detectorClass === undefined) return null;
  try {
    const formats = await detectorClass.getSupportedFormats();
    return formats.includes("qr_code") ? new detectorClass({ formats: ["qr_code"] }) : null;
  } catch {
    return null;
  }
}

export async function createCodeReader(): Promise<CodeReader> {
  const own = new OwnCodeReader();
  const detector = await browserDetector();
  return detector === null ? own : new DetectorCodeReader(detector, own);
}

class DetectorCodeReader implements CodeReader {
  private detector: Detector | null;
  private readonly own: OwnCodeReader;

  constructor(detector: Detector, own: OwnCodeReader) {
    this.detector = detector;
    this.own = own;
  }

  async readCamera(video: HTMLVideoElement): Promise<readonly string[]> {
    return (await this.detect(video)) ?? this.own.readCamera(video);
  }

  async readPicture(picture: ImageBitmap): Promise<readonly string[]> {
    const texts = await this.detect(picture);
    return texts === null || texts.length === 0 ? this.own.readPicture(picture) : texts;
  }

  close(): void {
    this.own.close();
  }

  /** Null where the detector failed; it is not asked again then. */
  private async detect(source: HTMLVideoElement | ImageBitmap): Promise<readonly string[] | null> {
    try {
      const codes = await this.detector?.detect(source);
      return codes?.map(({ rawValue }) => rawValue) ?? null;
    } catch {
      this.detector = null;
      return null;
    }
  }
}

/** What of a picture is looked at, and how large it is drawn for that. */
interface Look {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  readonly scale: number;
}

/** Longest side of a frame looked at as a whole, px. */
const wholeFrame = 1280;
/** Side to which the middle of a frame is enlarged, px: dense codes are read better so. */
const middleFrame = 1440;

/** The looks at a frame of a camera, taken in turn: all of it, and its middle enlarged. */
export function cameraLook(width: number, height: number, turn: number): Look {
  if (turn % 2 === 0) {
    const scale = Math.min(1, wholeFrame / Math.max(width, height));
    return { left: 0, top: 0, width, height, scale };
  }
  const side = Math.min(width, height);
  return {
    left: Math.floor((width - side) / 2),
    top: Math.floor((height - side) / 2),
    width: side,
    height: side,
    scale: Math.min(2, middleFrame / side),
  };
}

/** The looks at a still picture, until one finds a code. */
export function pictureLooks(width: number, height: number): Look[] {
  const longest = Math.max(width, height);
  const scales = [1600, 3200, 800].map((side) => Math.min(2, side / longest));
  return [...new Set(scales)].map((scale) => ({ left: 0, top: 0, width, height, scale }));
}

class OwnCodeReader implements CodeReader {
  private worker: WorkerLike<ReadingRequest, ReadingReply> | null = null;
  private readonly waiting = new Map<number, (texts: readonly string[]) => void>();
  private ticket = 0;
  private turn = 0;
  private canvas: HTMLCanvasElement | null = null;

  readCamera(video: HTMLVideoElement): Promise<readonly string[]> {
    const { videoWidth, videoHeight } = video;
    if (videoWidth === 0 || videoHeight === 0) return Promise.resolve([]);
    const pixels = this.draw(video, cameraLook(videoWidth, videoHeight, this.turn));
    this.turn += 1;
    return pixels === null ? Promise.resolve([]) : this.ask(pixels, false);
  }

  async readPicture(picture: ImageBitmap): Promise<readonly string[]> {
    const found = new Set<string>();
    for (const look of pictureLooks(picture.width, picture.height)) {
      const pixels = this.draw(picture, look);
      for (const text of pixels === null ? [] : await this.ask(pixels, true)) found.add(text);
      if (found.size > 0) break;
    }
    return [...found];
  }

  close(): void {
    this.worker?.terminate();
    this.worker = null;
    this.giveUp();
  }

  private draw(source: CanvasImageSource, look: Look): Pixels | null {
    this.canvas ??= document.createElement("canvas");
    const width = Math.max(1, Math.round(look.width * look.scale));
    const height = Math.max(1, Math.round(look.height * look.scale));
    this.canvas.width = width;
    this.canvas.height = height;
    const context = this.canvas.getContext("2d", { willReadFrequently: true });
    if (context === null) return null;
    context.drawImage(source, look.left, look.top, look.width, look.height, 0, 0, width, height);
    return context.getImageData(0, 0, width, height);
  }

  private ask({ width, height, data }: Pixels, still: boolean): Promise<readonly string[]> {
    return new Promise((resolve) => {
      this.worker ??= this.start();
      this.ticket += 1;
      this.waiting.set(this.ticket, resolve);
      const pixels = { width, height, data };
      const request: ReadingRequest = { ticket: this.ticket, pixels, still };
      this.worker.postMessage(request, [data.buffer]);
    });
  }

  private start(): WorkerLike<ReadingRequest, ReadingReply> {
    const worker: WorkerLike<ReadingRequest, ReadingReply> = new Worker(
      new URL("./codeReadingWorker.ts", import.meta.url),
      { type: "module" },
    );
    follow(
      worker,
      ({ ticket, texts }) => {
        this.waiting.get(ticket)?.(texts);
        this.waiting.delete(ticket);
      },
      () => {
        worker.terminate();
        this.worker = null;
        this.giveUp();
      },
    );
    return worker;
  }

  private giveUp(): void {
    for (const resolve of this.waiting.values()) resolve([]);
    this.waiting.clear();
  }
}
