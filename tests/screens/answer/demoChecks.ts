import { assessFitment } from "../../../src/physics/assess.ts";
import type { Assessment, Fitment } from "../../../src/physics/fitment.ts";
import type { CheckRecord } from "../../../src/records/check/checkRecord.ts";
import { fitmentOf } from "../../../src/records/check/fitmentOf.ts";
import { demoRecord as demoCheck } from "../../support/demoRecords.ts";

export const demoNames = [
  "arm-fits",
  "arm-needs-taller",
  "axle-towing-early",
  "damper-shaft",
  "strut-too-stiff",
] as const;

export type DemoName = (typeof demoNames)[number];

export function demoRecord(name: DemoName): CheckRecord {
  return demoCheck(name);
}

export function demoFitment(name: string): Fitment {
  return fitmentOf(demoCheck(name));
}

export function assessed(fitment: Fitment): Assessment {
  const outcome = assessFitment(fitment, { samples: 10_000 });
  if (!outcome.ok) throw new Error(outcome.fault.code);
  return outcome.value;
}
