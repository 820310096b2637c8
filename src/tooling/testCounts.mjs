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

export function closingLine({ passed, failed, skipped }) {
  return `${passed} passed, ${failed} failed, ${skipped} skipped`;
}
