import { afterEach, describe, expect, it, vi } from "vitest";
import { createCodeReader } from "../../src/compute/codeReader.ts";
import type { ReadingRequest } from "../../src/compute/codeReadingWorker.ts";

afterEach(() => vi.unstubAllGlobals());

class FakeWorker {
  readonly asked: { request: ReadingRequest; handedOver: readonly unknown[] }[] = [];
  readonly terminate = vi.fn();
  onmessage: (message: { data: unknown }) => void = () => undefined;
  onerror: (event: object) => void = () => undefined;
  readonly address: string;
  readonly options: unknown;

  constructor(address: URL | string, options: unknown) {
    this.address = String(address);
    this.options = options;
  }

  postMessage(request: ReadingRequest, handedOver: readonly unknown[]): void {
    this.asked.push({ request, handedOver });
  }

  /** Answers what it was asked, the first question being 0. */
  answer(question: number, texts: readonly string[]): void {
    this.onmessage({ data: { ticket: this.asked[question]?.request.ticket, texts } });
  }
}

/** A page whose workers and canvas are seen into. */
function page({ hasContext = true } = {}) {
  const workers: FakeWorker[] = [];
  const drawn: unknown[][] = [];
  const contexts: unknown[][] = [];
  const elements: string[] = [];
  const context = {
    drawImage: (...given: unknown[]) => drawn.push(given),
    getImageData: (left: number, top: number, width: number, height: number) => ({
      width,
      height,
      data: new Uint8ClampedArray(4).fill(left + top + 1),
    }),
  };
  const createElement = (tag: string) => {
    elements.push(tag);
    return {
      getContext: (...given: unknown[]) => {
        contexts.push(given);
        return hasContext ? context : null;
      },
    };
  };
  vi.stubGlobal("document", { createElement });
  vi.stubGlobal(
    "Worker",
    class extends FakeWorker {
      constructor(address: URL | string, options: unknown) {
        super(address, options);
        workers.push(this);
      }
    },
  );
  const worker = (place = 0) => {
    const one = workers[place];
    if (one === undefined) throw new Error("not started");
    return one;
  };
  return { workers, worker, drawn, contexts, elements };
}

const videoOf = (videoWidth: number, videoHeight: number) =>
  ({ videoWidth, videoHeight }) as HTMLVideoElement;
const video = videoOf(640, 480);
const pictureOf = (width: number, height: number) => ({ width, height }) as ImageBitmap;
/** What awaits a value that is there already has it by then. */
const soon = () => new Promise((done) => setTimeout(done, 0));

