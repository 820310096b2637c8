import "fake-indexeddb/auto";
import { IDBFactory } from "fake-indexeddb";
import { afterEach, beforeEach, expect, it, vi } from "vitest";
import type { Job } from "../../src/records/check/checkRecord.ts";
import { newStoredCheck } from "../../src/records/check/storedCheck.ts";
import { withJob } from "../../src/records/filling/job.ts";
import { inModelUnits } from "../../src/saying/modelUnits.ts";
import { type CheckStore, openCheckStore } from "../../src/storage/checkStore.ts";
import { keepJobAlike } from "../../src/storage/jobs.ts";

let store: CheckStore;

beforeEach(async () => {
  vi.stubGlobal("indexedDB", new IDBFactory());
  const opened = await openCheckStore(inModelUnits);
  if (!opened.ok) throw new Error("the store did not open");
  store = opened.value;
});

afterEach(() => {
  store.close();
  vi.unstubAllGlobals();
});

it("gives name, number and customer to every check of the job, to no other, and leaves their moments", async () => {
  const job: Job = { id: "j1", label: "Brant", number: "1" };
  const before = withJob(newStoredCheck("a"), { ...job, moment: "before" });
  const after = withJob(newStoredCheck("b"), { ...job, moment: "after" });
  const elsewhere = withJob(newStoredCheck("c"), { id: "j2", label: "Tern" });
  const alone = newStoredCheck("d");
  for (const stored of [before, after, elsewhere, alone]) await store.put(stored);
  const named: Job = { id: "j1", label: "Brant pickup", customer: "I. Farrow", moment: "before" };
  expect(await keepJobAlike(store, named)).toEqual({ ok: true, value: 2 });
  const jobs = await Promise.all(
    [before, after, elsewhere, alone].map(async ({ id }) => {
      const found = await store.get(id);
      return found.ok ? found.value?.record.job : null;
    }),
  );
  const { moment: _, ...facts } = named;
  expect(jobs).toEqual([
    { ...facts, moment: "before" },
    { ...facts, moment: "after" },
    elsewhere.record.job,
    undefined,
  ]);
  expect(await keepJobAlike(store, named)).toEqual({ ok: true, value: 0 });
});

it("is a fault where the checks can't be listed, or one of them not be kept", async () => {
  const job: Job = { id: "j1", label: "Brant", number: "1" };
  await store.put(withJob(newStoredCheck("a"), job));
  const fault = { code: "storeFull", sentence: ["Full."] };
  const update = vi.spyOn(store, "update").mockResolvedValue({ ok: false, fault });
  expect(await keepJobAlike(store, { ...job, label: "Tern" })).toEqual({ ok: false, fault });
  expect(update).toHaveBeenCalledTimes(1);
  vi.spyOn(store, "list").mockResolvedValue({ ok: false, fault });
  expect(await keepJobAlike(store, job)).toEqual({ ok: false, fault });
});
