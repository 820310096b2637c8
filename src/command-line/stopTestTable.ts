import * as messages from "../words/compiled/command-line.ts";
import { printable } from "./assessmentTable.ts";
import type { PrintedTest } from "./stopTestJson.ts";

function with95(value: number, doubt: number | undefined, digits: number): string {
  return doubt === undefined
    ? value.toFixed(digits)
    : `${value.toFixed(digits)} ± ${doubt.toFixed(digits)}`;
}

/** One test as lines to read; every ± is 95 %. */
export function stopTestLines(title: string, test: PrintedTest): string {
  const lines: string[] = [printable(title)];
  const { curve, damping, branches, doubt, hit } = test;
  if (curve !== null) {
    lines.push(messages.staticCurveMmN);
    for (const [index, [depth, force]] of curve.entries()) {
      lines.push(`  ${depth.toFixed(2)}: ${with95(force, doubt.curve?.[index]?.[1], 1)}`);
    }
  }
  if (test.testedAtSpeed) {
    if (test.staticShare !== null) {
      lines.push(
        messages.staticShare({
          with95: with95(test.staticShare, doubt.staticShare ?? undefined, 3),
        }),
      );
    }
    if (test.restLoss !== null) {
      lines.push(
        messages.restLoss({ with95: with95(test.restLoss, doubt.restLoss ?? undefined, 3) }),
      );
    }
    for (const [index, { tauS, share }] of branches.entries()) {
      lines.push(
        messages.branchOfS({ tauS, with95: with95(share, doubt.branches[index]?.share, 3) }),
      );
    }
    if (damping !== null) lines.push(messages.dampingMmNS);
    for (const [index, [depth, into, out]] of (damping ?? []).entries()) {
      const off = doubt.damping?.[index];
      lines.push(
        `  ${depth.toFixed(1)}: ${with95(into, off?.[1], 3)}, ${with95(out, off?.[2], 3)}`,
      );
    }
  } else lines.push(messages.lossAtSpeedNot);
  if (hit !== undefined) {
    const off = doubt.hit;
    lines.push(
      messages.predictedHitCheckedOn,
      messages.peakForceN({ with95: with95(hit.peakForceN, off?.peakForceN, 0) }),
      messages.peakCompressionMm({
        with95: with95(hit.peakCompressionMm, off?.peakCompressionMm, 1),
      }),
      messages.leavingSpeedMmS({ with95: with95(hit.leaveSpeedMmPerS, off?.leaveSpeedMmPerS, 0) }),
      messages.energyInJOut({
        with95: with95(hit.energyInJ, off?.energyInJ, 1),
        with952: with95(hit.energyOutJ, off?.energyOutJ, 1),
      }),
    );
  }
  lines.push(messages.leftOutRowsCycles({ rows: test.leftOut.rows, cycles: test.leftOut.cycles }));
  for (const remark of test.remarks) lines.push(`- ${printable(remark)}`);
  return lines.join("\n");
}
