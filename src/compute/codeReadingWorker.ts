import { type Pixels, readFrameOfCamera, readStillPicture } from "../sharing/codeReading.ts";

export interface ReadingRequest {
  readonly ticket: number;
  readonly pixels: Pixels;
  readonly still: boolean;
}

export interface ReadingReply {
  readonly ticket: number;
  readonly texts: readonly string[];
}

self.onmessage = async ({ data }: MessageEvent<ReadingRequest>) => {
  const { ticket, pixels, still } = data;
  let texts: string[] = [];
  try {
    texts = still ? await readStillPicture(pixels) : readFrameOfCamera(pixels);
  } catch {
    // A picture that the reader cannot cope with holds no code that can be read.
  }
  const reply: ReadingReply = { ticket, texts };
  self.postMessage(reply);
};
