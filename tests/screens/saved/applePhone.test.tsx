import "fake-indexeddb/auto";
import { cleanup, fireEvent, render, screen } from "@testing-library/preact";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { newStoredCheck } from "../../../src/records/check/storedCheck.ts";
import { setEntry } from "../../../src/records/filling/changes.ts";
import { openHref } from "../../../src/screens/exchange/shareRoutes.ts";
import { PrintButton } from "../../../src/screens/parts/PrintButton.tsx";
import { canPrint } from "../../../src/screens/parts/printing.ts";
import { SaveCheckButton } from "../../../src/screens/SaveCheckButton.tsx";
import { saveFile } from "../../../src/sharing/saveFile.ts";
import { MarkStore } from "../../../src/storage/markStore.ts";
import { freshPhone, heading, keep, startApp } from "../startApp.tsx";

const share = vi.fn(async (_data: ShareData) => undefined);
let canShare: (data?: ShareData) => boolean;
let downloads: string[];

/** `standalone` is on Apple's phones alone: true once opened from the home screen. */
function onApplePhone(standalone: boolean): void {
  vi.stubGlobal("navigator", {
    ...navigator,
    userAgent: navigator.userAgent,
    language: "en-US",
    standalone,
    share,
    canShare: (data?: ShareData) => canShare(data),
    storage: {
      persisted: async () => false,
      persist: async () => false,
      estimate: async () => ({ usage: 2e6, quota: 5e9 }),
    },
  });
}

beforeEach(() => {
  freshPhone();
  share.mockClear();
  share.mockImplementation(async () => undefined);
  canShare = () => true;
  downloads = [];
  vi.spyOn(HTMLAnchorElement.prototype, "click").mockImplementation(function (
    this: HTMLAnchorElement,
  ) {
    downloads.push(this.download);
  });
});

