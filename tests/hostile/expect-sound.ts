import { expect } from 'vitest';
import type { Finding } from '../../src/base/finding.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { reportOf } from '../../src/pipeline/write-files.ts';

/** Paths of numbers that are not finite in what a run made; functions and what is drawn from the file are passed over. */
export function unsound(value: unknown, path = '', seen = new Set<object>()): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path} is ${value}`];
  if (typeof value !== 'object' || value === null || seen.has(value)) return [];
  seen.add(value);
  if (ArrayBuffer.isView(value)) {
    const list = value as unknown as ArrayLike<number>;
    for (let i = 0; i < list.length; i += 1) if (!Number.isFinite(list[i])) return [`${path}[${i}] is ${list[i]}`];
    return [];
  }
  return Object.entries(value).flatMap(([key, part]) => unsound(part, `${path}.${key}`, seen));
}

/** A run that ended in pieces or in a reason, has only finite numbers, and says of each finding what and where. */
export function expectSound(outcome: Outcome): void {
  const { stopped, pieces, seams, templates, sheets, dryFit, springing, findings, layers } = outcome;
  expect(unsound({ pieces, seams, templates, sheets, dryFit, springing, findings })).toEqual([]);
  for (const { cut, flats } of layers) expect(unsound({ shell: cut?.shell, flats })).toEqual([]);
  for (const finding of findings) expectClear(finding);
  if (stopped !== null) {
    expect(stopped.problem.text).toMatch(/^[A-Z0-9].{20,}\.$/s);
    return;
  }
  expect(pieces?.length).toBeGreaterThan(0);
  expect(reportOf(outcome)).not.toContain('null,null');
}

/** One sentence or more with a figure that is a number, where there is one. */
function expectClear({ code, text, value, limit }: Finding): void {
  expect(code).toMatch(/^[a-z]+\/[a-z-]+$/);
  expect(text, code).toMatch(/^[A-Z0-9].{20,}\.$/s);
  expect(text, code).not.toMatch(/NaN|Infinity|undefined|null/);
  for (const figure of [value, limit]) if (figure !== undefined) expect(Number.isFinite(figure), code).toBe(true);
}
