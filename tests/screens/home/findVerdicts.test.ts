import "fake-indexeddb/auto";
import { IDBFactory } from "fake-indexeddb";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { State } from "../../../src/physics/fitment.ts";
import { newStoredCheck } from "../../../src/records/check/storedCheck.ts";
import { storedFromRecord } from "../../../src/records/filling/storedFromRecord.ts";
import { findVerdicts } from "../../../src/screens/home/findVerdicts.ts";
import { vectorExamples as vectors } from "../../vectors/vectors.ts";
import { demoNames, demoRecord } from "../answer/demoChecks.ts";
import { startDeskAssessor } from "../answer/dispatcherAssessor.ts";
import { openStore } from "../startApp.tsx";

beforeEach(() => {
  vi.stubGlobal("indexedDB", new IDBFactory());
});
afterEach(() => {
  vi.unstubAllGlobals();
});

/** The worst of the independent implementation's check states, shared/vectors: no > unsure > care > ok. */
function worst(id: string): State {
  const corners = vectors.find((vector) => vector.id === id)?.corners ?? [];
  const states: string[] = corners.flatMap((corner) => [
    corner.clearance,
    String(corner.earlyContact),
    String(corner.stiffness),
  ]);
  return (["no", "unsure", "care", "ok"] as const).find((state) => states.includes(state)) ?? "ok";
}

describe("the verdicts in the list", () => {
  it("are those of the independent implementation, and only for complete checks", async () => {
    const store = await openStore();
    const unfinished = newStoredCheck("Half done");
    await store.put(unfinished);
    for (const name of demoNames) await store.put(storedFromRecord(demoRecord(name)));
    const listed = await store.list();
    if (!listed.ok) throw new Error("not listed");
    const found = vi.fn();
    findVerdicts(store, listed.value, found, startDeskAssessor());
    await vi.waitFor(() => expect(found).toHaveBeenCalledTimes(demoNames.length), 60_000);
    for (const name of demoNames) {
      const { id } = demoRecord(name);
      const stored = await store.get(id);
      expect([name, stored.ok && stored.value?.lastVerdict]).toEqual([name, worst(id)]);
    }
    const half = await store.get(unfinished.id);
    expect(half.ok && half.value?.lastVerdict).toBeUndefined();
    store.close();
  });

  it("are not given to readings that were changed meanwhile", async () => {
    const store = await openStore();
    const stored = storedFromRecord(demoRecord("strut-too-stiff"));
    await store.put(stored);
    const found = vi.fn();
    findVerdicts(
      store,
      [{ ...stored, updatedAt: "2020-01-01T00:00:00Z" }],
      found,
      startDeskAssessor(),
    );
    await vi.waitFor(() => expect(found).toHaveBeenCalledTimes(1), 30_000);
    const kept = await store.get(stored.id);
    expect(kept.ok && kept.value?.lastVerdict).toBeUndefined();
    store.close();
  });
});
