import { afterEach, describe, expect, it, vi } from "vitest";
import { createCodeReader } from "../../src/compute/codeReader.ts";

afterEach(() => vi.unstubAllGlobals());

/** A video that shows nothing yet: our own reader has nothing to read in it. */
const video = { videoWidth: 0, videoHeight: 0 } as HTMLVideoElement;

function browserWith(formats: readonly string[], detect: () => Promise<unknown>) {
  const asked = vi.fn(detect);
  class BarcodeDetector {
    detect = asked;
    static getSupportedFormats = () => Promise.resolve(formats);
  }
  vi.stubGlobal("BarcodeDetector", BarcodeDetector);
  return asked;
}

describe("the reader of codes", () => {
  it("asks the browser's own detector where that knows QR codes", async () => {
    const codes = [{ rawValue: "one" }, { rawValue: "two" }];
    const asked = browserWith(["ean_13", "qr_code"], () => Promise.resolve(codes));
    const reader = await createCodeReader();
    expect(await reader.readCamera(video)).toEqual(["one", "two"]);
    expect(asked).toHaveBeenCalledWith(video);
  });

  it("does without a detector that knows other codes only, or that does not answer", async () => {
    const asked = browserWith(["ean_13"], () => Promise.resolve([]));
    expect(await (await createCodeReader()).readCamera(video)).toEqual([]);
    expect(asked).not.toHaveBeenCalled();
    vi.stubGlobal("BarcodeDetector", {
      getSupportedFormats: () => Promise.reject(new Error("service absent")),
    });
    expect(await (await createCodeReader()).readCamera(video)).toEqual([]);
  });

  it("gives up a detector that fails, without a fault", async () => {
    const asked = browserWith(["qr_code"], () => Promise.reject(new Error("service unavailable")));
    const reader = await createCodeReader();
    expect(await reader.readCamera(video)).toEqual([]);
    expect(await reader.readCamera(video)).toEqual([]);
    expect(asked).toHaveBeenCalledTimes(1);
    reader.close();
  });
});
