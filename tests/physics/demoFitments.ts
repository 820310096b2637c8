import { readFileSync } from "node:fs";
import type { Corner, Fitment } from "../../src/physics/fitment.ts";
import { type ImpactSetup, impactSetupOf } from "../../src/physics/impact/impactSetup.ts";
import type { Outcome } from "../../src/physics/outcome.ts";
import vectors from "../vectors/examples.json";

type VectorCorner = (typeof vectors)[number]["corners"][number];

export interface DemoCorner {
  readonly name: string;
  readonly fitment: Fitment;
  readonly corner: Corner;
  /** What the independent implementation gives for it. */
  readonly wanted: VectorCorner;
}

const files = [
  "arm-fits",
  "arm-needs-taller",
  "axle-towing-early",
  "damper-shaft",
  "strut-too-stiff",
] as const;

export type DemoName = (typeof files)[number];

export function demoFitment(name: DemoName): Fitment & { readonly id: string } {
  const path = new URL(`../../demo-data/checks/${name}.json`, import.meta.url);
  const { id, vehicle, layout, corners, stop, ride } = JSON.parse(readFileSync(path, "utf8"));
  return { id, use: vehicle.use, layout, corners, stop, ride };
}

/** Every corner of the demo checks beside the vectors' figures for it. */
export const demoCorners: readonly DemoCorner[] = files.flatMap((file) => {
  const fitment = demoFitment(file);
  const example = vectors.find(({ id }) => id === fitment.id);
  return fitment.corners.map((corner) => {
    const wanted = example?.corners.find(({ side }) => side === corner.side);
    if (wanted === undefined) throw new Error(`no vector for ${file} ${corner.side}`);
    return { name: `${file} ${corner.side}`, fitment, corner, wanted };
  });
});

export function unwrapped<Value>(outcome: Outcome<Value>): Value {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.fault));
  return outcome.value;
}

export function loadedSetup(fitment: Fitment, corner: Corner): ImpactSetup {
  return unwrapped(impactSetupOf(fitment, corner, { loaded: true }));
}
