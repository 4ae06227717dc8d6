import { fail, type Fail } from '../../base/result.ts';
import type { ByteScanner } from './byte-scanner.ts';
import { MOST_COORDINATE } from './limits.ts';

/**
 * What is wrong with the coordinate that {@link ByteScanner.number} just read, or null.
 * @param place where it stands, for people: `on line 3`.
 */
export function coordinateFault(scanner: ByteScanner, value: number, place: string): Fail | null {
  if (scanner.kind === 'number') return isUsable(value) ? null : coordinateSizeFault(value, place);
  if (scanner.kind === 'none') {
    return fail('read/too-few-numbers', `The vertex ${place} has fewer than three numbers: export the sculpt again.`);
  }
  const word = scanner.word();
  if (scanner.kind === 'not-finite') return notFinite(word, place);
  const hint = /^[-+]?\d+,\d+$/.test(word)
    ? 'set your modelling program to write decimals with a point and export again'
    : 'export the sculpt again';
  return fail('read/bad-number', `The vertex ${place} has “${word}” where a number belongs: ${hint}.`);
}

/** True for a finite number that is not out of reach. */
export const isUsable = (value: number): boolean => Math.abs(value) <= MOST_COORDINATE;

/** What is wrong with a coordinate that is not usable. */
export function coordinateSizeFault(value: number, place: string): Fail {
  if (!Number.isFinite(value)) return notFinite(String(value), place);
  return fail(
    'read/huge-number',
    `The vertex ${place} lies at ${value.toExponential(1)}, farther out than any sculpt: repair the mesh in your modelling program.`,
  );
}

const notFinite = (word: string, place: string): Fail =>
  fail(
    'read/not-finite',
    `The vertex ${place} has “${word}” for a coordinate, which is no place: repair the mesh in your modelling program.`,
  );
