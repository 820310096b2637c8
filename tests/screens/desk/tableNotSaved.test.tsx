import { withShareSheet } from "../shareSheet.ts";
import "fake-indexeddb/auto";
import { act, fireEvent, screen, waitFor } from "@testing-library/preact";
import { describe, expect, it, vi } from "vitest";
import { demoRecord } from "../answer/demoChecks.ts";
import { deskWith } from "./support.tsx";

// An Apple phone's installed app saves by the share sheet, which a person may close.

const notSaved =
  "The table is not saved: you closed the share sheet. Save it again and choose a place for it.";

const sheet = withShareSheet(true);
vi.setConfig({ testTimeout: 60_000 });

/** Saves with the share sheet closed, then once more with a place chosen. */
async function saveTwice(button: string): Promise<void> {
  const save = await waitFor(() => {
    const found = screen.getByRole<HTMLButtonElement>("button", { name: button });
    expect(found.disabled).toBe(false);
    return found;
  });
  fireEvent.click(save);
  await screen.findByText(notSaved);
  expect(sheet.shared).toEqual([]);
  sheet.isClosed = false;
  fireEvent.click(screen.getByRole("button", { name: button }));
  await waitFor(() => expect(screen.queryByText(notSaved)).toBeNull());
  expect(sheet.shared).toHaveLength(1);
}

const record = demoRecord("arm-fits");

describe("a table whose share sheet is closed is said not to be saved", () => {
  it("of all checks", async () => {
    const desk = await deskWith(record);
    desk.show({ place: "list" });
    await saveTwice("Save a table (CSV)");
    expect(sheet.shared[0]).toMatch(/^stopfit-figures-.*\.csv$/);
  });

  it("of where a part went", async () => {
    const fitted = { partNumber: "HL-1052", spacerMm: 0, at: "2026-05-31T12:00:00Z", by: "Ada" };
    const desk = await deskWith({ ...record, fitted });
    desk.show({ place: "parts" });
    const number = await screen.findByLabelText("Part number");
    await act(async () => {
      fireEvent.input(number, { target: { value: "HL-1052" } });
    });
    const look = () =>
      screen.getByRole<HTMLButtonElement>("button", { name: "Look through all checks" });
    await waitFor(() => expect(look().disabled).toBe(false));
    fireEvent.click(look());
    await saveTwice("Save a table (CSV)");
    expect(sheet.shared[0]).toMatch(/^stopfit-parts-.*\.csv$/);
  });

  it("of what the checks tell", async () => {
    const desk = await deskWith(record);
    desk.show({ place: "findings" });
    await saveTwice("Save the tables (CSV)");
    expect(sheet.shared[0]).toMatch(/\.csv$/);
  });
});
