import { describe, expect, it } from "vitest";
import { cameraLook, pictureLooks } from "../../src/compute/codeReader.ts";

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

  it("is a frame's middle, square, in whole pixels, whichever way it is held", () => {
    const middle = (width: number, height: number) => cameraLook(width, height, 1);
    expect(middle(1920, 1080)).toEqual({
      left: 420,
      top: 0,
      width: 1080,
      height: 1080,
      scale: 1440 / 1080,
    });
    expect(middle(1080, 1920)).toMatchObject({ left: 0, top: 420, width: 1080, height: 1080 });
    expect(middle(641, 480)).toEqual({ left: 80, top: 0, width: 480, height: 480, scale: 2 });
  });

  it("is a whole frame made smaller where it is large, never larger", () => {
    const whole = { left: 0, top: 0 };
    expect(cameraLook(640, 480, 0)).toEqual({ ...whole, width: 640, height: 480, scale: 1 });
    for (const [width, height] of [
      [1920, 1080],
      [1080, 1920],
    ] as const) {
      expect(cameraLook(width, height, 2)).toEqual({ ...whole, width, height, scale: 2 / 3 });
    }
  });

  it("is a still picture whole, each size once, and none more than twice as large", () => {
    expect(pictureLooks(3000, 4000)).toEqual(
      [0.4, 0.8, 0.2].map((scale) => ({ left: 0, top: 0, width: 3000, height: 4000, scale })),
    );
    expect(pictureLooks(400, 300).map(({ scale }) => scale)).toEqual([2]);
    expect(pictureLooks(800, 600).map(({ scale }) => scale)).toEqual([2, 1]);
  });
});
