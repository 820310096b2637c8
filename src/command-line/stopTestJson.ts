import {
  type FoundStop,
  type FreeMassHit,
  foundStop,
  predictedHit,
  type Remark,
} from "../physics/stopTests/index.ts";
import type { TestImport } from "../records/testRows/testFile.ts";
import { inModelUnits } from "../saying/modelUnits.ts";
import type { HitAsked } from "./stopTestArguments.ts";

/** One test as record.md says it is printed. What it does not hold is null, never zero. */
export interface PrintedTest {
  readonly curve: FoundStop["curve"] | null;
  readonly staticShare: number | null;
  readonly restLoss: number | null;
  readonly branches: FoundStop["branches"];
  readonly damping: FoundStop["damping"];
  readonly testedAtSpeed: boolean;
  /** ± of each part, 95 %. */
  readonly doubt: {
    readonly curve: FoundStop["doubt"]["curve"] | null;
    readonly staticShare: number | null;
    readonly restLoss: number | null;
    readonly branches: FoundStop["branches"];
    readonly damping: FoundStop["doubt"]["damping"] | null;
    readonly hit?: FreeMassHit;
  };
  readonly remarks: readonly string[];
  readonly leftOut: { readonly rows: number; readonly cycles: number };
  readonly hit?: FreeMassHit;
}

/** One test of a file, and the hit that was asked for. */
export function printedTest({ file, analysis }: TestImport, asked: HitAsked | null): PrintedTest {
  const found = foundStop(analysis);
  const remarks: Remark[] = [...file.remarks, ...analysis.remarks];
  for (const part of [
    analysis.staticCurve,
    analysis.kind === "rows" ? analysis.damping : analysis.loss,
  ]) {
    if (!part.ok) remarks.push({ code: "partMissing", sentence: part.fault.sentence });
  }
  const hit = asked === null ? null : predictedHit(analysis, asked.massKg, asked.speedMPerS);
  if (hit !== null && !hit.ok) remarks.push({ code: "partMissing", sentence: hit.fault.sentence });
  const predicted = hit?.ok ? hit.value : null;
  if (predicted !== null) remarks.push(...predicted.remarks);
  const atSpeed = found?.testedAtSpeed ? found : null;
  // Rows in no order of time say nothing of what remains at rest.
  const inTime = analysis.kind === "timed" ? atSpeed : null;
  const wasMoved = found !== null && found.doubt.damping.length > 0;
  const leftOut = analysis.kind === "timed" ? analysis.leftOut : { rows: 0, cycles: 0 };
  return {
    curve: found?.curve ?? null,
    staticShare: inTime?.staticShare ?? null,
    restLoss: atSpeed && atSpeed.restLoss > 0 ? atSpeed.restLoss : null,
    branches: atSpeed?.branches ?? [],
    damping: atSpeed?.damping ?? null,
    testedAtSpeed: atSpeed !== null,
    doubt: {
      curve: found?.doubt.curve ?? null,
      staticShare: inTime?.doubt.staticShare ?? null,
      restLoss: wasMoved ? found.doubt.restLoss : null,
      branches: atSpeed?.doubt.branches ?? [],
      damping: wasMoved ? found.doubt.damping : null,
      ...(predicted?.doubt && { hit: predicted.doubt }),
    },
    remarks: [...new Set(remarks.map(({ sentence }) => inModelUnits(sentence)))],
    leftOut: { rows: file.rowsLeftOut + leftOut.rows, cycles: leftOut.cycles },
    ...(predicted && { hit: predicted.hit }),
  };
}
