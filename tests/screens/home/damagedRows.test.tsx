import "fake-indexeddb/auto";
import { cleanup, screen, waitFor } from "@testing-library/preact";
import { openDB } from "idb";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { newStoredCheck } from "../../../src/records/check/storedCheck.ts";
import { databaseName, databaseVersion } from "../../../src/storage/database.ts";
import { freshPhone, heading, keep, startApp, tap } from "../startApp.tsx";

beforeEach(freshPhone);
afterEach(() => {
  cleanup();
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

async function putRow(row: unknown): Promise<void> {
  const database = await openDB(databaseName, databaseVersion);
  await database.put("checks", row);
  database.close();
}

describe("the list", () => {
  it("is shown with a check whose id is half a letter, which opens", async () => {
    const stored = newStoredCheck("Tern");
    await keep(newStoredCheck("Brant"));
    await putRow({ ...stored, id: "\ud83d", record: { ...stored.record, id: "\ud83d" } });
    startApp();
    await heading(/^(Checks on this phone|Will this bump stop)/);
    await screen.findByText("Brant");
    const link = (await screen.findByText("Tern")).closest("a") as HTMLAnchorElement;
    cleanup();
    startApp(link.getAttribute("href") ?? "");
    await waitFor(() => expect(screen.getAllByRole("heading", { level: 1 })).toHaveLength(1));
    expect(screen.queryByText(/can't be shown|nothing at this address/)).toBeNull();
  });

  it("sets a damaged row aside: it is saved, and deleted once that is confirmed", async () => {
    await keep(newStoredCheck("Brant"));
    await putRow({ id: 7, name: "Osprey", record: 5 });
    const saved = vi.fn((_: Blob) => "blob:1");
    vi.stubGlobal("URL", Object.assign(URL, { createObjectURL: saved }));
    vi.spyOn(HTMLAnchorElement.prototype, "click").mockImplementation(() => undefined);
    startApp();
    await screen.findByText("Osprey");
    screen.getByText("Brant");
    await tap("Save what is left of Osprey");
    await waitFor(() => expect(saved).toHaveBeenCalled());
    expect(await saved.mock.calls[0]?.[0].text()).toContain('"Osprey"');
    await tap("Delete Osprey");
    expect(screen.getByText("Osprey")).toBeTruthy();
    await tap("Delete for good");
    await waitFor(() => expect(screen.queryByText("Osprey")).toBeNull());
    screen.getByText("Brant");
  });

  it("says that a damaged row is not saved where the share sheet was closed", async () => {
    await keep(newStoredCheck("Brant"));
    await putRow({ id: 7, name: "Osprey", record: 5 });
    vi.stubGlobal("navigator", {
      ...navigator,
      standalone: true,
      canShare: () => true,
      share: () => Promise.reject(new DOMException("Closed.", "AbortError")),
    });
    startApp();
    await screen.findByText("Osprey");
    await tap("Save what is left of Osprey");
    await screen.findByText(/^The file is not saved: you closed the share sheet/);
  });
});
