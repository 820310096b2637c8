import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { said } from "../../src/saying/texts.ts";
import { saveFile, whereSaved } from "../../src/sharing/saveFile.ts";
import { fakeDownloads } from "./fakeDownloads.ts";

const file = new File(["{}"], "check.json", { type: "application/json" });

beforeEach(() => vi.useFakeTimers());
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

const computer = { share: vi.fn(), canShare: () => true };
/** Opened from the home screen, where a browser's downloads have no place. */
const installedPhone = (outcome: () => Promise<void>, canShare = true) => {
  const share = vi.fn(outcome);
  vi.stubGlobal("navigator", { standalone: true, share, canShare: () => canShare });
  return share;
};

const refusal = (name: string) => () => Promise.reject(Object.assign(new Error("no"), { name }));
const saved = { tag: "a", name: "check.json", file, within: true, hidden: true };

describe("a file that is saved", () => {
  it("goes to the browser's downloads, and nothing of that stays in the page", async () => {
    vi.stubGlobal("navigator", computer);
    const page = fakeDownloads();
    expect(await saveFile(file)).toBe(true);
    expect(page.downloads).toEqual([saved]);
    expect(page.linksLeft()).toBe(0);
    expect(computer.share).not.toHaveBeenCalled();
    expect(said(whereSaved())).toBe("Look among the browser's downloads.");
  });

  it("keeps its address until every browser has read it, and then no longer", async () => {
    vi.stubGlobal("navigator", computer);
    const page = fakeDownloads();
    saveFile(file);
    await vi.advanceTimersByTimeAsync(59_000);
    expect(page.addressesHeld()).toBe(1);
    await vi.advanceTimersByTimeAsync(1_000);
    expect(page.addressesHeld()).toBe(0);
  });

  it("goes to the share sheet where there is no place for downloads", async () => {
    const share = installedPhone(() => Promise.resolve());
    const page = fakeDownloads();
    expect(await saveFile(file)).toBe(true);
    expect(share.mock.calls).toEqual([[{ files: [file] }]]);
    expect(page.downloads).toEqual([]);
    expect(said(whereSaved())).toBe("Choose in the share sheet where to save it.");
  });

  it("is not saved, here or elsewhere, where the person closes the sheet", async () => {
    installedPhone(refusal("AbortError"));
    const page = fakeDownloads();
    expect(await saveFile(file)).toBe(false);
    expect(page.downloads).toEqual([]);
  });

  it("is downloaded after all where the sheet does not open, or takes no such file", async () => {
    installedPhone(refusal("NotAllowedError"));
    const page = fakeDownloads();
    const late = saveFile(file);
    expect(page.downloads).toEqual([]);
    expect(await late).toBe(true);
    expect(page.downloads).toEqual([saved]);

    const share = installedPhone(() => Promise.resolve(), false);
    const other = fakeDownloads();
    expect(await saveFile(file)).toBe(true);
    expect(other.downloads).toEqual([saved]);
    expect(share).not.toHaveBeenCalled();
  });
});