describe("the reader of codes that the app brings along", () => {
  it("has a worker of its own read each frame of the camera, whole and its middle in turn", async () => {
    const { workers, worker, drawn, contexts, elements } = page();
    const reader = await createCodeReader();
    const first = reader.readCamera(video);
    worker().answer(0, ["one"]);
    expect(await first).toEqual(["one"]);
    const second = reader.readCamera(video);
    worker().answer(1, []);
    expect(await second).toEqual([]);
    reader.readCamera(video);
    expect(drawn).toEqual([
      [video, 0, 0, 640, 480, 0, 0, 640, 480],
      [video, 80, 0, 480, 480, 0, 0, 960, 960],
      [video, 0, 0, 640, 480, 0, 0, 640, 480],
    ]);
    expect(workers).toHaveLength(1);
    expect(worker().address).toContain("/codeReadingWorker.ts");
    expect(worker().options).toMatchObject({ type: "module" });
    // Pixels are read back every time, which a canvas is told.
    expect(elements).toEqual(["canvas"]);
    expect(contexts[0]).toEqual(["2d", { willReadFrequently: true }]);
  });

  it("hands the pixels over, and says whether time may be taken", async () => {
    const { worker } = page();
    const reader = await createCodeReader();
    reader.readCamera(video);
    reader.readPicture(pictureOf(1600, 1200));
    const [frame, still] = worker().asked;
    const { data } = frame?.request.pixels ?? {};
    expect(frame?.request).toMatchObject({ pixels: { width: 640, height: 480 }, still: false });
    expect([...(data ?? [])]).toEqual([1, 1, 1, 1]);
    expect(frame?.handedOver).toEqual([data?.buffer]);
    expect(still?.request).toMatchObject({ pixels: { width: 1600, height: 1200 }, still: true });
    expect(frame?.request.ticket).not.toBe(still?.request.ticket);
  });

  it("gives each question its own answer, in whatever order they come", async () => {
    const { worker } = page();
    const reader = await createCodeReader();
    const both = [reader.readCamera(video), reader.readCamera(video)];
    worker().answer(1, ["second"]);
    worker().answer(0, ["first"]);
    expect(await Promise.all(both)).toEqual([["first"], ["second"]]);
    // One that nobody waits for any more.
    expect(() => worker().answer(0, ["late"])).not.toThrow();
  });

  it.each([
    ["nothing yet", 0, 0],
    ["no height", 640, 0],
    ["no width", 0, 480],
  ])("asks nobody where the video has %s", async (_, width, height) => {
    const { workers, drawn } = page();
    const reader = await createCodeReader();
    expect(await reader.readCamera(videoOf(width, height))).toEqual([]);
    expect([workers.length, drawn.length]).toEqual([0, 0]);
  });

  it("looks at a still picture at other sizes until one gives a code, each text once", async () => {
    const { worker } = page();
    const reader = await createCodeReader();
    const read = reader.readPicture(pictureOf(4000, 3000));
    worker().answer(0, []);
    await soon();
    worker().answer(1, ["one", "two", "one"]);
    expect(await read).toEqual(["one", "two"]);
    const sizes = worker().asked.map(({ request }) => request.pixels.width);
    expect(sizes).toEqual([1600, 3200]);
  });

  it("finds none in a still picture only after every look", async () => {
    const { worker } = page();
    const reader = await createCodeReader();
    const read = reader.readPicture(pictureOf(5000, 1));
    for (const question of [0, 1, 2]) {
      worker().answer(question, []);
      await soon();
    }
    expect(await read).toEqual([]);
    // However thin, a picture has a row of pixels.
    const sizes = worker().asked.map(({ request: { pixels } }) => [pixels.width, pixels.height]);
    expect(sizes).toEqual([
      [1600, 1],
      [3200, 1],
      [800, 1],
    ]);
  });

  it("finds none where the canvas gives no pixels", async () => {
    const { workers } = page({ hasContext: false });
    const reader = await createCodeReader();
    expect(await reader.readCamera(video)).toEqual([]);
    expect(await reader.readPicture(pictureOf(100, 100))).toEqual([]);
    expect(workers).toHaveLength(0);
  });

  it("starts another worker after one that failed, whose questions find none", async () => {
    const { workers, worker } = page();
    const reader = await createCodeReader();
    const lost = reader.readCamera(video);
    worker().onerror({});
    expect(await lost).toEqual([]);
    expect(worker().terminate).toHaveBeenCalledTimes(1);
    const next = reader.readCamera(video);
    expect(workers).toHaveLength(2);
    worker(1).answer(0, ["one"]);
    expect(await next).toEqual(["one"]);
  });

  it("ends its worker as it is closed, and leaves no question open", async () => {
    const { workers, worker } = page();
    const reader = await createCodeReader();
    expect(() => reader.close()).not.toThrow();
    const open = reader.readCamera(video);
    reader.close();
    expect(await open).toEqual([]);
    expect(worker().terminate).toHaveBeenCalledTimes(1);
    reader.readCamera(video);
    expect(workers).toHaveLength(2);
  });
});

describe("the browser's own reader of codes", () => {
  /** Counts what it is asked; `formats` are those it was made for. */
  function detectorThat(detect: () => Promise<unknown>) {
    const made: unknown[] = [];
    const asked = vi.fn(detect);
    class BarcodeDetector {
      detect = asked;
      constructor(options: unknown) {
        made.push(options);
      }
      static getSupportedFormats = () => Promise.resolve(["qr_code", "aztec"]);
    }
    vi.stubGlobal("BarcodeDetector", BarcodeDetector);
    return { made, asked };
  }

  it("is made for QR codes alone, and read first", async () => {
    const { workers } = page();
    const { made, asked } = detectorThat(() => Promise.resolve([{ rawValue: "one" }]));
    const reader = await createCodeReader();
    const picture = pictureOf(100, 100);
    expect(await reader.readPicture(picture)).toEqual(["one"]);
    expect(made).toEqual([{ formats: ["qr_code"] }]);
    expect(asked.mock.calls).toEqual([[picture]]);
    expect(workers).toHaveLength(0);
  });

  it("leaves a picture in which it finds none to the app's own, but no frame", async () => {
    const { worker, workers } = page();
    detectorThat(() => Promise.resolve([]));
    const reader = await createCodeReader();
    expect(await reader.readCamera(video)).toEqual([]);
    expect(workers).toHaveLength(0);
    const read = reader.readPicture(pictureOf(400, 300));
    await soon();
    worker().answer(0, ["dense"]);
    expect(await read).toEqual(["dense"]);
  });

  it("that fails leaves everything to the app's own, which is closed with it", async () => {
    const { worker } = page();
    const { asked } = detectorThat(() => Promise.reject(new Error("gone")));
    const reader = await createCodeReader();
    const read = reader.readPicture(pictureOf(400, 300));
    await soon();
    worker().answer(0, ["one"]);
    expect(await read).toEqual(["one"]);
    const frame = reader.readCamera(video);
    await soon();
    reader.close();
    expect(await frame).toEqual([]);
    expect(asked).toHaveBeenCalledTimes(1);
    expect(worker().terminate).toHaveBeenCalledTimes(1);
  });
});
