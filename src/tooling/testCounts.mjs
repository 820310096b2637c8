import { relative } from "node:path";

export const noCounts = { passed: 0, failed: 0, skipped: 0 };

export function addCounts(one, other) {
  return {
    passed: one.passed + other.passed,
    failed: one.failed + other.failed,
    skipped: one.skipped + other.skipped,
  };
}

/** Totals of Vitest's JSON report. A file that could not be run at all counts as one failure. */
export function countsOf(report) {
  const unrunnable = report.testResults.filter(
    (file) =>
      file.status === "failed" && file.assertionResults.every((test) => test.status !== "failed"),
  ).length;
  return {
    passed: report.numPassedTests,
    failed: report.numFailedTests + unrunnable,
    skipped: report.numPendingTests + report.numTodoTests,
  };
}

const longestReason = 160;

/** A line for each test of Vitest's JSON report that failed, with its file and the head of its reason. */
export function failuresOf(report, root) {
  return report.testResults.flatMap((file) => {
    const line = (title, reason = "") =>
      `${relative(root, file.name)} > ${title}: ${reason.split("\n", 1)[0].slice(0, longestReason)}`;
    const failed = file.assertionResults.filter((test) => test.status === "failed");
    if (file.status === "failed" && failed.length === 0) {
      return [line("could not be run", file.message)];
    }
    return failed.map((test) => line(test.fullName, test.failureMessages?.[0]));
  });
}

export function closingLine({ passed, failed, skipped }) {
  return `${passed} passed, ${failed} failed, ${skipped} skipped`;
}
