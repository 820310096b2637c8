import { cleanup, fireEvent, render, screen, waitFor } from "@testing-library/preact";
import { IDBFactory } from "fake-indexeddb";
import { vi } from "vitest";
import type { StoredCheck } from "../../src/records/check/storedCheck.ts";
import { inModelUnits } from "../../src/saying/modelUnits.ts";
import { App } from "../../src/screens/app.tsx";
import { changePreferences, forgetPreferencesInMemory } from "../../src/screens/preferences.ts";
import { type CheckStore, openCheckStore } from "../../src/storage/checkStore.ts";

/** A phone with nothing on it, its person at home in millimeters. */
export function freshPhone(): void {
  vi.stubGlobal("indexedDB", new IDBFactory());
  // Nothing is laid out here: whatever stands on a screen counts as seen.
  vi.stubGlobal("IntersectionObserver", undefined);
  localStorage.clear();
  forgetPreferencesInMemory();
  changePreferences({ length: "mm" });
  location.hash = "";
}

export async function openStore(): Promise<CheckStore> {
  const opened = await openCheckStore(inModelUnits);
  if (!opened.ok) throw new Error("the store did not open");
  return opened.value;
}

export async function keep(...checks: readonly StoredCheck[]): Promise<void> {
  const store = await openStore();
  for (const stored of checks) await store.put(stored);
  store.close();
}

/** What is kept of a check, once the app has kept what it was given. */
export async function kept(id: string): Promise<StoredCheck> {
  const store = await openStore();
  const found = await store.get(id);
  store.close();
  if (!found.ok || !found.value) throw new Error(`no check ${id}`);
  return found.value;
}

export function startApp(hash = ""): void {
  location.hash = hash;
  render(<App />);
}

/** As after a reload: the page is gone, what the phone keeps is there. */
export async function reload(): Promise<void> {
  const { hash } = location;
  await waitFor(() => screen.getByText("Saved"));
  cleanup();
  startApp(hash);
}

export const heading = (name: string | RegExp) => screen.findByRole("heading", { level: 1, name });

export async function tap(name: string | RegExp, role = "button"): Promise<void> {
  const target = await screen.findByRole(role, { name });
  await waitFor(() => {
    const waits = target.getAttribute("aria-disabled") === "true";
    if (waits || (target as HTMLButtonElement).disabled)
      throw new Error(`${name} can't be tapped yet`);
  });
  fireEvent.click(target);
}

export async function choose(name: string | RegExp): Promise<void> {
  fireEvent.click(await screen.findByRole("radio", { name }));
}

export async function tick(name: string | RegExp): Promise<void> {
  fireEvent.click(await screen.findByRole("checkbox", { name }));
}

export async function type(label: string | RegExp, text: string): Promise<HTMLInputElement> {
  const input = (await screen.findByLabelText(label)) as HTMLInputElement;
  fireEvent.input(input, { target: { value: text } });
  return input;
}
