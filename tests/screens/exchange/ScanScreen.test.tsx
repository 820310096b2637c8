import { act, cleanup, fireEvent, render, screen, waitFor } from "@testing-library/preact";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { CodeReader } from "../../../src/compute/codeReader.ts";
import type { CheckRecord } from "../../../src/records/check/checkRecord.ts";
import ScanScreen from "../../../src/screens/exchange/ScanScreen.tsx";
import { codeSeries } from "../../../src/sharing/codeSeries.ts";
import type { Frame } from "../../../src/sharing/frame.ts";
import { checkOfFrame } from "../../../src/sharing/sharedCheck.ts";
import { plainPng } from "../../support/pictures.ts";
import { demoRecord } from "../answer/demoChecks.ts";
import { withNavigator, wordsOf } from "./support.ts";

class FakeTrack extends EventTarget {
  stop = vi.fn();
}

let track: FakeTrack;
let getUserMedia: ReturnType<typeof vi.fn>;
let visibility: DocumentVisibilityState;
let restore: () => void;

beforeEach(() => {
  track = new FakeTrack();
  const own = track;
  const stream = { getTracks: () => [own], getVideoTracks: () => [own] };
  getUserMedia = vi.fn(() => Promise.resolve(stream));
  restore = withNavigator({ mediaDevices: { getUserMedia } });
  visibility = "visible";
  vi.spyOn(document, "visibilityState", "get").mockImplementation(() => visibility);
  vi.spyOn(HTMLMediaElement.prototype, "play").mockResolvedValue();
  // happy-dom takes none but its own streams.
  vi.spyOn(HTMLMediaElement.prototype, "srcObject", "set").mockImplementation(() => undefined);
});

