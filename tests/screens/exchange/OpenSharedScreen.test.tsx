import "fake-indexeddb/auto";
import { cleanup, fireEvent, render, screen, waitFor, within } from "@testing-library/preact";
import { afterEach, describe, expect, it, vi } from "vitest";
import type { CheckRecord } from "../../../src/records/check/checkRecord.ts";
import { storedFromRecord } from "../../../src/records/filling/storedFromRecord.ts";
import OpenSharedScreen from "../../../src/screens/exchange/OpenSharedScreen.tsx";
import type { CheckStore } from "../../../src/storage/checkStore.ts";
import { demoRecord as anyDemoRecord } from "../../support/demoRecords.ts";
import { demoRecord } from "../answer/demoChecks.ts";
import { startDeskAssessor } from "../answer/dispatcherAssessor.ts";
import { freshStore, openedWith } from "./support.ts";

/** A paragraph with these words, the names in it isolated or not. */
const saying = (words: string) => (_: string, element: Element | null) =>
  element?.tagName === "P" && element.textContent?.includes(words) === true;

afterEach(cleanup);

async function show(record: CheckRecord, store: CheckStore, photosLeftOut = 0, waiting = 0) {
  const calls = {
    onOpen: vi.fn<(id: string) => void>(),
    onKept: vi.fn<(id: string) => void>(),
    onLeave: vi.fn(),
  };
  const view = render(
    <OpenSharedScreen
      shared={{ record, photosLeftOut }}
      opened={openedWith(store)}
      unit="mm"
      waiting={waiting}
      startAssessor={startDeskAssessor}
      {...calls}
    />,
  );
  await waitFor(() => {
    const main = document.querySelector(".action-bar .button-main");
    expect(main?.hasAttribute("disabled")).toBe(false);
  });
  return { ...view, ...calls };
}

async function listed(store: CheckStore, which?: "deleted") {
  const list = await store.list(which);
  if (!list.ok) throw new Error(list.fault.code);
  return list.value;
}

const record = demoRecord("strut-too-stiff");
const changed: CheckRecord = { ...record, notes: "Measured again." };

