import "fake-indexeddb/auto";
import { cleanup, fireEvent, screen, waitFor, within } from "@testing-library/preact";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { newStoredCheck, type StoredCheck } from "../../../src/records/check/storedCheck.ts";
import { setEntry } from "../../../src/records/filling/changes.ts";
import { stepHref } from "../../../src/screens/addresses.ts";
import { saveBackup } from "../../../src/screens/desk/saveFiles.ts";
import { saveBackupHere } from "../../../src/screens/saved/backupHere.ts";
import { holdInstallOffer, takeInstallOffer } from "../../../src/screens/saved/installOffer.ts";
import { askNowAndThen, persistence, sizeText } from "../../../src/screens/saved/persistence.ts";
import { markSent, onlyHere } from "../../../src/screens/saved/safety.ts";
import { openDeskStore } from "../../../src/storage/deskStore.ts";
import { MarkStore } from "../../../src/storage/markStore.ts";
import { freshPhone, heading, keep, kept, openStore, startApp, tap, tick } from "../startApp.tsx";

interface Storage {
  persisted: boolean | undefined;
  /** What the browser answers when it is asked. */
  agrees: boolean;
  freeBytes: number;
  asked: number;
}

let browser: Storage;
let saved: { name: string; blob: Blob }[];

beforeEach(() => {
  freshPhone();
  browser = { persisted: false, agrees: false, freeBytes: 5e9, asked: 0 };
  saved = [];
  vi.stubGlobal("navigator", {
    ...navigator,
    userAgent: navigator.userAgent,
    language: "en-GB",
    storage: {
      ...(browser.persisted !== undefined && { persisted: async () => browser.persisted }),
      persist: async () => {
        browser.asked += 1;
        if (browser.agrees) browser.persisted = true;
        return browser.persisted;
      },
      estimate: async () => ({ usage: 2e6, quota: 2e6 + browser.freeBytes }),
    },
  });
  vi.stubGlobal("URL", Object.assign(URL, { createObjectURL: vi.fn(() => "blob:1") }));
  vi.spyOn(HTMLAnchorElement.prototype, "click").mockImplementation(function (
    this: HTMLAnchorElement,
  ) {
    const [[blob]] = vi.mocked(URL.createObjectURL).mock.calls.slice(-1) as [[Blob]];
    saved.push({ name: this.download, blob });
  });
});

