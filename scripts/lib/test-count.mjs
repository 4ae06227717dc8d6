import { existsSync, readFileSync } from 'node:fs';

/**
 * Counts a run of Vitest from its JSON report. A file that could not be read as a test counts as one that failed, and so does a run
 * that ended badly without naming a test.
 * @param {string} reportPath
 * @param {boolean} isGood  whether Vitest ended with 0
 * @returns {{ passed: number, failed: number }}
 */
export function countTests(reportPath, isGood) {
  let [passed, failed] = [0, 0];
  const files = existsSync(reportPath) ? JSON.parse(readFileSync(reportPath, 'utf8')).testResults : [];
  for (const file of files) {
    const states = file.assertionResults.map((test) => test.status);
    const failedHere = states.filter((state) => state === 'failed').length;
    passed += states.filter((state) => state === 'passed').length;
    failed += failedHere === 0 && file.status === 'failed' ? 1 : failedHere;
  }
  if (!isGood && failed === 0) failed = 1;
  return { passed, failed };
}
