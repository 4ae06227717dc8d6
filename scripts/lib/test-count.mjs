import { existsSync, readFileSync } from 'node:fs';

/**
 * Counts a run of Vitest from its JSON report. A file that could not be read as a test counts as one that failed, and so does a run
 * that ended badly without naming a test.
 * @param {string} reportPath
 * @param {boolean} isGood  whether Vitest ended with 0
 * @returns {{ passed: number, failed: number, failedFiles: string[], faults: string[] }} `failedFiles`: paths, each once; `faults`: a line
 *   for each test that failed, with the first line of what it said
 */
export function countTests(reportPath, isGood) {
  let [passed, failed] = [0, 0];
  const failedFiles = [];
  const faults = [];
  const files = existsSync(reportPath) ? JSON.parse(readFileSync(reportPath, 'utf8')).testResults : [];
  for (const file of files) {
    const states = file.assertionResults.map((test) => test.status);
    const bad = file.assertionResults.filter((test) => test.status === 'failed');
    passed += states.filter((state) => state === 'passed').length;
    failed += bad.length === 0 && file.status === 'failed' ? 1 : bad.length;
    if (bad.length > 0 || file.status === 'failed') failedFiles.push(file.name);
    for (const test of bad) faults.push(`${file.name}: ${test.fullName}: ${firstLine(test.failureMessages?.[0])}`);
    if (bad.length === 0 && file.status === 'failed') faults.push(`${file.name}: ${firstLine(file.message)}`);
  }
  if (!isGood && failed === 0) {
    failed = 1;
    faults.push('ended badly without naming a test');
  }
  return { passed, failed, failedFiles, faults };
}

/** @param {string | undefined} text */
const firstLine = (text) => (text ?? '').split('\n', 1)[0];
