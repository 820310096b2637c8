import "fake-indexeddb/auto";
import { cleanup, screen } from "@testing-library/preact";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { fullTravelTicksId } from "../../../src/records/check/fullTravel.ts";
import type { StoredCheck } from "../../../src/records/check/storedCheck.ts";
import { readDraftText } from "../../../src/records/filling/readDraft.ts";
import { storedFromRecord } from "../../../src/records/filling/storedFromRecord.ts";
import { checkFileText } from "../../../src/screens/checkFile.ts";
import { demoRecord } from "../../support/demoRecords.ts";
import { freshPhone, heading, keep, kept, startApp } from "../startApp.tsx";

const record = demoRecord("checked-by-hand");

beforeEach(freshPhone);
afterEach(cleanup);

describe("a check by hand that came from elsewhere", () => {
  it("has its cautions read on this phone, its contacts as they were sent until then", async () => {
    expect(record.fullTravel?.acknowledged).toEqual(expect.any(String));
    const stored = storedFromRecord(record);
    await keep(stored);
    startApp(`#/check/${stored.id}/fullTravel`);
    await heading("Full-travel check");
    await screen.findByText(/Choose the spring first/);
    expect(screen.queryByText("All acknowledged.")).toBeNull();
    expect(screen.queryByRole("heading", { name: /what touches where/ })).toBeNull();
    expect((await kept(stored.id)).record.fullTravel).toEqual(record.fullTravel);
  });

  it("opened as a draft, brings neither ticks nor cautions nor steps of standing", () => {
    const { stop: _, ...begun } = record;
    const mine: StoredCheck = {
      ...storedFromRecord(record),
      record: begun,
      progress: {
        step: "standing",
        skipped: [],
        cautionsFor: "raised",
        stood: ["tires"],
        rightGeometry: "same",
      },
    };
    const ticked: StoredCheck = {
      ...mine,
      entries: {
        ...mine.entries,
        [fullTravelTicksId]: { texts: ["stands"], unit: "", tol: "" },
      },
    };
    const draft = readDraftText(checkFileText(ticked));
    expect(draft?.entries["left.rideHeight"]).toEqual(mine.entries["left.rideHeight"]);
    expect(draft?.entries).not.toHaveProperty(fullTravelTicksId);
    expect(draft?.progress).toMatchObject({ step: "standing", cautionsFor: null, stood: [] });
    expect(draft?.record.fullTravel?.corners).toEqual(record.fullTravel?.corners);
  });
});
