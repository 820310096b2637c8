import "fake-indexeddb/auto";
import { cleanup, screen, waitFor } from "@testing-library/preact";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { newStoredCheck } from "../../../src/records/check/storedCheck.ts";
import { storedFromRecord } from "../../../src/records/filling/storedFromRecord.ts";
import { changePreferences } from "../../../src/screens/preferences.ts";
import { demoRecord } from "../answer/demoChecks.ts";
import { choose, freshPhone, heading, keep, kept, startApp, type } from "../startApp.tsx";

beforeEach(freshPhone);

afterEach(() => {
  cleanup();
  vi.unstubAllGlobals();
});

describe("the lift of a raised vehicle", () => {
  it("is typed in the person's own unit", async () => {
    changePreferences({ length: "in" });
    const stored = newStoredCheck("Tern");
    await keep(stored);
    startApp(`#/check/${stored.id}/vehicle`);
    await choose("Yes, raised");
    await type("Raised by", "2 1/2");
    await waitFor(async () =>
      expect((await kept(stored.id)).record.vehicle?.liftMm).toBeCloseTo(63.5, 9),
    );
  });
});

describe("before the answer", () => {
  it("what was passed over is named, also where the answer comes without it", async () => {
    const demo = storedFromRecord(demoRecord("arm-fits"));
    const corners = demo.record.corners.map((corner) => ({ ...corner, limits: [] }));
    const stored = {
      ...demo,
      record: { ...demo.record, corners },
      progress: { ...demo.progress, skipped: ["left.limits", "right.limits"] },
    };
    await keep(stored);
    startApp(`#/check/${stored.id}/finish`);
    await heading("Finish");
    const names = (await screen.findAllByRole("link")).map((link) => link.textContent);
    expect(names).toContain("Left: What could hit first");
    expect(names).toContain("Right: What could hit first");
  });
});
