import { IDBFactory } from "fake-indexeddb";
import { afterEach, beforeEach, vi } from "vitest";
import type { Outcome } from "../../../src/physics/outcome.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { type CheckStore, openCheckStore } from "../../../src/storage/checkStore.ts";

const opened: { close(): void }[] = [];

/** An empty browser before each test; after it all is closed and as it was. */
export function freshBrowsers(): void {
  beforeEach(() => {
    vi.stubGlobal("indexedDB", new IDBFactory());
    localStorage.clear();
  });
  afterEach(() => {
    for (const store of opened.splice(0)) store.close();
    vi.useRealTimers();
    vi.restoreAllMocks();
    vi.unstubAllGlobals();
  });
}

/** Closed after the test. */
export function closedLater<Store extends { close(): void }>(store: Store): Store {
  opened.push(store);
  return store;
}

export function value<Value>(outcome: Outcome<Value>): Value {
  if (!outcome.ok) throw new Error(inModelUnits(outcome.fault.sentence));
  return outcome.value;
}

/** One tab: a store of its own on the same database. */
export async function tab(): Promise<CheckStore> {
  return closedLater(value(await openCheckStore(inModelUnits)));
}