describe("a check that was sent", () => {
  it("is shown with who sent it, its readings and the verdict computed here", async () => {
    const author = { role: "customer", name: "A. Quill", contact: "quill@example.org" } as const;
    await show({ ...record, author }, await freshStore());
    const fact = (name: string) => screen.getByText(name, { selector: "dt" }).nextElementSibling;
    expect(fact("Vehicle")?.textContent).toBe(record.vehicle.label);
    expect(fact("From")?.textContent).toBe(
      "A. Quill, customer, quill@example.org, by what it says itself",
    );
    // stopLean; gap, ride height, mass and one limit a side; the stop's height.
    const { corners, layout } = record;
    const expected =
      Object.keys(layout.readings).length +
      corners.reduce((sum, corner) => sum + 3 + corner.limits.length, 0) +
      1;
    expect(fact("Readings")?.textContent).toBe(
      `${expected}, ${corners.length === 2 ? "both sides" : `${corners[0]?.side} side`}`,
    );
    await waitFor(() => screen.getByText("It doesn't fit"), { timeout: 15_000 });
  });

  it("does not believe a verdict that the file claims", async () => {
    const claims = { ...record, verdict: "ok", lastVerdict: "ok" } as CheckRecord;
    await show(claims, await freshStore());
    await waitFor(() => screen.getByText("It doesn't fit"), { timeout: 15_000 });
  });

  it("is judged by this phone's requirements, and what it claims itself is pointed out", async () => {
    const rules = { reserveMm: 0, allowedContactsPerKm: 1e6, accelerationCapG: 1e6, events: [] };
    const [corner, ...others] = record.corners;
    if (!corner) throw new Error("no corner");
    const rideHeight = { values: [500], tol: 0, typed: ["640 mm"] };
    await show(
      { ...record, rules, corners: [{ ...corner, rideHeight }, ...others] },
      await freshStore(),
    );
    await waitFor(() => screen.getByText("It doesn't fit"), { timeout: 15_000 });
    const claims = within(
      screen
        .getByRole("heading", { name: "Look at these first" })
        .closest("section") as HTMLElement,
    );
    claims.getByText(/The check's own reserve wanted: 0\.0.mm\. Judged here by/);
    claims.getByText(/“640 mm” was typed, but the value beside it is 500/);
    claims.getByText(/given as exact, ± 0/);
    claims.getByText(/its answer goes by its own requirements/);
  });

  it("is kept only when that is chosen, as the very same record", async () => {
    const store = await freshStore();
    const { onKept, onLeave } = await show(record, store);
    expect(await listed(store)).toEqual([]);
    fireEvent.click(screen.getByRole("button", { name: "Don't save" }));
    expect(onLeave).toHaveBeenCalledTimes(1);
    expect(await listed(store)).toEqual([]);
    fireEvent.click(screen.getByRole("button", { name: "Save on this phone" }));
    await waitFor(() => expect(onKept).toHaveBeenCalledWith(record.id));
    const [kept, ...others] = await listed(store);
    expect(others).toEqual([]);
    expect(kept?.record).toEqual(record);
    expect(kept?.progress.cautionsFor).toBeNull();
  });

  it("is opened, not kept twice, where it is here already", async () => {
    const store = await freshStore();
    await store.put(storedFromRecord(record, { name: "Mine" }));
    const { onOpen } = await show(record, store);
    screen.getByText(saying("You already have this check, as “Mine”"));
    fireEvent.click(screen.getByRole("button", { name: "Open the one here" }));
    expect(onOpen).toHaveBeenCalledWith(record.id);
    expect(await listed(store)).toHaveLength(1);
  });

  it("is the same check where only its cautions by hand were acknowledged again here", async () => {
    const sent = anyDemoRecord("checked-by-hand");
    if (!sent.fullTravel) throw new Error("no check by hand");
    const store = await freshStore();
    const fullTravel = { ...sent.fullTravel, acknowledged: "2027-03-02T08:00:00.000Z" };
    await store.put(storedFromRecord({ ...sent, fullTravel }, { name: "Mine" }));
    await show(sent, store);
    screen.getByText(saying("You already have this check, as “Mine”"));
    cleanup();
    await show({ ...sent, fullTravel: { ...fullTravel, measure: "wheelTravel" } }, store);
    screen.getByText(saying("Another version of this check is on this phone: “Mine”"));
  });

  it("is kept beside another version of itself, both as they are", async () => {
    const store = await freshStore();
    await store.put(storedFromRecord(record, { name: "Mine" }));
    const { onKept } = await show(changed, store);
    screen.getByText(saying("Another version of this check is on this phone: “Mine”"));
    fireEvent.click(screen.getByRole("button", { name: "Save both" }));
    await waitFor(() => expect(onKept).toHaveBeenCalled());
    const records = (await listed(store)).map((stored) => stored.record);
    expect(records).toHaveLength(2);
    expect(records).toEqual(expect.arrayContaining([record, changed]));
  });

  it("takes the place of another version only after a question, and that can be undone", async () => {
    const store = await freshStore();
    await store.put(storedFromRecord(record, { name: "Mine" }));
    const { onKept } = await show(changed, store);
    fireEvent.click(screen.getByRole("button", { name: "Replace the one here" }));
    const dialog = within(screen.getByRole("dialog"));
    fireEvent.click(dialog.getByRole("button", { name: "Cancel" }));
    expect((await listed(store)).map((stored) => stored.record)).toEqual([record]);
    fireEvent.click(screen.getByRole("button", { name: "Replace the one here" }));
    fireEvent.click(within(screen.getByRole("dialog")).getByRole("button", { name: "Replace" }));
    await waitFor(() => expect(onKept).toHaveBeenCalledWith(record.id));
    const [present, ...others] = await listed(store);
    expect(others).toEqual([]);
    expect(present).toMatchObject({ id: record.id, name: "Mine", record: changed });
    const [aside] = await listed(store, "deleted");
    expect(aside?.record).toEqual(record);
    await store.restore(aside?.id ?? "");
    expect(await listed(store)).toHaveLength(2);
  });

  it("is kept beside a deleted check of the same id, which stays as it was", async () => {
    const store = await freshStore();
    await store.put(storedFromRecord(record));
    await store.remove(record.id);
    const { onKept } = await show(changed, store);
    fireEvent.click(screen.getByRole("button", { name: "Save on this phone" }));
    await waitFor(() => expect(onKept).toHaveBeenCalled());
    expect((await listed(store)).map((stored) => stored.record)).toEqual([changed]);
    expect((await listed(store, "deleted")).map((stored) => stored.record)).toEqual([record]);
  });

  it("says which photos are missing", async () => {
    await show(record, await freshStore(), 3);
    expect(screen.getByText(/3 photos were left out/)).toBeTruthy();
  });

  it("shows scripts in its texts as text", async () => {
    const script = "<script>globalThis.harmed = true</script><img src=x onerror=alert(1)>";
    const { container } = await show(
      {
        ...record,
        vehicle: { ...record.vehicle, label: script },
        author: { role: "installer", name: script, contact: script },
        stop: { ...record.stop, name: script },
        notes: script,
      },
      await freshStore(),
    );
    expect(container.querySelectorAll("script, img")).toHaveLength(0);
    expect(screen.getAllByText(script).length).toBeGreaterThanOrEqual(3);
    expect("harmed" in globalThis).toBe(false);
  });

  it("says why it was not kept", async () => {
    const store = await freshStore();
    await show(record, store);
    vi.spyOn(store, "add").mockResolvedValue({
      ok: false,
      fault: { code: "storeFull", sentence: ["Not saved: this phone is full."] },
    });
    fireEvent.click(screen.getByRole("button", { name: "Save on this phone" }));
    await waitFor(() => screen.getByText("Not saved: this phone is full."));
  });
});
