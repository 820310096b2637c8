import { expect, it } from "vitest";
import { wholeHash } from "../../../src/screens/exchange/maker/outboxRun.ts";
import { demoRecord } from "../../support/demoRecords.ts";

it("a check has changed since it was sent where a person changed it, not where the app noted its advice", async () => {
  const record = demoRecord("arm-fits");
  const sent = await wholeHash(record);
  const advised = [{ at: "2026-05-03T10:00:00.000Z", sides: ["left" as const] }];
  expect(await wholeHash({ ...record, advised })).toBe(sent);
  expect(await wholeHash({ ...record, notes: "Loaded as always." })).not.toBe(sent);
  const vehicle = { ...record.vehicle, liftMm: record.vehicle.liftMm + 5 };
  expect(await wholeHash({ ...record, vehicle })).not.toBe(sent);
});
