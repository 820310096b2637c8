import { describe, expect, it } from "vitest";
import { readFrameOfCamera, readStillPicture } from "../../src/sharing/codeReading.ts";
import { beside, modulesOf, screenPicture } from "./screenPicture.ts";

const address = "https://stopfit.example/app/#/open/1d";
const pictureOf = (digits: string) => screenPicture(modulesOf(address, digits));
const blank = { width: 60, height: 50, data: new Uint8ClampedArray(60 * 50 * 4).fill(255) };

describe("a picture of a code", () => {
  it("gives its text, in a frame of a camera and in a still picture", async () => {
    expect(readFrameOfCamera(pictureOf("0123456789"))).toEqual([`${address}0123456789`]);
    expect(await readStillPicture(pictureOf("0123456789"))).toEqual([`${address}0123456789`]);
  });

  it("gives every text where a still picture shows two", async () => {
    const [first, second] = ["1".repeat(60), "2".repeat(60)];
    const texts = await readStillPicture(beside([pictureOf(first), pictureOf(second)]));
    expect(texts.sort()).toEqual([address + first, address + second]);
  });

  it("gives its text in a still picture 4000 px wide", async () => {
    const texts = await readStillPicture(beside([pictureOf("77")], 4000));
    expect(texts).toEqual([`${address}77`]);
  });

  it("gives nothing where there is none, and no fault", async () => {
    expect(readFrameOfCamera(blank)).toEqual([]);
    expect(await readStillPicture(blank)).toEqual([]);
    const speck = { width: 1, height: 1, data: new Uint8ClampedArray(4) };
    expect(readFrameOfCamera(speck)).toEqual([]);
  });
});
