/** Counts passed and failed tests in a JSON report of Vitest, and names those that failed; `isGood`: whether Vitest ended with 0. */
export function countTests(
  reportPath: string,
  isGood: boolean,
): {
  readonly passed: number;
  readonly failed: number;
  readonly failedFiles: readonly string[];
  readonly faults: readonly string[];
};
