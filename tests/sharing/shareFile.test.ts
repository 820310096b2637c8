import { afterEach, describe, expect, it, vi } from "vitest";
import type { Outcome } from "../../src/physics/outcome.ts";
import { inModelUnits } from "../../src/saying/modelUnits.ts";
import {
  canShareFile,
  canShareLink,
  canShareText,
  copyText,
  share,
} from "../../src/sharing/shareFile.ts";

afterEach(() => vi.unstubAllGlobals());

const file = new File(["{}"], "check.txt", { type: "text/plain" });
const told = (outcome: Outcome<unknown>) =>
  outcome.ok ? "" : `${outcome.fault.code}: ${inModelUnits(outcome.fault.sentence)}`;

const device = (navigator: object) => vi.stubGlobal("navigator", navigator);
const can = () => [canShareFile(file), canShareLink("https://a.example/"), canShareText("words")];

describe("what a device can share", () => {
  it("is nothing where it has no share sheet", () => {
    device({});
    expect(can()).toEqual([false, false, false]);
    device({ canShare: () => true });
    expect(can()).toEqual([false, false, false]);
  });

  it("is what it says of the very thing, when it can be asked", () => {
    const canShare = vi.fn((data: ShareData) => data.files !== undefined);
    device({ share: vi.fn(), canShare });
    expect(can()).toEqual([true, false, false]);
    expect(canShare.mock.calls).toEqual([
      [{ files: [file] }],
      [{ url: "https://a.example/" }],
      [{ text: "words" }],
    ]);
    device({ share: vi.fn(), canShare: (data: ShareData) => data.files === undefined });
    expect(can()).toEqual([false, true, true]);
  });

  it("is words, no files, where it can't be asked", () => {
    device({ share: vi.fn() });
    expect(can()).toEqual([false, true, true]);
  });

  it("is nothing where asking fails", () => {
    const canShare = () => {
      throw new TypeError("not allowed in this frame");
    };
    device({ share: vi.fn(), canShare });
    expect(can()).toEqual([false, false, false]);
  });
});

describe("the share sheet", () => {
  const shareThat = (outcome: () => Promise<void>) => {
    const asked = vi.fn(outcome);
    device({ share: asked });
    return asked;
  };

  it("is handed the very thing", async () => {
    const asked = shareThat(() => Promise.resolve());
    expect(await share({ files: [file] })).toEqual({ ok: true, value: "handed over" });
    expect(asked.mock.calls).toEqual([[{ files: [file] }]]);
  });

  it("that is closed without sending is no fault", async () => {
    shareThat(() => Promise.reject(Object.assign(new Error("closed"), { name: "AbortError" })));
    expect(await share({ text: "words" })).toEqual({ ok: true, value: "closed" });
  });

  it.each([
    ["refuses", Object.assign(new Error("no tap"), { name: "NotAllowedError" })],
    ["fails without an error", { name: "AbortError" }],
  ])("that %s names the other way", async (_, error) => {
    shareThat(() => Promise.reject(error));
    expect(told(await share({ text: "words" }))).toBe(
      "shareRefused: The share sheet did not open. Save the file and attach it to a message instead.",
    );
  });
});

describe("copying", () => {
  const refused =
    "copyRefused: The browser does not let this page copy. Mark the link below and copy it by hand.";

  it("puts the very text on the clipboard", async () => {
    const writeText = vi.fn(() => Promise.resolve());
    device({ clipboard: { writeText } });
    expect(await copyText("a link")).toEqual({ ok: true, value: null });
    expect(writeText.mock.calls).toEqual([["a link"]]);
  });

  it("names the other way where the browser refuses, or has no clipboard", async () => {
    device({ clipboard: { writeText: () => Promise.reject(new Error("not allowed")) } });
    expect(told(await copyText("a link"))).toBe(refused);
    device({});
    expect(told(await copyText("a link"))).toBe(refused);
  });
});
