import type { Problem, Result } from '../../src/base/result.ts';

/** The value of a result that must be ok; otherwise throws with the problem's code, text and place. */
export function expectOk<T>(result: Result<T>): T {
  if (result.ok) return result.value;
  const { code, text, where } = result.problem;
  throw new Error(`expected a value, got the problem ${code}: ${text} ${JSON.stringify(where)}`);
}

/** The problem of a result that must have failed with this code. */
export function expectProblem(result: Result<unknown>, code: string): Problem {
  if (result.ok) throw new Error(`expected the problem ${code}, got a value`);
  if (result.problem.code !== code) {
    throw new Error(`expected the problem ${code}, got ${result.problem.code}: ${result.problem.text}`);
  }
  return result.problem;
}
