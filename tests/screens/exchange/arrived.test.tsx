import "fake-indexeddb/auto";
import { cleanup, screen, waitFor } from "@testing-library/preact";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { backupLineText } from "../../../src/records/backup/backupLine.ts";
import { newStoredCheck } from "../../../src/records/check/storedCheck.ts";
import { takeShare } from "../../../src/sharing/shareTarget.ts";
import { fakeCaches } from "../../support/fakeCaches.ts";
import { demoRecord } from "../answer/demoChecks.ts";
import { freshPhone, heading, openStore, startApp, tap } from "../startApp.tsx";

const scope = "https://stopfit.example/app/";

/** What a form on any page posts to the app, as its service worker takes it. */
async function post(...files: readonly File[]): Promise<void> {
  const { caches } = fakeCaches();
  vi.stubGlobal("caches", caches);
  const form = new FormData();
  for (const file of files) form.append("check", file);
  await takeShare(new Request(`${scope}receive`, { method: "POST", body: form }), caches, scope);
}

async function names(): Promise<string[]> {
  const store = await openStore();
  const list = await store.list();
  store.close();
  return list.ok ? list.value.map(({ name }) => name) : ["?"];
}

beforeEach(freshPhone);
afterEach(() => {
  cleanup();
  vi.unstubAllGlobals();
});

describe("a file that a page posted", () => {
  const planted = { ...newStoredCheck("Planted"), id: "\ud83d" };
  const backup = new File(
    [
      backupLineText({ kind: "header", createdAt: "2026-05-02T10:00:00.000Z" }),
      backupLineText({ kind: "check", check: planted }),
      backupLineText({ kind: "end", lines: 1 }),
    ],
    "holiday.txt",
  );

  it("is named and nothing more until someone looks at it; a backup is restored by a tap alone", async () => {
    await post(backup);
    startApp("#/received");
    await heading("Something was sent to Stopfit");
    screen.getByText("holiday.txt");
    expect(await names()).toEqual([]);
    await tap("Look at it");
    await screen.findByText("What is in this backup");
    screen.getByText("Planted");
    await screen.findByText(/opened from elsewhere/);
    expect(await names()).toEqual([]);
    await tap("Restore");
    await screen.findByText("Restored: 1 added.");
    cleanup();
    // Its id, half a letter, was made whole on the way in: the list is shown, and the check opens.
    startApp("#/");
    await screen.findByText("Planted");
    await heading(/^(Checks on this phone|Will this bump stop)/);
  });

  it("can be thrown away unread", async () => {
    await post(new File([JSON.stringify(demoRecord("arm-fits"))], "check.txt"));
    startApp("#/received");
    await tap("Throw it away");
    await heading(/^(Checks on this phone|Will this bump stop)/);
    expect(await names()).toEqual([]);
    cleanup();
    startApp("#/received");
    await screen.findByText(/Nothing was received/);
  });

  it("with a check is shown once it was looked at, and kept by a further tap", async () => {
    await post(new File([JSON.stringify(demoRecord("arm-fits"))], "check.txt"));
    startApp("#/received");
    await tap("Look at it");
    await heading("A check was sent to you");
    expect(await names()).toEqual([]);
    await tap("Save on this phone");
    await waitFor(async () =>
      expect(await names()).toEqual([demoRecord("arm-fits").vehicle.label]),
    );
  });
});
