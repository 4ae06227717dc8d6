import type { Finding } from '../../base/finding.ts';
import { fail, ok, type Result } from '../../base/result.ts';
import type { Sizes } from './sizes.ts';

/** Strain of a skin that is told, and that is too much, shares (a shop's rule). */
const NOTICE = 0.1;
const TOO_MUCH = 0.25;

/** A sheet that is rolled round: distances outward from the surface the size is measured on, mm. */
export interface RolledSheet {
  readonly thickness: number;
  readonly k: number;
  /** To the surface that keeps its length, the outside and the inside. */
  readonly toNeutral: number;
  readonly toOutside: number;
  readonly toInside: number;
}

/** Reads `thickness`, `K` and `surface`. */
export function rolledSheet(sizes: Sizes): RolledSheet {
  const [thickness, k] = [sizes.num('thickness'), sizes.num('K')];
  const at = { inside: 0, middle: 0.5, outside: 1 }[sizes.word('surface')] ?? 0;
  // Without a thickness the size is that of the neutral surface itself.
  return { thickness, k, toNeutral: (k - at) * thickness, toOutside: (1 - at) * thickness, toInside: -at * thickness };
}

/** A pipe rolled of sheet, radii in mm. */
export interface RolledPipe {
  readonly sheet: RolledSheet;
  /** Of the surface that was measured. */
  readonly measured: number;
  /** Of the surface that keeps its length, > 0. */
  readonly radius: number;
}

/** Reads `diameter` and the sheet; fails with `shape/too-thick` where the sheet does not fit inside. */
export function rolledPipe(sizes: Sizes): Result<RolledPipe> {
  const sheet = rolledSheet(sizes);
  const measured = sizes.num('diameter') / 2;
  const radius = measured + sheet.toNeutral;
  if (measured + sheet.toInside >= 0 && radius > 0) return ok({ sheet, measured, radius });
  return fail(
    'shape/too-thick',
    'The sheet does not fit into the diameter: take a thinner sheet or a larger diameter.',
  );
}

/**
 * What rolling does to the skins: `(1 - k) t / R` outside, `k t / R` inside, R the least neutral radius.
 * @param neutralRadius  mm, > 0.
 */
export function bendWarnings(
  { thickness, k }: Pick<RolledSheet, 'thickness' | 'k'>,
  neutralRadius: number,
): readonly Finding[] {
  const strain = (Math.max(k, 1 - k) * thickness) / neutralRadius;
  if (!(strain > NOTICE)) return [];
  const isTooMuch = strain > TOO_MUCH;
  const value = Math.round(1000 * strain) / 10;
  return [
    {
      code: isTooMuch ? 'shape/bend-too-tight' : 'shape/bend-tight',
      severity: 'warning',
      text: `The sheet is bent so tightly that a skin changes by ${value} %: ${isTooMuch ? 'use thinner sheets in layers' : 'warm it, or use a thinner sheet'}.`,
      value,
      limit: 100 * (isTooMuch ? TOO_MUCH : NOTICE),
      unit: '%',
      where: {},
    },
  ];
}

/** A warning that stands by itself. */
export const warning = (code: string, text: string): Finding => ({ code, severity: 'warning', text, where: {} });
