import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readCode } from "../../src/sharing/codeCollection.ts";
import { readFrameOfCamera, readStillPicture } from "../../src/sharing/codeReading.ts";
import { codeSeries, digitsPerCode, largestCodeVersion } from "../../src/sharing/codeSeries.ts";
import { checkOfFrame } from "../../src/sharing/sharedCheck.ts";
import { anyRecord } from "../records/arbitraries.ts";
import { type CameraView, cameraPicture, enlarged } from "./cameraPicture.ts";
import { modulesOf, screenPicture } from "./screenPicture.ts";

const app = "https://stopfit.example/app/";
const address = `${app}#/open/1d`;

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
