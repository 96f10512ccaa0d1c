// Reads vitest's JSON reports and ends with the line that says how many tests really passed and failed. Nothing may have
// been skipped: that is said, and fails.
import { readFileSync } from "node:fs";

let [passed, failed, skipped] = [0, 0, 0];
for (const file of process.argv.slice(2)) {
  try {
    const report = JSON.parse(readFileSync(file, "utf8"));
    passed += report.numPassedTests;
    skipped += report.numPendingTests + report.numTodoTests;
    // A file that breaks before its tests are known counts as one failure.
    const broken = report.testResults.filter((f) => f.status === "failed" && f.assertionResults.length === 0);
    failed += report.numFailedTests + broken.length;
  } catch {
    console.log(`no test report was written to ${file}`);
    failed++;
  }
}
if (skipped > 0) console.log(`${skipped} tests were skipped: see above which and why`);
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed + skipped > 0 || passed === 0 ? 1 : 0);
