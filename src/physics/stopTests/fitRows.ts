import type { StopCurve } from "../stop/stopCurve.ts";
import type { CycleUnit } from "./cycleUnits.ts";
import type { WorkingRows } from "./workingRows.ts";

/** What the loss is fitted to. */
export interface FitRows {
  readonly rows: WorkingRows;
  /** 1 where a row may be used. */
  readonly usable: Uint8Array;
  readonly units: readonly CycleUnit[];
  /** Blocks of the slow ramp: always taken as they are. */
  readonly rampBlocks: ReadonlySet<number>;
  readonly curve: StopCurve;
  /** Deepest point of the static curve, mm. */
  readonly deepestMm: number;
}