afterEach(() => {
  cleanup();
  takeInstallOffer();
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

const gap = { texts: ["21"], unit: "mm" as const, tol: "1" };
const measured = (name: string): StoredCheck => setEntry(newStoredCheck(name), "left.gap", gap);
/** With an answer: complete. */
const answered = (name: string): StoredCheck => ({ ...measured(name), lastVerdict: "ok" });

/** The browser clears what is in its database; what is beside it stays. */
function clearChecks(): void {
  const counted = localStorage.getItem("stopfit.checks");
  freshPhone();
  if (counted !== null) localStorage.setItem("stopfit.checks", counted);
}

/** How many checks are kept, past the app. */
async function count(): Promise<number> {
  const store = await openStore();
  const list = await store.list();
  store.close();
  return list.ok ? list.value.length : -1;
}

async function chooseBackup(file: File): Promise<void> {
  const input = (await screen.findByLabelText("Backup to restore")) as HTMLInputElement;
  Object.defineProperty(input, "files", { value: [file], configurable: true });
  fireEvent.change(input);
}

describe("the list", () => {
  it("reminds of a backup while the browser may clear checks that are nowhere else", async () => {
    await keep(answered("Tern"), answered("Brant"));
    startApp();
    await screen.findByText(/2 checks exist only on this phone. This browser may clear them/);
    // The browser was asked, once, now that there is something to keep.
    expect(browser.asked).toBe(1);
    await tap("Save a backup");
    await screen.findByText(/The backup is ready/);
    expect(saved.map(({ name }) => name)).toEqual([expect.stringMatching(/^stopfit-backup-/)]);
    expect(await saved[0]?.blob.text()).toContain('"name":"Tern"');
    cleanup();
    startApp();
    await screen.findByText("Tern");
    await new Promise((resolve) => setTimeout(resolve, 100));
    expect(screen.queryByText(/only on this phone/)).toBeNull();
  });

  it("waits until a check is complete", async () => {
    await keep(measured("Tern"));
    startApp();
    await screen.findByText("Tern");
    await waitFor(() => expect(browser.asked).toBe(1));
    expect(screen.queryByText(/only on this phone/)).toBeNull();
  });

  it("does not where the browser agrees to keep them, where all were sent, or nothing was measured", async () => {
    browser.agrees = true;
    const tern = answered("Tern");
    await keep(tern);
    startApp();
    await screen.findByText("Tern");
    await waitFor(() => expect(browser.asked).toBe(1));
    expect(screen.queryByText(/only on this phone/)).toBeNull();
    cleanup();
    browser = { ...browser, persisted: false, agrees: false };
    await markSent(tern);
    await keep(newStoredCheck());
    startApp();
    await screen.findByText("Tern");
    await new Promise((resolve) => setTimeout(resolve, 100));
    expect(screen.queryByText(/only on this phone/)).toBeNull();
  });

  it("reminds as well when space is short, though the browser keeps them for good", async () => {
    browser.persisted = true;
    browser.freeBytes = 20e6;
    await keep(answered("Tern"));
    startApp();
    await screen.findByText(/This phone is short of space: 20 MB are left for Stopfit/);
  });

  it("says that checks were cleared, once there were some, and leads to the restore", async () => {
    await keep(measured("Tern"));
    startApp();
    await screen.findByText("Tern");
    await waitFor(() => expect(localStorage.getItem("stopfit.checks")).toBe("1"));
    cleanup();
    clearChecks();
    startApp();
    await screen.findByText(/There was 1 check on this phone, and nothing is here now/);
    fireEvent.click(screen.getByRole("link", { name: "Restore a backup" }));
    await heading("Saved & backup");
  });

  it("says so as well where the check was only ever opened, never seen on the list", async () => {
    const tern = measured("Tern");
    await keep(tern);
    startApp(stepHref(tern.id, "vehicle"));
    await heading("The vehicle");
    cleanup();
    clearChecks();
    startApp();
    await screen.findByText(/There was 1 check on this phone, and nothing is here now/);
  });

  it("counts a new check at once, before any list has it", async () => {
    await keep(measured("Tern"));
    startApp();
    await screen.findByText("Tern");
    await tap(/^(New|Full) check/);
    await heading("The vehicle");
    expect(localStorage.getItem("stopfit.checks")).toBe("2");
  });

  it("does not say so of a check that was never kept", async () => {
    vi.stubGlobal("indexedDB", undefined);
    startApp();
    await tap(/^(New|Full) check/);
    await heading("The vehicle");
    expect(localStorage.getItem("stopfit.checks")).toBeNull();
    cleanup();
    clearChecks();
    startApp();
    await screen.findByText("Will this bump stop work on your vehicle?");
    await new Promise((resolve) => setTimeout(resolve, 100));
    expect(screen.queryByText(/on this phone, and nothing is here now/)).toBeNull();
  });

  it("does not say so after the person deleted them for good", async () => {
    await keep(measured("Tern"));
    startApp();
    await waitFor(() => expect(localStorage.getItem("stopfit.checks")).toBe("1"));
    await tap("More for Tern");
    await tap("Delete");
    await tap("Delete for good");
    const dialog = within(await screen.findByRole("dialog"));
    fireEvent.click(dialog.getByRole("button", { name: "Delete for good" }));
    await waitFor(() => expect(screen.queryByText("Tern")).toBeNull());
    await waitFor(() => expect(localStorage.getItem("stopfit.checks")).toBe("0"));
    cleanup();
    startApp();
    await screen.findByText("Will this bump stop work on your vehicle?");
    await new Promise((resolve) => setTimeout(resolve, 100));
    expect(screen.queryByText(/There was 1 check/)).toBeNull();
  });
});

describe("kept on this phone", () => {
  it("says by word whether the browser keeps it, and asks it on a tap", async () => {
    await keep(measured("Tern"));
    startApp("#/saved");
    await screen.findByText("The browser may clear the checks");
    browser.agrees = true;
    await tap("Ask the browser to save them for good");
    await screen.findByText("Saved for good");
    expect(
      screen.queryByRole("button", { name: "Ask the browser to save them for good" }),
    ).toBeNull();
    screen.getByText(/2.0 MB used, 5.0 GB left for Stopfit/);
  });

  it("says so when the browser does not agree, and when it does not tell", async () => {
    startApp("#/saved");
    await tap("Ask the browser to save them for good");
    await screen.findByText("Asked, and the browser has not agreed.");
    cleanup();
    vi.stubGlobal("navigator", { ...navigator, storage: undefined });
    startApp("#/saved");
    await screen.findByText("Can't tell whether the checks are saved for good");
  });

  it("offers to install where the browser does, once", async () => {
    holdInstallOffer();
    const offer = Object.assign(new Event("beforeinstallprompt", { cancelable: true }), {
      prompt: vi.fn(async () => ({ outcome: "accepted" })),
    });
    window.dispatchEvent(offer);
    expect(offer.defaultPrevented).toBe(true);
    browser.agrees = true;
    startApp("#/saved");
    await tap("Install Stopfit");
    await screen.findByText("Saved for good");
    expect(offer.prompt).toHaveBeenCalledTimes(1);
    expect(screen.queryByRole("button", { name: "Install Stopfit" })).toBeNull();
  });

  it("names what is nowhere else, saves it, and remembers when", async () => {
    await keep(measured("Tern"));
    startApp("#/saved");
    await screen.findByText(/No backup was made here yet. 1 check exists only on this phone/);
    screen.getByRole("link", { name: "Tern" });
    await tap("Save a backup");
    await screen.findByText(/Last backup: .*1 check here, nothing changed since/);
    cleanup();
    startApp("#/saved");
    await screen.findByText(/Last backup: /);
  });

  it("restores a backup: counts what was new, and says what is no backup", async () => {
    const tern = measured("Tern");
    await keep(tern);
    startApp("#/saved");
    await tap("Save a backup");
    await waitFor(() => expect(saved).toHaveLength(1));
    const text = (await saved[0]?.blob.text()) ?? "";
    cleanup();
    freshPhone();
    startApp("#/saved");
    await chooseBackup(new File(["{}"], "other.txt"));
    await screen.findByText(/This file is not a backup of Stopfit/);
    await chooseBackup(new File([text], "stopfit-backup.txt"));
    await screen.findByText("What is in this backup");
    screen.getByText("Tern");
    expect(await count()).toBe(0);
    await tap("Restore");
    await screen.findByText("Restored: 1 added.");
    expect((await kept(tern.id)).entries["left.gap"]).toEqual(gap);
    await tap("Take it back");
    await screen.findByText(/^Taken back/);
    expect(await count()).toBe(0);
    await chooseBackup(new File([text], "stopfit-backup.txt"));
    await tap("Restore");
    await screen.findByText(/^Restored/);
    await chooseBackup(new File([text.split("\n").slice(0, 2).join("\n")], "stopfit-backup.txt"));
    await screen.findByText(/cut short/);
    await screen.findByText("Nothing in it is new here.");
    await tap("Close");
    await screen.findByRole("button", { name: "Choose a backup" });
  });

  it("counts as a backup only once the browser has the file, at the desk too", async () => {
    await keep(measured("Tern"));
    vi.mocked(HTMLAnchorElement.prototype.click).mockImplementation(() => {
      throw new Error("refused");
    });
    const [checks, desk] = [await openStore(), await openDeskStore()];
    if (!desk.ok) throw new Error("no desk");
    await expect(saveBackupHere(checks)).rejects.toThrow("refused");
    await expect(saveBackup(desk.value)).rejects.toThrow("refused");
    checks.close();
    desk.value.close();
    const marks = new MarkStore();
    const known = await marks.safekeeping();
    marks.close();
    expect(known.ok && [known.value.lastBackupAt, known.value.safe.size]).toEqual([null, 0]);
  });

  it("takes no decisions from a backup but those that someone lets count", async () => {
    const at = "2099-01-01T00:00:00.000Z";
    const decision = { key: "d1", checkId: "c", submission: "s", kind: "accept", by: "Lind", at };
    const file = new File(
      [
        '{"format":"stopfit-backup","version":1,"kind":"header","createdAt":"2026-05-02T10:00:00.000Z"}\n',
        `${JSON.stringify({ kind: "decision", decision: { ...decision, note: "" } })}\n`,
        '{"kind":"end","lines":1}\n',
      ],
      "from-someone.txt",
    );
    const decisions = async () => {
      const desk = await openDeskStore();
      const found = desk.ok ? await desk.value.decisions() : null;
      if (desk.ok) desk.value.close();
      return found?.ok ? found.value : [];
    };
    startApp("#/saved");
    await chooseBackup(file);
    await screen.findByText("1 decision of a review desk");
    await tap("Restore");
    await screen.findByText(/^Restored/);
    expect(await decisions()).toEqual([]);
    await chooseBackup(file);
    await tick("Let them count here, marked “from a backup”");
    await tap("Restore");
    await waitFor(async () => expect(await decisions()).toHaveLength(1));
    const [kept] = await decisions();
    expect(kept?.fromBackup).toBeTruthy();
    expect((kept?.at ?? "") < "2099").toBe(true);
  });

  it("takes a backup that was opened from the list", async () => {
    await keep(measured("Tern"));
    startApp("#/saved");
    await tap("Save a backup");
    await waitFor(() => expect(saved).toHaveLength(1));
    const text = (await saved[0]?.blob.text()) ?? "";
    cleanup();
    freshPhone();
    startApp();
    await waitFor(() => expect(screen.getByRole("button", { name: "Open a file" })).toBeTruthy());
    const input = screen.getByLabelText("Files to open") as HTMLInputElement;
    await waitFor(() =>
      expect(
        (screen.getByRole("button", { name: "Open a file" }) as HTMLButtonElement).disabled,
      ).toBe(false),
    );
    const file = new File([text], "stopfit-backup-2026.txt", { type: "text/plain" });
    Object.defineProperty(input, "files", { value: [file], configurable: true });
    fireEvent.change(input);
    await screen.findByText("What is in this backup");
    expect(await count()).toBe(0);
    await tap("Cancel");
    expect(await count()).toBe(0);
  });
});

describe("what is safe", () => {
  it("is a check as it was sent; one reading more and it is not", async () => {
    const tern = measured("Tern");
    await markSent(tern);
    const marks = new MarkStore();
    const known = await marks.safekeeping();
    marks.close();
    if (!known.ok) throw new Error("not read");
    expect(onlyHere([tern], known.value)).toEqual([]);
    const moved = { ...tern, progress: { ...tern.progress, step: "answer" } };
    expect(onlyHere([{ ...moved, updatedAt: "2026-05-02T10:00:00.000Z" }], known.value)).toEqual(
      [],
    );
    const more = setEntry(tern, "right.gap", gap);
    expect(onlyHere([more], known.value)).toEqual([more]);
  });

  it("is asked of the browser again only after a week, or once the clock was set back", async () => {
    await keep(measured("Tern"));
    const marks = new MarkStore();
    const now = Date.now();
    const day = 86_400_000;
    await askNowAndThen(marks, now);
    await askNowAndThen(marks, now + 3 * day);
    expect(browser.asked).toBe(1);
    await askNowAndThen(marks, now + 8 * day);
    expect(browser.asked).toBe(2);
    marks.close();
  });

  it("survives a browser that throws when asked", async () => {
    vi.stubGlobal("navigator", {
      ...navigator,
      storage: { persisted: () => Promise.reject(new Error("no")) },
    });
    expect(await persistence()).toBe("unknown");
    expect([sizeText(10), sizeText(2.5e6), sizeText(150e6), sizeText(3.2e9)]).toEqual([
      "1 kB",
      "2.5 MB",
      "150 MB",
      "3.2 GB",
    ]);
  });
});

describe("a check that could not be kept", () => {
  it("is named on the list, and kept by trying again", async () => {
    await keep(measured("Tern"));
    const store = await openStore();
    const put = vi.spyOn(store, "put");
    put.mockResolvedValue({
      ok: false,
      fault: { code: "storeFull", sentence: ["Not saved: the storage of this phone is full."] },
    });
    const tern = measured("Brant");
    vi.spyOn(store, "unkept").mockImplementation(() =>
      put.getMockImplementation() === undefined ? [] : [tern],
    );
    const { render } = await import("@testing-library/preact");
    const { App } = await import("../../../src/screens/app.tsx");
    render(<App open={async () => ({ ok: true, value: store })} />);
    await screen.findByText("Not saved: Brant.");
    await tap("Try again");
    await screen.findByText(/the storage of this phone is full/);
    put.mockRestore();
    await tap("Try again");
    await waitFor(() => expect(screen.queryByText("Not saved: Brant.")).toBeNull());
  });
});
