import type { Corner, Fitment } from "../../src/physics/fitment.ts";
import { type ImpactSetup, impactSetupOf } from "../../src/physics/impact/impactSetup.ts";
import type { Outcome } from "../../src/physics/outcome.ts";
import { fitmentOf } from "../../src/records/check/fitmentOf.ts";
import { demoRecord } from "../support/demoRecords.ts";
import { type RiddenVectorCorner, riddenVectorCorner } from "../vectors/vectors.ts";

export interface DemoCorner {
  readonly name: string;
  readonly fitment: Fitment;
  readonly corner: Corner;
  /** What the independent implementation gives for it. */
  readonly wanted: RiddenVectorCorner;
}

const files = [
  "arm-fits",
  "arm-needs-taller",
  "axle-towing-early",
  "damper-shaft",
  "strut-too-stiff",
] as const;

export type DemoName = (typeof files)[number];

export function demoFitment(name: string): Fitment & { readonly id: string } {
  const record = demoRecord(name);
  return { id: record.id, ...fitmentOf(record) };
}

/** Every corner of the demo checks beside the vectors' figures for it. */
export const demoCorners: readonly DemoCorner[] = files.flatMap((file) => {
  const fitment = demoFitment(file);
  return fitment.corners.map((corner) => ({
    name: `${file} ${corner.side}`,
    fitment,
    corner,
    wanted: riddenVectorCorner(fitment.id, corner.side),
  }));
});

export function unwrapped<Value>(outcome: Outcome<Value>): Value {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.fault));
  return outcome.value;
}

export function loadedSetup(fitment: Fitment, corner: Corner): ImpactSetup {
  return unwrapped(impactSetupOf(fitment, corner, { loaded: true }));
}
