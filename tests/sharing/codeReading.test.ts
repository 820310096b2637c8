import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readCode } from "../../src/sharing/codeCollection.ts";
import { cameraLook, pictureLooks } from "../../src/sharing/codeReader.ts";
import { type Pixels, readFrameOfCamera, readStillPicture } from "../../src/sharing/codeReading.ts";
import { codeSeries, digitsPerCode, largestCodeVersion } from "../../src/sharing/codeSeries.ts";
import { drawCode } from "../../src/sharing/qrDrawing.ts";
import { checkOfFrame } from "../../src/sharing/sharedCheck.ts";
import { anyRecord } from "../records/arbitraries.ts";
import { type CameraView, cameraPicture, enlarged } from "./cameraPicture.ts";

const app = "https://stopfit.example/app/";
const address = `${app}#/open/1d`;

function modulesOf(text: string, digits: string): boolean[][] {
  const drawn = drawCode(text, digits);
  if (!drawn.ok) throw new Error("not drawn");
  const { size, isDark } = drawn.value;
  return Array.from({ length: size }, (_, y) =>
    Array.from({ length: size }, (_, x) => isDark(x, y)),
  );
}

/** A picture of the screen itself: 6 px a module, nothing blurred. */
function screenPicture(modules: readonly (readonly boolean[])[]): Pixels {
  const side = (modules.length + 8) * 6;
  const data = new Uint8ClampedArray(side * side * 4).fill(255);
  for (let y = 0; y < side; y += 1) {
    for (let x = 0; x < side; x += 1) {
      if (modules[Math.floor(y / 6) - 4]?.[Math.floor(x / 6) - 4] !== true) continue;
      data.fill(0, (y * side + x) * 4, (y * side + x) * 4 + 3);
    }
  }
  return { width: side, height: side, data };
}

/** A camera of 1280 × 720 over a phone, cut to the part with the code to save time. */
const atDesk: Omit<CameraView, "seed" | "pixelsPerModule"> = {
  width: 340,
  height: 340,
  blur: 0.7,
  turn: 0.05,
  perspective: 0.08,
  noise: 6,
};

function readsAt(
  pixelsPerModule: number,
  seeds: readonly number[],
  perspective = atDesk.perspective,
): number {
  const digits = "0123456789".repeat(200).slice(0, digitsPerCode(app));
  const modules = modulesOf(address, digits);
  expect(modules).toHaveLength(17 + 4 * largestCodeVersion);
  return seeds.filter((seed) => {
    const picture = cameraPicture(modules, { ...atDesk, perspective, pixelsPerModule, seed });
    const texts = [...readFrameOfCamera(picture), ...readFrameOfCamera(enlarged(picture))];
    expect(texts.every((text) => text === address + digits)).toBe(true);
    return texts.length > 0;
  }).length;
}

describe("reading codes", () => {
  it("gives the very same record that was drawn, by another library than drew it", () => {
    fc.assert(
      fc.property(anyRecord, (record) => {
        const series = codeSeries({ ...record, photos: [] }, app);
        if (!series.ok) throw new Error("no series");
        for (const code of series.value.codes) {
          const texts = readFrameOfCamera(screenPicture(modulesOf(code.address, code.digits)));
          expect(texts).toEqual([`${code.address}${code.digits}`]);
        }
        const [only] = series.value.codes;
        if (series.value.codes.length > 1 || only === undefined) return;
        const frame = readCode(`${only.address}${only.digits}`);
        expect(frame.ok && checkOfFrame(frame.value)).toMatchObject({
          ok: true,
          value: { record: { id: record.id } },
        });
      }),
      { numRuns: 12 },
    );
  });

  // 4.0 px/mm at 0.25 m, 0.74 mm a module: see largestCodeVersion. A camera gives many frames.
  it("reads most frames of the densest code at 3.0 camera pixels a module", () => {
    expect(readsAt(3.0, [1, 2, 3, 4, 5, 6, 7, 8])).toBeGreaterThanOrEqual(6);
  });

  it("reads every frame of it where the phone is held square to the camera", () => {
    expect(readsAt(3.0, [1, 2, 3, 4], 0)).toBe(4);
  });

  it("finds its limit below that, so that a denser code would not do", () => {
    expect(readsAt(2.0, [1, 2, 3, 4])).toBe(0);
  });

  it("finds two codes in one still picture", async () => {
    const [first, second] = ["1", "2"].map((digit) =>
      screenPicture(modulesOf(address, digit.repeat(60))),
    );
    if (first === undefined || second === undefined) throw new Error("no pictures");
    const width = first.width + second.width;
    const height = Math.max(first.height, second.height);
    const data = new Uint8ClampedArray(width * height * 4).fill(210);
    for (const [picture, left] of [
      [first, 0],
      [second, first.width],
    ] as const) {
      for (let y = 0; y < picture.height; y += 1) {
        const row = picture.data.subarray(y * picture.width * 4, (y + 1) * picture.width * 4);
        data.set(row, (y * width + left) * 4);
      }
    }
    const texts = await readStillPicture({ width, height, data });
    expect(texts.sort()).toEqual([address + "1".repeat(60), address + "2".repeat(60)]);
  });

  it("finds nothing in noise, and does not throw", async () => {
    await fc.assert(
      fc.asyncProperty(fc.nat(), fc.integer({ min: 1, max: 200 }), async (seed, side) => {
        const picture = cameraPicture([], {
          ...atDesk,
          width: side,
          height: side,
          pixelsPerModule: 2,
          noise: 60,
          seed,
        });
        expect(readFrameOfCamera(picture)).toEqual([]);
        expect(await readStillPicture(picture)).toEqual([]);
      }),
      { numRuns: 15 },
    );
  });
});

describe("what of a frame is looked at", () => {
  it("is all of it, then its middle enlarged, never more than 2 million pixels", () => {
    for (const [width, height] of [
      [640, 480],
      [1280, 720],
      [1920, 1080],
      [1080, 1920],
      [3840, 2160],
    ] as const) {
      for (const turn of [0, 1, 2, 3]) {
        const look = cameraLook(width, height, turn);
        expect(look.width * look.height * look.scale ** 2).toBeLessThanOrEqual(2.1e6);
        expect(look.left + look.width).toBeLessThanOrEqual(width);
        expect(look.top + look.height).toBeLessThanOrEqual(height);
      }
      expect(cameraLook(width, height, 0)).toMatchObject({ width, height });
    }
    expect(cameraLook(640, 480, 1).scale).toBe(2);
  });

  it("is a still picture at falling and rising sizes", () => {
    const sizes = pictureLooks(4000, 3000).map(({ scale }) => Math.round(4000 * scale));
    expect(sizes).toEqual([1600, 3200, 800]);
  });
});
