import { act, cleanup, render } from "@testing-library/preact";
import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { useReadBack } from "../../../src/screens/voice/useReadBack.ts";

const spoken: string[] = [];

function Reading({ words, wanted }: { words: string | null; wanted: boolean }) {
  useReadBack(words, wanted);
  return null;
}

beforeEach(() => {
  spoken.length = 0;
  vi.useFakeTimers();
  vi.stubGlobal("speechSynthesis", {
    getVoices: () => [{ name: "here", lang: "en-GB", localService: true, default: true }],
    addEventListener: () => undefined,
    cancel: () => undefined,
    speak: ({ text }: { text: string }) => spoken.push(text),
  });
  vi.stubGlobal(
    "SpeechSynthesisUtterance",
    class {
      constructor(readonly text: string) {}
    },
  );
});

afterEach(() => {
  cleanup();
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

const wait = (milliseconds: number) =>
  act(async () => {
    await vi.advanceTimersByTimeAsync(milliseconds);
  });

it("says a number once, when no more keys come", async () => {
  const { rerender } = render(<Reading words={null} wanted />);
  rerender(<Reading words="5 millimeters" wanted />);
  await wait(400);
  rerender(<Reading words="58 millimeters" wanted />);
  await wait(400);
  rerender(<Reading words="58.7 millimeters" wanted />);
  await wait(2000);
  expect(spoken).toEqual(["58.7 millimeters"]);
});

it("says nothing of what stood there already, nor where it is not wanted", async () => {
  const { rerender } = render(<Reading words="58.7 millimeters" wanted />);
  await wait(2000);
  rerender(<Reading words="59 millimeters" wanted={false} />);
  await wait(2000);
  expect(spoken).toEqual([]);
});

it("says it on leaving where the next reading comes at once", async () => {
  const { rerender, unmount } = render(<Reading words={null} wanted />);
  rerender(<Reading words="two and five sixteenths inches" wanted />);
  await wait(100);
  unmount();
  await wait(2000);
  expect(spoken).toEqual(["two and five sixteenths inches"]);
});
