import { act, cleanup, fireEvent, render, screen, waitFor } from "@testing-library/preact";
import { afterEach, describe, expect, it, vi } from "vitest";
import type { CheckRecord } from "../../../src/records/check/checkRecord.ts";
import { readCheckText } from "../../../src/records/check/readCheck.ts";
import SendSheet from "../../../src/screens/exchange/SendSheet.tsx";
import { checkOfText } from "../../../src/sharing/receivedFile.ts";
import { demoRecord } from "../answer/demoChecks.ts";
import { onePixelPhoto, shareSheet, withNavigator, wordsOf } from "./support.ts";

let restore: (() => void)[] = [];
afterEach(() => {
  cleanup();
  for (const undo of restore) undo();
  restore = [];
  vi.useRealTimers();
});

function show(record: CheckRecord) {
  const onLeave = vi.fn();
  return { ...render(<SendSheet record={record} unit="mm" onLeave={onLeave} />), onLeave };
}

const choose = (way: "File" | "Link" | "Code") =>
  fireEvent.click(screen.getByRole("radio", { name: way }));

async function tap(button: HTMLElement) {
  await act(async () => {
    fireEvent.click(button);
    await Promise.resolve();
  });
}

async function pass(ms: number) {
  await act(async () => {
    await vi.advanceTimersByTimeAsync(ms);
  });
}

const withPhotos: CheckRecord = {
  ...demoRecord("arm-fits"),
  photos: [onePixelPhoto, onePixelPhoto],
};
const long: CheckRecord = {
  ...demoRecord("arm-fits"),
  notes: wordsOf(2400),
};

describe("to the maker of the pack", () => {
  const mail = () => screen.getByRole<HTMLAnchorElement>("link", { name: "Write the mail" }).href;

  it("goes by mail, never to the postal address; a link stands in the mail itself", async () => {
    show(demoRecord("arm-fits"));
    screen.getByText(/Attach the file to a mail to Halden Lane Garage/);
    expect(screen.queryByText(/4 Halden Lane/)).toBeNull();
    expect(mail()).toMatch(/^mailto:parts%40haldenlane\.example\?subject=Fitment%20check/);
    choose("Link");
    screen.getByText(/Mail the link to Halden Lane Garage/);
    expect(decodeURIComponent(mail())).toContain("#/open/2b");
    choose("Code");
    expect(screen.queryByRole("link", { name: "Write the mail" })).toBeNull();
  });
});

describe("as a file", () => {
  it("hands one text file with everything, photos too, to the share sheet", async () => {
    const sheet = shareSheet(["text/plain"], () => Promise.resolve());
    restore.push(withNavigator(sheet));
    show(withPhotos);
    fireEvent.click(screen.getByRole("button", { name: "Share the file" }));
    // Within the very turn of the tap, or browsers refuse.
    expect(sheet.share).toHaveBeenCalledTimes(1);
    const [file] = sheet.handed[0]?.files ?? [];
    expect(file?.type).toBe("text/plain");
    expect(file?.name).toMatch(/^stopfit-.*\.txt$/);
    expect(readCheckText((await file?.text()) ?? "")).toEqual({ ok: true, value: withPhotos });
    await waitFor(() => screen.getByText("The file was handed to what you chose."));
  });

  it("says nothing of a sheet that was closed, and says so when it does not open", async () => {
    const errors = ["AbortError", "NotAllowedError"];
    const sheet = shareSheet(["text/plain"], () =>
      Promise.reject(Object.assign(new Error("no"), { name: errors.shift() })),
    );
    restore.push(withNavigator(sheet));
    show(demoRecord("arm-fits"));
    const button = screen.getByRole("button", { name: "Share the file" });
    await tap(button);
    expect(screen.queryByRole("status")).toBeNull();
    await tap(button);
    expect(screen.getByRole("status").textContent).toContain("did not open. Save the file");
  });

  it.each([
    ["has no share sheet", {}],
    ["shares no files", shareSheet([], () => Promise.resolve())],
  ])("is only saved where the device %s", (_, navigatorParts) => {
    restore.push(withNavigator({ share: undefined, canShare: undefined, ...navigatorParts }));
    show(demoRecord("arm-fits"));
    expect(screen.queryByRole("button", { name: "Share the file" })).toBeNull();
    expect(screen.getByRole("button", { name: "Save the file" }).className).toContain("main");
  });
});

