import { cleanup, fireEvent, render, screen } from "@testing-library/preact";
import { afterEach, expect, it, vi } from "vitest";
import { ImportPanel } from "../../../src/screens/desk/ImportPanel.tsx";
import { type ImportProgress, nothingYet } from "../../../src/screens/desk/importRun.ts";
import type { Desk } from "../../../src/screens/desk/useDesk.ts";

afterEach(cleanup);

function deskOf(importing: Partial<ImportProgress> | null, change: Partial<Desk> = {}): Desk {
  return {
    store: null,
    fault: null,
    checks: [],
    first: null,
    decisions: [],
    shared: null,
    importing: importing && { ...nothingYet, ...importing },
    dropped: null,
    computing: false,
    stopped: false,
    take: vi.fn(),
    stopImport: vi.fn(),
    closeImport: vi.fn(),
    forgetDropped: vi.fn(),
    backup: null,
    forgetBackup: vi.fn(),
    compute: vi.fn(),
    stopComputing: vi.fn(),
    decide: vi.fn(),
    ...change,
  };
}

const show = (desk: Desk) => render(<ImportPanel desk={desk} unit="mm" />);

it("tells while files are read, and stops on a tap", () => {
  const desk = deskOf({ state: "reading", total: 1234 });
  show(desk);
  screen.getByText("Reading: 1,234 files so far.");
  fireEvent.click(screen.getByRole("button", { name: "Stop" }));
  expect(desk.stopImport).toHaveBeenCalledOnce();
});

it("tells how far it is, and of what was taken in", () => {
  show(
    deskOf({ state: "running", total: 200, through: 50, added: 40, present: 8, refusedCount: 2 }),
  );
  screen.getByText("Taking in: 40 checks added, 8 here already, 2 not taken in.");
  const progress = screen.getByLabelText<HTMLProgressElement>("How far the import is");
  expect([progress.value, progress.max]).toEqual([50, 200]);
});

it("names every file that was not taken in, and how many more there are", () => {
  const refused = [{ name: "cut.json", sentence: ["The file is cut off."] }];
  const desk = deskOf({ state: "ended", added: 1, refusedCount: 3, refused });
  show(desk);
  screen.getByText("cut.json");
  screen.getByText("And 2 more files.");
  fireEvent.click(screen.getByRole("button", { name: "Close" }));
  expect(desk.closeImport).toHaveBeenCalledOnce();
});

it("says that an import goes on after its page was closed", () => {
  show(deskOf({ state: "running", total: 9, resumed: "2026-05-02T10:00:00.000Z" }));
  screen.getByText(
    /was started May 2, 2026, .*; its page was closed, and it went on here by itself\./,
  );
});

it("says that nothing was taken in of one whose files were not all read", () => {
  const desk = deskOf(null, { dropped: "2026-05-02T10:00:00.000Z" });
  show(desk);
  screen.getByText(/Nothing of it was taken in\. Choose the files again\./);
  fireEvent.click(screen.getByRole("button", { name: "All right" }));
  expect(desk.forgetDropped).toHaveBeenCalledOnce();
});

it("says why it failed, and that what is not taken in yet is kept", () => {
  const fault = { code: "storeFull", sentence: ["There is no room left on this device."] };
  show(deskOf({ state: "failed", fault, total: 10, through: 4 }));
  screen.getByText("There is no room left on this device.");
  screen.getByText(/taken in when the review desk is opened again/);
});
