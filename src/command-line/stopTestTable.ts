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
    lines.push("static curve, mm: N");
    for (const [index, [depth, force]] of curve.entries()) {
      lines.push(`  ${depth.toFixed(2)}: ${with95(force, doubt.curve?.[index]?.[1], 1)}`);
    }
  }
  if (test.testedAtSpeed) {
    if (test.staticShare !== null) {
      lines.push(`static share: ${with95(test.staticShare, doubt.staticShare ?? undefined, 3)}`);
    }
    if (test.restLoss !== null) {
      lines.push(`rest loss: ${with95(test.restLoss, doubt.restLoss ?? undefined, 3)}`);
    }
    for (const [index, { tauS, share }] of branches.entries()) {
      lines.push(`branch of ${tauS} s: ${with95(share, doubt.branches[index]?.share, 3)}`);
    }
    if (damping !== null) lines.push("damping, mm: N·s/mm compressing, rebounding");
    for (const [index, [depth, into, out]] of (damping ?? []).entries()) {
      const off = doubt.damping?.[index];
      lines.push(
        `  ${depth.toFixed(1)}: ${with95(into, off?.[1], 3)}, ${with95(out, off?.[2], 3)}`,
      );
    }
  } else lines.push("loss at speed: not known; the stop counts as undamped");
  if (hit !== undefined) {
    const off = doubt.hit;
    lines.push(
      "predicted hit (checked on simulated stops)",
      `  peak force: ${with95(hit.peakForceN, off?.peakForceN, 0)} N`,
      `  peak compression: ${with95(hit.peakCompressionMm, off?.peakCompressionMm, 1)} mm`,
      `  leaving speed: ${with95(hit.leaveSpeedMmPerS, off?.leaveSpeedMmPerS, 0)} mm/s`,
      `  energy in: ${with95(hit.energyInJ, off?.energyInJ, 1)} J, out: ${with95(hit.energyOutJ, off?.energyOutJ, 1)} J`,
    );
  }
  lines.push(`left out: ${test.leftOut.rows} rows, ${test.leftOut.cycles} cycles`);
  for (const remark of test.remarks) lines.push(`- ${printable(remark)}`);
  return lines.join("\n");
}