describe("as a link", () => {
  it("copies a link that gives the very same record", async () => {
    const writeText = vi.fn((_: string) => Promise.resolve());
    restore.push(withNavigator({ clipboard: { writeText }, share: undefined }));
    const record = demoRecord("axle-towing-early");
    show(record);
    choose("Link");
    await tap(screen.getByRole("button", { name: "Copy the link" }));
    const [text = ""] = writeText.mock.calls[0] ?? [];
    expect(text.startsWith(`${location.origin}${location.pathname}#/open/`)).toBe(true);
    expect(checkOfText({ what: "The text", text })).toEqual({
      ok: true,
      value: { record, photosLeftOut: 0 },
    });
    expect(screen.getByText("The link is copied. Paste it into a message.")).toBeTruthy();
  });

  it("shows the link to copy by hand where the browser does not copy", async () => {
    const writeText = () => Promise.reject(new Error("no"));
    restore.push(withNavigator({ clipboard: { writeText }, share: undefined }));
    show(demoRecord("arm-fits"));
    choose("Link");
    await tap(screen.getByRole("button", { name: "Copy the link" }));
    const field = screen.getByLabelText<HTMLTextAreaElement>("Link to this check");
    expect(field.value).toContain("#/open/2b");
    expect(field.closest("details")?.open).toBe(true);
  });

  it("says before it is sent that photos stay behind, and how many", () => {
    show(withPhotos);
    choose("Link");
    expect(screen.getByText(/The 2 photos do not fit in a link and stay behind/)).toBeTruthy();
    choose("Code");
    expect(screen.getByText(/The 2 photos do not fit in a code and stay behind/)).toBeTruthy();
  });

  it("warns of a link that programs for messages may cut", () => {
    show(long);
    choose("Link");
    expect(screen.getByText(/some programs for messages cut links that long/)).toBeTruthy();
  });
});

describe("as a code", () => {
  it("is one code where one can be scanned", () => {
    show(demoRecord("arm-fits"));
    choose("Code");
    expect(screen.getByRole("img", { name: "QR code of this check" })).toBeTruthy();
    expect(screen.queryByRole("button", { name: "Next" })).toBeNull();
  });

  it("is numbered codes where one would be too dense, gone through by hand", () => {
    show(long);
    choose("Code");
    const { textContent } = screen.getByText(/^Code 1 of \d+$/);
    const count = Number(textContent?.split(" of ")[1]);
    expect(count).toBeGreaterThan(1);
    const path = () => screen.getByRole("img").querySelector("path")?.getAttribute("d");
    const seen = new Set<string>();
    for (let number = 1; number <= count; number += 1) {
      expect(screen.getByText(`Code ${number} of ${count}`)).toBeTruthy();
      seen.add(path() ?? "");
      fireEvent.click(screen.getByRole("button", { name: "Next" }));
    }
    expect(seen.size).toBe(count);
    expect(screen.getByText(`Code 1 of ${count}`)).toBeTruthy();
    fireEvent.click(screen.getByRole("button", { name: "Back" }));
    expect(screen.getByText(`Code ${count} of ${count}`)).toBeTruthy();
  });

  it("runs through them by itself until it is stopped", async () => {
    vi.useFakeTimers();
    show(long);
    choose("Code");
    fireEvent.click(screen.getByRole("button", { name: "Run through" }));
    await pass(2100);
    expect(screen.getByText(/^Code 2 of/)).toBeTruthy();
    fireEvent.click(screen.getByRole("button", { name: "Stop" }));
    await pass(10_000);
    expect(screen.getByText(/^Code 2 of/)).toBeTruthy();
  });

  it("says that another way is needed where no series of codes would do", () => {
    show({ ...demoRecord("arm-fits"), notes: wordsOf(19_000) });
    choose("Code");
    expect(screen.getByRole("status").textContent).toContain("Send it as a file or a link");
    expect(screen.queryByRole("img")).toBeNull();
  });
});

it("shows a label with a script in it as text", () => {
  const record = demoRecord("arm-fits");
  const label = "<img src=x onerror=alert(1)><script>alert(1)</script>";
  const { container } = show({ ...record, vehicle: { ...record.vehicle, label } });
  expect(screen.getByText(label)).toBeTruthy();
  expect(container.querySelector("script, img[src]")).toBeNull();
});
