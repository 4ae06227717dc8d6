/** Counts passed and failed tests in a JSON report of Vitest; `isGood`: whether Vitest ended with 0. */
export function countTests(reportPath: string, isGood: boolean): { readonly passed: number; readonly failed: number };
