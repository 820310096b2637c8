import "fake-indexeddb/auto";
import { cleanup, screen, waitFor } from "@testing-library/preact";
import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { changeProgress } from "../../../src/records/check/storedCheck.ts";
import { storedFromRecord } from "../../../src/records/filling/storedFromRecord.ts";
import { changePreferences, measurerNow } from "../../../src/screens/preferences.ts";
import { demoRecord } from "../answer/demoChecks.ts";
import { freshPhone, keep, kept, startApp, tap, type } from "../startApp.tsx";

beforeEach(freshPhone);
afterEach(() => {
  cleanup();
  vi.unstubAllGlobals();
});

const hour = 3_600_000;
const ago = (hours: number) => new Date(Date.now() - hours * hour).toISOString();
const stored = changeProgress(storedFromRecord(demoRecord("arm-fits")), {
  cautionsFor: "level",
});

it("a shared phone asks who measures once the last name is a day old, and the reading has the new one", async () => {
  changePreferences({
    shared: true,
    author: { role: "installer", name: "Ada", contact: "ada@garage.example" },
    authorAt: ago(25),
  });
  expect(measurerNow()).toBeNull();
  await keep(stored);
  startApp(`#/check/${stored.id}/left.gap`);
  await type("Who measures now?", "Bo");
  await tap("Measure as Bo");
  await waitFor(() => expect(screen.queryByLabelText("Who measures now?")).toBeNull());
  expect(measurerNow()).toBe("Bo");
  await type("Left gap, time 1", "19");
  await waitFor(async () =>
    expect((await kept(stored.id)).record.corners[0]?.gap).toMatchObject({
      values: expect.arrayContaining([19]),
      by: "Bo",
    }),
  );
  // Who began the check stays its author.
  expect((await kept(stored.id)).record.author).toEqual(stored.record.author);
});

it("it asks nobody within the day, nor on a phone that is one person's", async () => {
  changePreferences({ shared: true, author: { role: "installer", name: "Ada" }, authorAt: ago(2) });
  await keep(stored);
  startApp(`#/check/${stored.id}/left.gap`);
  await screen.findByRole("heading", { level: 1 });
  expect(screen.queryByLabelText("Who measures now?")).toBeNull();
  cleanup();
  changePreferences({ shared: false, author: { role: "installer" } });
  startApp(`#/check/${stored.id}/left.gap`);
  await screen.findByRole("heading", { level: 1 });
  expect(screen.queryByLabelText("Who measures now?")).toBeNull();
});