afterEach(() => {
  cleanup();
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

const tern = {
  ...setEntry(newStoredCheck("Tern"), "left.gap", { texts: ["21"], unit: "mm" as const, tol: "1" }),
  lastVerdict: "ok" as const,
};

describe("in the browser of an Apple phone", () => {
  beforeEach(() => onApplePhone(false));

  it("the list and the storage screen tell of the seven days", async () => {
    await keep(tern);
    startApp();
    await screen.findByText(
      /1 check exists only on this phone. This browser deletes it after 7 days/,
    );
    cleanup();
    startApp("#/saved");
    await screen.findByText("The browser deletes what is not opened for a week");
  });

  it("a backup comes before the steps of installing", async () => {
    await keep(tern);
    startApp("#/saved");
    const steps = await screen.findByText(/The installed app starts empty/);
    expect(steps.textContent).toContain("Save a backup first");
    const all = steps.closest("details");
    const words = all?.textContent ?? "";
    expect(words.indexOf("Save a backup")).toBeLessThan(words.indexOf("Add to Home Screen"));
    expect(all?.querySelectorAll("button")).toHaveLength(1);
  });

  it("a tapped link says first how it comes into the installed app", async () => {
    const copied = vi.fn(async (_text: string) => undefined);
    Object.assign(navigator, { clipboard: { writeText: copied } });
    startApp("#/open/1bAAAA");
    await screen.findByText(/Copy the link and paste it there/);
    fireEvent.click(screen.getByRole("button", { name: "Copy the link" }));
    await screen.findByText("The link is copied.");
    expect(copied.mock.calls[0]?.[0]).toMatch(/#\/open\/1bAAAA$/);
  });

  it("a file is downloaded, and the page can be printed", () => {
    vi.stubGlobal("print", () => undefined);
    saveFile(new File(["x"], "tern.csv", { type: "text/csv" }));
    expect(downloads).toEqual(["tern.csv"]);
    expect(share).not.toHaveBeenCalled();
    expect(canPrint()).toBe(true);
  });
});

describe("installed on an Apple phone", () => {
  beforeEach(() => onApplePhone(true));

  it("the empty list says how to bring the checks along", async () => {
    startApp();
    await screen.findByRole("heading", { level: 2, name: "Bring your checks" });
    expect(screen.getByRole("link", { name: "Paste a link" }).getAttribute("href")).toBe(openHref);
  });

  it("a list with checks says nothing of it", async () => {
    await keep(tern);
    startApp();
    await screen.findByText("Tern");
    expect(screen.queryByText("Bring your checks")).toBeNull();
  });

  it("nobody is told to install what is installed", async () => {
    await keep(tern);
    startApp("#/saved");
    await screen.findByText("The browser may clear the checks");
    expect(document.body.textContent).toContain("Save a backup now and then.");
    expect(document.body.textContent).not.toMatch(/install Stopfit/i);
  });

  it("a link that is opened there says nothing of pasting it elsewhere", async () => {
    startApp("#/open/1bAAAA");
    await heading("Open a check or a reply");
    expect(screen.queryByText(/home screen/)).toBeNull();
  });

  it("what can't be printed is saved as a page, by the share sheet", () => {
    vi.stubGlobal("print", () => undefined);
    render(<PrintButton what="labels" label="Print 3 labels" />);
    fireEvent.click(screen.getByRole("button", { name: "Save the labels" }));
    expect(share.mock.calls[0]?.[0].files?.[0]?.name).toBe("stopfit-labels.html");
    expect(screen.queryByText("Print 3 labels")).toBeNull();
  });

  it("a page whose share sheet is closed is said not to be saved", async () => {
    vi.stubGlobal("print", () => undefined);
    share.mockRejectedValueOnce(new DOMException("Closed.", "AbortError"));
    render(<PrintButton what="labels" />);
    fireEvent.click(screen.getByRole("button", { name: "Save the labels" }));
    await screen.findByText(/^The page is not saved: you closed the share sheet/);
    fireEvent.click(screen.getByRole("button", { name: "Save the labels" }));
    await vi.waitFor(() => expect(screen.queryByText(/^The page is not saved/)).toBeNull());
  });

  it("pasting a link comes first among the ways in", async () => {
    startApp("#/open");
    await heading("Open a check or a reply");
    const cards = screen.getAllByRole("heading", { level: 2 }).map((each) => each.textContent);
    expect(cards[0]).toBe("From a link");
    screen.getByText(/Copy the link and paste it here/);
  });

  it("a table is saved by the share sheet; refused there, it is downloaded", async () => {
    const table = new File(["x"], "checks.csv", { type: "text/csv" });
    saveFile(table);
    expect(share).toHaveBeenCalledWith({ files: [table] });
    expect(downloads).toEqual([]);
    share.mockRejectedValueOnce(new DOMException("No tap.", "NotAllowedError"));
    saveFile(table);
    await vi.waitFor(() => expect(downloads).toEqual(["checks.csv"]));
    share.mockRejectedValueOnce(new DOMException("Closed.", "AbortError"));
    saveFile(table);
    await Promise.resolve();
    expect(downloads).toEqual(["checks.csv"]);
  });

  it("what the share sheet does not take is downloaded, and nothing is offered to print", () => {
    vi.stubGlobal("print", () => undefined);
    canShare = () => false;
    saveFile(new File(["x"], "checks.csv", { type: "text/csv" }));
    expect(downloads).toEqual(["checks.csv"]);
    expect(canPrint()).toBe(false);
  });

  it("a backup whose share sheet is closed counts as none, and says so", async () => {
    await keep(tern);
    const marks = new MarkStore();
    const known = async () => {
      const safe = await marks.safekeeping();
      return safe.ok && [safe.value.lastBackupAt !== null, safe.value.safe.size];
    };
    share.mockRejectedValueOnce(new DOMException("Closed.", "AbortError"));
    startApp("#/saved");
    fireEvent.click(await screen.findByRole("button", { name: "Save a backup" }));
    await screen.findByText(
      "The backup is not saved: you closed the share sheet. Save it again and choose a place for it.",
    );
    expect(await known()).toEqual([false, 0]);
    fireEvent.click(screen.getByRole("button", { name: "Save a backup" }));
    await screen.findByText("The backup is ready. Choose in the share sheet where to save it.");
    expect(await known()).toEqual([true, 1]);
    expect(downloads).toEqual([]);
    marks.close();
  });

  it("a check's file whose share sheet is closed is not safe elsewhere", async () => {
    const marks = new MarkStore();
    const safe = async () => {
      const known = await marks.safekeeping();
      return known.ok && known.value.safe.size;
    };
    share.mockRejectedValueOnce(new DOMException("Closed.", "AbortError"));
    render(<SaveCheckButton checks={[tern]} label="Save as a file" />);
    const button = screen.getByRole("button", { name: "Save as a file" });
    fireEvent.click(button);
    await screen.findByText(/^The file is not saved: you closed the share sheet/);
    expect(await safe()).toBe(0);
    fireEvent.click(button);
    await vi.waitFor(() => expect(screen.queryByText(/^The file is not saved/)).toBeNull());
    expect(await safe()).toBe(1);
    marks.close();
  });

  it("of two checks the one whose share sheet is closed is told, and the other is saved", async () => {
    const marks = new MarkStore();
    share.mockRejectedValueOnce(new DOMException("Closed.", "AbortError"));
    render(<SaveCheckButton checks={[tern, { ...tern, id: "other" }]} label="Save as files" />);
    fireEvent.click(screen.getByRole("button", { name: "Save as files" }));
    await screen.findByText(/^The file is not saved/);
    expect(share).toHaveBeenCalledTimes(2);
    const known = await marks.safekeeping();
    expect(known.ok && [...known.value.safe.keys()]).toEqual(["other"]);
    marks.close();
  });

  it("the list says that a check's file is not saved", async () => {
    await keep(tern);
    startApp();
    share.mockRejectedValueOnce(new DOMException("Closed.", "AbortError"));
    fireEvent.click(await screen.findByRole("button", { name: /^More for/ }));
    fireEvent.click(await screen.findByRole("button", { name: "Save as a file" }));
    await screen.findByText(/^The file is not saved/);
  });
});