afterEach(() => {
  cleanup();
  restore();
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

function show(begun: Frame | null = null) {
  let seen: readonly string[] = [];
  const reader = {
    readCamera: vi.fn(() => Promise.resolve(seen)),
    readPicture: vi.fn(() => Promise.resolve(seen)),
    close: vi.fn(),
  } satisfies CodeReader;
  const onWhole = vi.fn<(frame: Frame) => void>();
  const onLeave = vi.fn();
  const startReader = () => Promise.resolve(reader);
  const view = render(
    <ScanScreen begun={begun} onWhole={onWhole} onLeave={onLeave} startReader={startReader} />,
  );
  return {
    ...view,
    reader,
    onWhole,
    onLeave,
    async hold(...texts: readonly string[]) {
      seen = texts;
      await act(() => new Promise((done) => setTimeout(done, 400)));
    },
  };
}

async function hide(hidden: boolean) {
  visibility = hidden ? "hidden" : "visible";
  await act(async () => {
    document.dispatchEvent(new Event("visibilitychange"));
    await Promise.resolve();
  });
}

function textsOf(record: CheckRecord): string[] {
  const series = codeSeries(record, "https://stopfit.example/app/");
  if (!series.ok) throw new Error(series.fault.code);
  return series.value.codes.map(({ address, digits }) => `${address}${digits}`);
}

const longNotes = wordsOf(1100);
const record: CheckRecord = { ...demoRecord("arm-fits"), notes: longNotes };
const texts = textsOf(record);
const other = textsOf({ ...demoRecord("damper-shaft"), notes: longNotes });

describe("codes", () => {
  it("are put together in any order, repeats passed over, missing ones named", async () => {
    expect(texts.length).toBeGreaterThanOrEqual(3);
    const { hold, onWhole } = show();
    await hold(texts[2] ?? "");
    await hold(texts[2] ?? "");
    expect(screen.getByText(`1 of ${texts.length} codes read`)).toBeTruthy();
    const words = screen.getByRole("status").textContent ?? "";
    expect(words).toMatch(/; codes 1, .*are missing|; codes 1 and 2 of 3 are missing/);
    expect(words).not.toContain("codes 3");
    expect(onWhole).not.toHaveBeenCalled();
    for (const text of texts) await hold(text);
    expect(onWhole).toHaveBeenCalledTimes(1);
    const [frame] = onWhole.mock.calls[0] ?? [];
    expect(frame && checkOfFrame(frame)).toEqual({
      ok: true,
      value: { record, photosLeftOut: 0 },
    });
  });

  it("of another check are refused, until one starts over with them", async () => {
    const { hold, onWhole } = show();
    await hold(texts[0] ?? "");
    await hold(other[0] ?? "");
    expect(screen.getByText(/This code belongs to another check/)).toBeTruthy();
    expect(screen.getByText(`1 of ${texts.length} codes read`)).toBeTruthy();
    fireEvent.click(screen.getByRole("button", { name: "Start over with this one" }));
    for (const text of other) await hold(text);
    const [frame] = onWhole.mock.calls[0] ?? [];
    expect(frame && checkOfFrame(frame)).toMatchObject({
      ok: true,
      value: { record: { id: demoRecord("damper-shaft").id } },
    });
  });

  it("that are no check are told in a sentence", async () => {
    const { hold } = show();
    await hold("https://example.com/menu");
    expect(screen.getByText(/This code holds no check from Stopfit/)).toBeTruthy();
  });

  it("go on from one that the device's own camera program opened", async () => {
    const [first = "", ...others] = texts;
    const { readCode } = await import("../../../src/sharing/codeCollection.ts");
    const begun = readCode(first);
    const { hold, onWhole } = show(begun.ok ? begun.value : null);
    expect(screen.getByText(`1 of ${texts.length} codes read`)).toBeTruthy();
    for (const text of others) await hold(text);
    expect(onWhole).toHaveBeenCalledTimes(1);
  });
});

describe("the camera", () => {
  it("stops when the page hides and starts again when it shows", async () => {
    const { hold, reader } = show();
    await hold();
    expect(getUserMedia).toHaveBeenCalledTimes(1);
    expect(track.stop).not.toHaveBeenCalled();
    await hide(true);
    expect(track.stop).toHaveBeenCalledTimes(1);
    expect(screen.getByText(/The camera is off while this page is not looked at/)).toBeTruthy();
    const looks = reader.readCamera.mock.calls.length;
    await hold();
    expect(reader.readCamera.mock.calls.length).toBeLessThanOrEqual(looks + 1);
    await hide(false);
    await waitFor(() => expect(getUserMedia).toHaveBeenCalledTimes(2));
  });

  it("stops when the screen is left, and with it the reader", async () => {
    const { hold, unmount, reader } = show();
    await hold();
    unmount();
    await waitFor(() => expect(track.stop).toHaveBeenCalledTimes(1));
    expect(reader.close).toHaveBeenCalledTimes(1);
  });

  it("stops even when it is granted only after the screen was left", async () => {
    let grant: (stream: unknown) => void = () => undefined;
    getUserMedia.mockReturnValue(new Promise((done) => (grant = done)));
    const { unmount } = show();
    await act(() => Promise.resolve());
    unmount();
    grant({ getTracks: () => [track], getVideoTracks: () => [track] });
    await waitFor(() => expect(track.stop).toHaveBeenCalled());
  });

  it.each([
    ["NotAllowedError", /The camera is not allowed for this page/],
    ["NotFoundError", /No camera was found/],
    ["NotReadableError", /Another program is using the camera/],
    ["SomethingElse", /The camera did not start/],
  ])("refused with %s is a sentence that names the picture instead", async (name, words) => {
    getUserMedia.mockRejectedValue(Object.assign(new Error("no"), { name }));
    const { hold } = show();
    await hold();
    const { textContent } = screen.getByText(words);
    expect(textContent).toContain("picture of the code");
    expect(screen.getByRole("button", { name: "Use a picture of the code" })).toBeTruthy();
    expect(screen.getByRole("button", { name: "Try the camera again" })).toBeTruthy();
  });

  it("that the browser has none of is a sentence too", async () => {
    restore();
    restore = withNavigator({ mediaDevices: undefined });
    const { hold } = show();
    await hold();
    expect(screen.getByText(/This browser gives no page a camera here/)).toBeTruthy();
  });
});

describe("a picture of a code", () => {
  const choose = async (file: File) => {
    const input = screen.getByLabelText<HTMLInputElement>("Pictures of codes");
    Object.defineProperty(input, "files", { configurable: true, value: [file] });
    await act(async () => {
      fireEvent.change(input);
      await new Promise((done) => setTimeout(done, 20));
    });
  };
  const photo = new File([new Uint8Array(plainPng(4, 4))], "code.png", { type: "image/png" });

  it("does as well as the camera", async () => {
    vi.stubGlobal("createImageBitmap", () => Promise.resolve({ close: vi.fn() }));
    const { hold, reader, onWhole } = show();
    await hold();
    reader.readPicture.mockResolvedValue(texts);
    await choose(photo);
    expect(onWhole).toHaveBeenCalledTimes(1);
  });

  it("without a code, or that is no picture, is told in a sentence", async () => {
    vi.stubGlobal("createImageBitmap", () => Promise.resolve({ close: vi.fn() }));
    const { hold } = show();
    await hold();
    await choose(photo);
    expect(screen.getByText(/No code was found in the picture/)).toBeTruthy();
    vi.stubGlobal("createImageBitmap", () => Promise.reject(new Error("no picture")));
    await choose(photo);
    expect(screen.getByText(/not a picture that can be read/)).toBeTruthy();
  });
});
