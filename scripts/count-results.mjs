// Reads vitest's JSON report and ends with the line that says how many tests really passed and failed.
import { readFileSync } from "node:fs";

let report;
try {
  report = JSON.parse(readFileSync(process.argv[2], "utf8"));
} catch {
  console.log("no test report was written");
  console.log("0 passed, 1 failed");
  process.exit(1);
}
const passed = report.numPassedTests;
// A file that breaks before its tests are known counts as one failure.
const failed =
  report.numFailedTests +
  report.testResults.filter((f) => f.status === "failed" && f.assertionResults.length === 0).length;
const skipped = report.numPendingTests;
console.log(
  skipped > 0
    ? `${passed} passed, ${failed} failed, ${skipped} skipped`
    : `${passed} passed, ${failed} failed`,
);
process.exit(failed > 0 || passed === 0 ? 1 : 0);
