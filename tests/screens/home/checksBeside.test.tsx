import "fake-indexeddb/auto";
import { cleanup, fireEvent, screen, waitFor, within } from "@testing-library/preact";
import { afterEach, beforeAll, beforeEach, expect, it, vi } from "vitest";
import {
  changeRecord,
  newStoredCheck,
  type StoredCheck,
} from "../../../src/records/check/storedCheck.ts";
import { CheckPlace } from "../../../src/screens/openCheck/openCheckScreen.ts";
import { freshPhone, heading, keep, kept, startApp, tap } from "../startApp.tsx";

// On a busy machine its modules alone can take longer than a test waits for a screen.
beforeAll(() => CheckPlace.preload(), 180_000);

beforeEach(freshPhone);

afterEach(() => {
  cleanup();
  vi.unstubAllGlobals();
});

/** A window so wide, that tells when it is drawn wider or narrower. */
function windowOf(width: number): (width: number) => void {
  let now = width;
  const listeners = new Set<() => void>();
  vi.stubGlobal("matchMedia", (query: string) => ({
    get matches() {
      const least = /min-width: (\d+)px/.exec(query)?.[1];
      return least !== undefined && now >= Number(least);
    },
    addEventListener: (_: string, listener: () => void) => listeners.add(listener),
    removeEventListener: (_: string, listener: () => void) => listeners.delete(listener),
  }));
  return (next) => {
    now = next;
    for (const listener of listeners) listener();
  };
}

function check(label: string, updatedAt: string): StoredCheck {
  const stored = changeRecord(newStoredCheck(label), (record) => ({
    ...record,
    vehicle: { ...record.vehicle, label },
  }));
  return { ...stored, createdAt: updatedAt, updatedAt };
}

const marlow = () => check("Marlow utility", "2026-05-01T08:00:00.000Z");
const brant = () => check("Brant pickup", "2026-05-02T08:00:00.000Z");

const pane = () => screen.findByRole("complementary", { name: "Checks on this phone" });
const rows = async () =>
  [...(await pane()).querySelectorAll(".check-name")].map((each) => each.textContent);
const current = async () =>
  [...(await pane()).querySelectorAll("[aria-current=page] .check-name")].map(
    (each) => each.textContent,
  );

it("stands beside an open check on a wide screen, marks it, and leads to the others", async () => {
  windowOf(1280);
  const [first, second] = [marlow(), brant()];
  await keep(first, second);
  startApp(`#/check/${first.id}/vehicle`);
  await heading("The vehicle");
  await waitFor(async () => expect(await current()).toEqual(["Marlow utility"]));
  const list = await pane();
  fireEvent.click(within(list).getByText("Brant pickup"));
  await waitFor(() => expect(location.hash).toContain(second.id));
  await waitFor(async () => expect(await current()).toEqual(["Brant pickup"]));
  await waitFor(() =>
    expect(screen.getByRole("textbox", { name: "Vehicle" })).toHaveProperty(
      "value",
      "Brant pickup",
    ),
  );
  // The same list as before: it was not drawn anew, so that it stays where it was scrolled to.
  expect(await pane()).toBe(list);
});

it("a check that is opened or changed keeps its row's place; its new name is told", async () => {
  windowOf(1280);
  const [first, second] = [marlow(), brant()];
  await keep(first, second);
  startApp(`#/check/${first.id}/vehicle`);
  await waitFor(async () => expect(await rows()).toHaveLength(2));
  const before = await rows();
  fireEvent.input(await screen.findByRole("textbox", { name: "Vehicle" }), {
    target: { value: "Marlow, blue" },
  });
  const renamed = before.map((name) => (name === "Marlow utility" ? "Marlow, blue" : name));
  await waitFor(async () => expect(await rows()).toEqual(renamed), { timeout: 10_000 });
  expect((await kept(first.id)).record.vehicle?.label).toBe("Marlow, blue");
});

it("deletes and begins checks like the list of the phone", async () => {
  windowOf(1280);
  const [first, second] = [marlow(), brant()];
  await keep(first, second);
  startApp(`#/check/${first.id}/vehicle`);
  await tap("More for Brant pickup");
  await tap("Delete");
  await waitFor(async () => expect(await rows()).toEqual(["Marlow utility"]));
  await tap("Undo");
  await waitFor(async () => expect(await rows()).toHaveLength(2));
  await tap("New check");
  await waitFor(() => expect(location.hash).not.toContain(first.id));
  await waitFor(async () => expect((await rows())[0]).toBe("No name yet"));
});

it("is there only where there is room; the open check stays as it is when the window is drawn", async () => {
  const draw = windowOf(800);
  const first = marlow();
  await keep(first, brant());
  startApp(`#/check/${first.id}/vehicle`);
  const field = await screen.findByRole("textbox", { name: "Vehicle" });
  expect(screen.queryByRole("complementary", { name: "Checks on this phone" })).toBeNull();
  draw(1280);
  await waitFor(async () => expect(await rows()).toHaveLength(2));
  expect(screen.getByRole("textbox", { name: "Vehicle" })).toBe(field);
  draw(1099);
  await waitFor(() =>
    expect(screen.queryByRole("complementary", { name: "Checks on this phone" })).toBeNull(),
  );
  expect(screen.getByRole("textbox", { name: "Vehicle" })).toBe(field);
});
