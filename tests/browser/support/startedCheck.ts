import type { Page } from "playwright-core";
import type { CheckRecord, PartialCheckRecord } from "../../../src/records/check/checkRecord.ts";
import type { StoredCheck } from "../../../src/records/check/storedCheck.ts";
import { entriesOf, storedFromRecord } from "../../../src/records/filling/storedFromRecord.ts";
import { standingSteps } from "../../../src/screens/guide/standing.ts";
import { CheckList } from "./checkList.ts";
import { CheckSteps } from "./checkSteps.ts";
import { putStored } from "./storage.ts";
import { inMillimetres } from "./typist.ts";

/** Steps that a check can be started at. */
type StartedStep = "armAngle" | "stopLean" | "left.gap" | "left.rideHeight" | "answer";

/** What of a record is there once every step before that one was filled in. */
function recordUpTo(record: CheckRecord, step: StartedStep): PartialCheckRecord {
  if (step === "answer") return record;
  const { format, version, id, createdAt, vehicle, author, axle, layout, corners } = record;
  const given = Object.entries(layout.readings);
  const last = given.findIndex(([name]) => name === step);
  const readings = Object.fromEntries(last < 0 ? given : given.slice(0, last));
  const sides = corners.map(({ side, gap }) => ({
    side,
    ...(side === "left" && step === "left.rideHeight" && { gap }),
    limits: [],
  }));
  const said = { format, version, id, createdAt, vehicle, author, axle };
  return { ...said, layout: { ...layout, readings }, corners: sides };
}

/** A check of a record as the phone has it stored, every step before that one filled in. */
function startedCheck(record: CheckRecord, step: StartedStep): StoredCheck {
  const id = crypto.randomUUID();
  const whole = storedFromRecord(record);
  const there = { ...recordUpTo(record, step), id };
  return {
    ...whole,
    id,
    revision: 1,
    record: there,
    entries: entriesOf(there, "mm"),
    progress: {
      ...whole.progress,
      step,
      cautionsFor: record.vehicle.liftMm > 0 ? "raised" : "level",
      stood: standingSteps.map((standing) => standing.id),
      rightGeometry: step === "answer" ? whole.progress.rightGeometry : null,
    },
  };
}

/**
 * A check begun from a record, open at a step in this page: what has been typed before is put into the phone's
 * database, as the app wrote it. How it is typed is tried by the checks that are filled in from the first step.
 */
export async function openStarted(
  page: Page,
  address: string,
  record: CheckRecord,
  step: StartedStep,
): Promise<CheckSteps> {
  await new CheckList(page).open(address);
  const started = startedCheck(record, step);
  await putStored(page, started);
  await page.goto(`${address}#/check/${started.id}/${step}`);
  const steps = new CheckSteps(page, inMillimetres);
  if (step !== "answer") await steps.reading().waitFor();
  return steps;
}
